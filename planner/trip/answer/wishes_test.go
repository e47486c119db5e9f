package answer

import (
	"testing"

	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

// Wishes by place and date are kept, each line of a trip file by itself and all together;
// the auditor of the sheet has passed what is shown. One that cannot be kept is the cause.
func TestWishes(t *testing.T) {
	trial := func(wishes ...trip.Wish) trip.Itinerary {
		tr := triptest.Eastwards(400)
		tr.Vehicle, tr.Stays.MinNights, tr.Stays.MaxNights, tr.Day.MaxKm = triptest.Careless(tr.Vehicle), 5, 6, 150
		tr.Wishes = wishes
		var places []trip.Place
		for i, km := range []float64{90, 140, 200, 260, 320} {
			p := triptest.At([]string{"n1", "n2", "n3", "n4", "n5"}[i], "campsite", km, 0, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
			p.Stay = &trip.Stay{HookUp: []trip.Answer{trip.No, trip.Yes}[i%2]}
			places = append(places, p)
		}
		for i := range tr.Vehicle.Tanks {
			if k := &tr.Vehicle.Tanks[i]; k.ID == "battery" { // enough for all nights
				k.Capacity, k.Start, k.Reserve = 500, 500, 0
			}
		}
		places = append(places, triptest.At("n6", "fuel", 300, 0, triptest.Yes("diesel")))
		return mustPlan(t, tr, places)
	}
	near := trip.Wish{Near: [2]float64{260 / triptest.KmPerDegree, 0}, WithinKm: 8}
	// The trip sets off on Friday 12 June 2026.
	for name, w := range map[string][]trip.Wish{
		"three nights at a place":   {{Place: "n3", Nights: 3}},
		"at a place on Sunday":      {{Place: "n4", On: "2026-06-14"}},
		"a night near somewhere":    {near},
		"no driving on Sunday":      {{Rest: "2026-06-14"}},
		"hook-up from Saturday on":  {{HookUpFrom: "2026-06-13"}},
		"a stop that nobody needs":  {{Place: "n6"}},
		"two nights and a rest day": {{Place: "n2", Nights: 2}, {Rest: "2026-06-15"}, near},
	} {
		if it := trial(w...); it.Status != planner.Optimal || len(it.Wishes) != len(w) {
			t.Errorf("%s: %s, %d wishes, %+v", name, it.Status, len(it.Wishes), it.Why)
		}
	}
	it := trial(trip.Wish{Place: "n5", On: "2026-06-12"}) // 320 km on a day of 150
	if it.Status != planner.Infeasible || len(it.Why) == 0 || it.Why[0].Cause != trip.CauseWish || it.Why[0].Says.Kind != wishOne {
		t.Errorf("%s, %+v", it.Status, it.Why)
	}
}

func TestWishesThatAreNone(t *testing.T) {
	tr := triptest.Eastwards(400)
	for _, w := range []trip.Wish{{}, {Place: "a", Rest: "2026-06-14"}, {Place: "a", Nights: -1}, {Place: "a", On: "Sunday"}, {WithinKm: -3}, {Rest: "2026-06-12"}} {
		tr.Wishes = []trip.Wish{w}
		if err := tr.Validate(); err == nil {
			t.Errorf("%+v is a wish", w)
		}
	}
}
