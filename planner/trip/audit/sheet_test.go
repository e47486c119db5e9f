package audit_test

import (
	"encoding/json"
	"slices"
	"testing"

	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/audit"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

// week is a trip with all that the auditor looks at: a stay of some nights with acts on
// its days, a call by day, a ferry, keys, and a vehicle on the scales.
func week(t *testing.T) (trip.Trip, []trip.Place, trip.Itinerary) {
	t.Helper()
	tr := triptest.Eastwards(300)
	tr.Vehicle, tr.Start, tr.Day.MaxKm = trip.Fleet()[2], "2027-07-15", 120
	tr.Stays.MinNights, tr.Stays.MaxNights, tr.KeysByMin = 5, 6, 17*60
	tr.Ferries = []trip.Ferry{{FromKm: 200, ToKm: 210, Min: 40}}
	var places []trip.Place
	for i, km := range []float64{60, 150, 240} {
		p := triptest.At([]string{"n1", "n2", "n3"}[i], "campsite", km, 1, triptest.Yes("fresh"), triptest.Yes("grey"), triptest.Yes("cassette"))
		p.Stay = &trip.Stay{HookUp: trip.Yes, Tag: "tourism=camp_site"}
		places = append(places, p)
	}
	pump := triptest.At("n4", "fuel", 100, 0, triptest.Yes("diesel"), triptest.Yes("def"), triptest.Yes("lpg"))
	pump.Hours = "Mo-Su 06:00-22:00"
	places = append(places, pump, triptest.At("n5", "dump", 280, 0, triptest.Yes("grey"), triptest.Yes("cassette")))
	it, err := answer.Trip(t.Context(), tr, places, answer.Options{Build: build.Options{Hours: opening}})
	if err != nil || len(it.Days) < 6 || it.Weight == nil {
		t.Fatalf("%v, %s, %d days, %+v", err, it.Status, len(it.Days), it.Why)
	}
	return tr, places, it
}

// TestEveryRule breaks one thing of a right sheet at a time.
func TestEveryRule(t *testing.T) {
	tr, places, good := week(t)
	if broken := audit.Sheet(tr, places, good, opening); len(broken) > 0 {
		t.Fatal(broken)
	}
	day := func(it *trip.Itinerary, with func(trip.Call) bool) (*trip.Day, *trip.Call) {
		for i := range it.Days {
			for k := range it.Days[i].Calls {
				if with(it.Days[i].Calls[k]) {
					return &it.Days[i], &it.Days[i].Calls[k]
				}
			}
		}
		t.Fatal("no such call")
		return nil, nil
	}
	night := func(c trip.Call) bool { return c.Night }
	byDay := func(c trip.Call) bool { return !c.Night && len(c.Tasks) > 0 }
	served := func(c trip.Call) bool { return c.Night && len(c.Tasks) > 0 }
	for _, tc := range []struct {
		name string
		rule audit.Rule
		do   func(it *trip.Itinerary, tr *trip.Trip, places []trip.Place)
	}{
		{"a day numbered twice", audit.RuleDate, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Days[1].Number = 1 }},
		{"a wrong date", audit.RuleDate, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Days[2].Date = "2027-07-18" }},
		{"a gap in the road", audit.RuleRoad, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Days[len(it.Days)-1].FromKm += 5 }},
		{"kilometres that nobody drives", audit.RuleRoad, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Days[0].DriveKm -= 3 }},
		{"a call out of order", audit.RuleRoad, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.Km = 290 }},
		{"minutes that are not there", audit.RuleClock, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Days[0].DriveMin -= 10 }},
		{"arriving before leaving", audit.RuleClock, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.ArriveMin = 100 }},
		{"time in hand that is none", audit.RuleClock, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.InHandMin += 30 }},
		{"a day too long", audit.RuleDay, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Day.MaxKm = 50 }},
		{"a day too long by the clock", audit.RuleDay, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Day.MaxMin = 30 }},
		{"a night nowhere", audit.RuleNight, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.Night = false }},
		{"a night too many", audit.RuleNight, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Stays.MaxNights = 4 }},
		{"a night where none is", audit.RuleNight, func(_ *trip.Itinerary, _ *trip.Trip, places []trip.Place) {
			for i := range places {
				places[i].Stay = nil
			}
		}},
		{"a night on a campsite that is not wanted", audit.RuleNight, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Stays.Campsites = false }},
		{"a night without hook-up", audit.RuleNight, func(_ *trip.Itinerary, tr *trip.Trip, places []trip.Place) {
			tr.Stays.HookUp = true
			for i := range places {
				if s := places[i].Stay; s != nil {
					places[i].Stay = &trip.Stay{Tag: s.Tag}
				}
			}
		}},
		{"arriving in the morning", audit.RuleHours, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.ArriveMin = 11 * 60 }},
		{"arriving at night", audit.RuleHours, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) {
			_, c := day(it, night)
			c.ArriveMin = 22*60 + 5
		}},
		{"moving for nothing", audit.RuleMove, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) {
			var last *trip.Call
			for i := range it.Days {
				for k := range it.Days[i].Calls {
					if c := &it.Days[i].Calls[k]; c.Night {
						if last != nil {
							last.Km = c.Km - 10
						}
						last = c
					}
				}
			}
		}},
		{"a level over the brim", audit.RuleTank, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Strips[0].Points[1].L = 1000 }},
		{"no strip", audit.RuleTank, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Strips = it.Strips[1:] }},
		{"an act of more than a tank", audit.RuleAct, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) {
			_, c := day(it, byDay)
			c.Tasks[0].Amount = 483
		}},
		{"an act that leads nowhere", audit.RuleAct, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, byDay); c.Tasks[0].After-- }},
		{"an act of a stay after it", audit.RuleAct, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, served); c.Tasks[0].Night = 9 }},
		{"leaving with another level", audit.RuleAct, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) {
			_, c := day(it, byDay)
			c.Leave[c.Tasks[0].Tank] -= 2
		}},
		{"driving that uses nothing", audit.RuleUse, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) {
			_, c := day(it, func(c trip.Call) bool { return c.Km > 200 })
			c.Arrive["diesel"] += 4
		}},
		{"less than agreed", audit.RuleEnd, func(it *trip.Itinerary, tr *trip.Trip, _ []trip.Place) {
			tr.Vehicle.Tanks[0].End = &planner.End{AtLeast: new(it.Strips[0].Capacity)}
			p := it.Strips[0].Points
			p[len(p)-1].L = 10
		}},
		{"too heavy on leaving", audit.RuleMass, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Vehicle.MassKg -= 1000 }},
		{"another weight than it says", audit.RuleMass, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.LeaveKg -= 40 }},
		{"keys too late", audit.RuleKeys, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.KeysByMin = 9*60 + 30 }},
		{"a place to avoid", audit.RuleWish, func(it *trip.Itinerary, tr *trip.Trip, _ []trip.Place) {
			_, c := day(it, night)
			tr.Avoid = []string{c.Place}
		}},
		{"a place left out", audit.RuleWish, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) { tr.Require = []string{"n99"} }},
		{"driving on a day of rest", audit.RuleWish, func(it *trip.Itinerary, tr *trip.Trip, _ []trip.Place) {
			tr.Wishes = []trip.Wish{{Rest: it.Days[len(it.Days)-1].Date}}
		}},
		{"a wish that is not kept", audit.RuleWish, func(_ *trip.Itinerary, tr *trip.Trip, _ []trip.Place) {
			tr.Wishes = []trip.Wish{{Place: "n5", On: "2027-07-15"}}
		}},
		{"no hook-up when it is wished for", audit.RuleWish, func(_ *trip.Itinerary, tr *trip.Trip, places []trip.Place) {
			tr.Wishes = []trip.Wish{{HookUpFrom: "2027-07-16"}}
			for i := range places {
				if s := places[i].Stay; s != nil {
					places[i].Stay = &trip.Stay{Tag: s.Tag}
				}
			}
		}},
		{"a place too low", audit.RuleWish, func(it *trip.Itinerary, _ *trip.Trip, places []trip.Place) {
			_, c := day(it, night)
			i := slices.IndexFunc(places, func(p trip.Place) bool { return p.ID == c.Place })
			places[i].Limits.HeightM = 2
		}},
		{"a service that is not there", audit.RuleWish, func(_ *trip.Itinerary, _ *trip.Trip, places []trip.Place) {
			for i := range places {
				places[i].Offers = nil
			}
		}},
		{"a stop that is shut", audit.RuleClosed, func(_ *trip.Itinerary, _ *trip.Trip, places []trip.Place) {
			for i := range places {
				places[i].Hours = "Mo-Su 03:00-04:00"
			}
		}},
		{"a bill that does not add up", audit.RuleCost, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { _, c := day(it, night); c.Cost += 7 }},
		{"parts that do not add up", audit.RuleCost, func(it *trip.Itinerary, _ *trip.Trip, _ []trip.Place) { it.Parts.Time++ }},
	} {
		t.Run(tc.name, func(t *testing.T) {
			var it trip.Itinerary
			b, err := json.Marshal(good)
			if err == nil {
				err = json.Unmarshal(b, &it)
			}
			if err != nil {
				t.Fatal(err)
			}
			changed, there := tr, slices.Clone(places)
			changed.Vehicle.Tanks = slices.Clone(tr.Vehicle.Tanks)
			tc.do(&it, &changed, there)
			if broken := audit.Sheet(changed, there, it, opening); !slices.ContainsFunc(broken, func(b audit.Broken) bool { return b.Rule == tc.rule }) {
				t.Errorf("%v, want %s", broken, tc.rule)
			}
		})
	}
}
