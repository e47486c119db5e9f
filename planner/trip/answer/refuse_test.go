package answer

import (
	"context"
	"math"
	"testing"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
)

// Map data of somewhere else are the reason for a refusal, and not the tanks;
// a trip that needs nothing of them is told so.
func TestMapDataOfSomewhereElse(t *testing.T) {
	places := []trip.Place{triptest.At("far", "fuel", 4000, 0, triptest.Yes("diesel")), triptest.At("farther", "fuel", 5000, 0, triptest.Yes("diesel"))}
	far, err := Trip(context.Background(), triptest.Eastwards(1500), places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if far.Status != planner.Infeasible || len(far.Why) != 1 || far.Why[0].Limit != "map" {
		t.Fatalf("status %v, why %+v, want one reason, the map", far.Status, far.Why)
	}
	says := far.Why[0].Says
	if got, want := triptest.Line(says), "map.elsewhere km=2500km name=FAR"; got != want {
		t.Errorf("reason %q, want %q", got, want)
	}
	if fact.Contains(far.Cautions, says) {
		t.Error("the reason is among the cautions as well")
	}

	// A route with its numbers the other way round lies elsewhere too: that is said instead.
	north := []trip.Place{triptest.At("north", "fuel", 0, 400, triptest.Yes("diesel"))}
	if turned, err := Trip(context.Background(), triptest.Eastwards(1500), north, Options{}); err != nil || turned.Why[0].Says.Kind != "map.swapped" {
		t.Errorf("a route with latitude and longitude swapped: %+v, %v", turned.Why, err)
	}

	short, err := Trip(context.Background(), triptest.Eastwards(40), places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(short.Days) == 0 || short.Cautions[0].Kind != says.Kind || short.Cautions[0].Values["name"].S != "FAR" {
		t.Errorf("a short trip: %d days, cautions %q", len(short.Days), triptest.Lines(short.Cautions))
	}
}

// A refusal names positions of the route.
func TestFerryRefusal(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Levels = map[string]float64{"diesel": 20} // of which 12 are reserve: 88 km
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	it, err := Plan(context.Background(), built.Trip(t, tr, []trip.Place{triptest.At("far", "fuel", 150, 0, triptest.Yes("diesel"))}, build.Options{}), Options{})
	if err != nil || it.Status != planner.Infeasible {
		t.Fatalf("%s, %v", it.Status, err)
	}
	// 120 km to the station need 10.8 L.
	if got, want := triptest.Line(it.Why[0].Says), "reason.tank from=km0 missing=2.8L supply=supply tank=diesel to=km150"; got != want || math.Abs(it.Why[0].ToKm-150) > 0.01 {
		t.Errorf("%q to km %v, want %q", got, it.Why[0].ToKm, want)
	}
}

// A ferry that does not fit into a day is said to be why there is no plan.
func TestFerryLongerThanADay(t *testing.T) {
	tr := triptest.Eastwards(100)
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 700}} // a day has 600
	it, err := Plan(context.Background(), built.Trip(t, tr, nil, build.Options{}), Options{})
	if err != nil || it.Status != planner.Infeasible || triptest.Lines(triptest.Of(it.Cautions, "ferry.too_long")) != "ferry.too_long for=700min time=600min" {
		t.Errorf("%s, %v, cautions %q", it.Status, err, triptest.Lines(it.Cautions))
	}
}

// What alone stands in the way is named with the tank, where and by how much.
func TestObstacles(t *testing.T) {
	site := triptest.At("site", "campsite", 100, 0)
	site.Stay = &trip.Stay{}
	fuel := triptest.At("fuel", "fuel", 150, 0, triptest.Yes("diesel"))
	for _, c := range []struct {
		name   string
		change func(*trip.Trip)
		want   planner.Reason
	}{
		// 12 L of reserve and 150 km × 0.09 L are 25.5 L; 20 L are there.
		{"diesel", func(tr *trip.Trip) { tr.Levels = map[string]float64{"diesel": 20} }, planner.Reason{Limit: "diesel", ToKm: 150, Missing: 5.5}},
		// Two people, one night, 5 L; nobody empties it and it must be empty.
		{"cassette", func(tr *trip.Trip) { tr.Stays.MinNights = 1 }, planner.Reason{Limit: "cassette", ToKm: 200, Missing: 5}},
		{"day", func(tr *trip.Trip) { tr.Day.MaxKm = 90 }, planner.Reason{Limit: "km", ToKm: 100, Missing: 10}},
		{"hours", func(tr *trip.Trip) { tr.Day.MaxMin = 80 }, planner.Reason{Limit: "min", ToKm: 100, Missing: 20}},
		{"nights", func(tr *trip.Trip) { tr.Stays.MinNights, tr.Stays.Campsites = 2, false }, planner.Reason{Limit: "night", ToKm: 200, Missing: 2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := triptest.Eastwards(200)
			c.change(&tr)
			it, err := Trip(t.Context(), tr, []trip.Place{site, fuel}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range it.Why {
				if r.Limit == c.want.Limit && math.Abs(r.FromKm-c.want.FromKm) < 0.01 && math.Abs(r.ToKm-c.want.ToKm) < 0.01 && math.Abs(r.Missing-c.want.Missing) < 0.01 {
					return
				}
			}
			t.Errorf("why = %+v, want %+v among them", it.Why, c.want)
		})
	}
}

// Each place alone would do, but not both limits together: the night is
// beyond what the water lasts. The refusal names the water.
func TestRefusalNamesTheTank(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Stays.MinNights, tr.Stays.MaxNights = 2, 2
	one, two := triptest.At("one", "campsite", 50, 0), triptest.At("two", "campsite", 100, 0)
	one.Stay, two.Stay = &trip.Stay{Fee: trip.No}, &trip.Stay{Fee: trip.No}
	water, dump := triptest.At("water", "water", 150, 0, triptest.Yes("fresh")), triptest.At("dump", "dump", 150, 0, triptest.Yes("grey"), triptest.Yes("cassette"))
	for i := range tr.Vehicle.Tanks {
		if tr.Vehicle.Tanks[i].ID == "battery" {
			tr.Vehicle.Tanks = append(append([]trip.Tank{}, tr.Vehicle.Tanks[:i]...), tr.Vehicle.Tanks[i+1:]...)
			break
		}
	}
	for i := range tr.Vehicle.Tanks {
		if tr.Vehicle.Tanks[i].ID == "grey" {
			tr.Vehicle.Tanks[i].Capacity = 200
		}
	}
	it, err := Trip(t.Context(), tr, []trip.Place{one, two, water, dump}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	// 90 L, two nights of 70 L and 10 L of reserve: 60 L are missing.
	for _, r := range it.Why {
		if it.Status == planner.Infeasible && r.Limit == "fresh" && math.Abs(r.Missing-60) < 0.2 && r.Says.Kind == planner.ReasonTank {
			return
		}
	}
	t.Errorf("status %s, why = %+v, want fresh water short by 60 L", it.Status, it.Why)
}
