package read

import (
	"math"
	"testing"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
)

// Above 3.5 t nothing is planned faster than 80 km/h: 200 km at a wished average
// of 95 take 150 min instead of 126.3, less diesel, and a word about the law. By
// roads it is the roads' pace that is used by, not the trip's.
func TestSpeedByMassClass(t *testing.T) {
	per100 := func(kg float64, pace ...planner.Pace) (float64, *build.Built) {
		tr := triptest.Eastwards(200)
		tr.Vehicle, tr.Day.SpeedKmh = trip.Fleet()[2], 95
		tr.Vehicle.MassKg = kg
		var roads trip.Roads
		if pace != nil {
			roads = triptest.Paced(pace)
		}
		b := built.Trip(t, tr, nil, build.Options{Roads: roads})
		return 100 * b.Use.PerKm(tr.Vehicle.Tanks[0]).Likely, b
	}
	light, a := per100(3500)
	heavy, b := per100(3501)
	if m, n := a.Problem.Drive.Minutes(0, 200), b.Problem.Drive.Minutes(0, 200); math.Abs(m-126.3) > 0.1 || math.Abs(n-150) > 0.1 {
		t.Errorf("light %v min, heavy %v, want 126.3 and 150", m, n)
	}
	if heavy > light-1 {
		t.Errorf("heavy %v L/100 km at 80 km/h, light %v at 95", heavy, light)
	}
	told := triptest.Of(reader{b}.cautions(fact.Fact{}), life.HeavyRoads)
	if len(told) != 1 || !told[0].Equal(life.Heavier(3501)) || triptest.Has(reader{a}.cautions(fact.Fact{}), life.HeavyRoads) {
		t.Errorf("heavy is told %q", triptest.Lines(told))
	}
	if road, _ := per100(3500, planner.Pace{ToKm: 200, MinPerKm: 60.0 / 80}); math.Abs(road-heavy) > 0.01 {
		t.Errorf("by roads at 80 km/h %v L/100 km, want %v", road, heavy)
	}
	// Half at 40, half at 95 km/h is not the same as all at the average: 56.3.
	mixed, _ := per100(3500, planner.Pace{ToKm: 100, MinPerKm: 60.0 / 40}, planner.Pace{ToKm: 200, MinPerKm: 60.0 / 95})
	slow, _ := per100(3500, planner.Pace{ToKm: 200, MinPerKm: 60.0 / 40})
	if want := (slow + light) / 2; math.Abs(mixed-want) > 0.01 {
		t.Errorf("two sections %v L/100 km, want the middle of both, %v", mixed, want)
	}
}

// A day of more than 300 km or 5 h at the wheel is called long.
func TestLongDay(t *testing.T) {
	tr := triptest.Eastwards(310)
	tr.Day = trip.DayLimits{MaxKm: 400, MaxMin: 900, DepartMin: 480, SpeedKmh: 70}
	if it := driven(t, built.Trip(t, tr, nil, build.Options{})); triptest.Lines(triptest.Of(it.Cautions, dayLong)) != "day.long easy=300km for=300min km=310km n=1 time=266min" {
		t.Errorf("cautions %q", triptest.Lines(it.Cautions))
	}
	tr.Route = triptest.Eastwards(290).Route
	if it := driven(t, built.Trip(t, tr, nil, build.Options{})); triptest.Has(it.Cautions, dayLong) {
		t.Errorf("290 km in 4 h 09 min are called long: %q", triptest.Lines(it.Cautions))
	}
}

// What building had to say of the start stands among the cautions, with a plan and
// without.
func TestNotesOfBuilding(t *testing.T) {
	tr := triptest.Eastwards(50)
	tr.Levels = map[string]float64{"diesel": 8}
	b := built.Trip(t, tr, []trip.Place{triptest.At("a", "fuel", 10, 0, triptest.Yes("diesel"))}, build.Options{})
	filled := driven(t, b, planner.Visit{Stop: "a", Serve: []planner.Serve{{Tank: "diesel", Amount: 5}}})
	for _, it := range []trip.Itinerary{filled, Itinerary(b, planner.Plan{Status: planner.Unknown}, nil)} {
		if !triptest.Has(it.Cautions, "start.below_reserve") {
			t.Errorf("%s: cautions %q", it.Status, triptest.Lines(it.Cautions))
		}
	}
}

// A tank that comes back short by a shot glass, or by less than a cent's worth, is no
// news. The last tank is told first.
func TestMissingAtTheEnd(t *testing.T) {
	for _, c := range []struct{ missing, price, cost float64 }{{10, 2, 20}, {0.051, 2, 0.1}, {0.049, 2, 0}, {0.1, 0.051, 0.01}, {0.1, 0.049, 0}} {
		tr := triptest.Eastwards(100)
		for i := range tr.Vehicle.Tanks {
			if e := tr.Vehicle.Tanks[i].End; e != nil && e.RefillPrice != nil {
				e.RefillPrice = &c.price
			}
		}
		plan := planner.Plan{End: &planner.PlanEnd{Refill: map[string]float64{"diesel": c.missing, "lpg": c.missing}}}
		told := reader{built.Trip(t, tr, nil, build.Options{})}.missing(plan)
		if (len(told) == 2) != (c.cost > 0) || c.cost == 0 && len(told) > 0 {
			t.Errorf("%v L at %v: %q", c.missing, c.price, triptest.Lines(told))
		}
		if len(told) > 0 && (told[0].Values["tank"].Unit != "lpg" || math.Abs(told[0].Values["cost"].N-c.cost) > 0.005) {
			t.Errorf("%v L at %v: %q, want LPG first, for %v", c.missing, c.price, triptest.Lines(told), c.cost)
		}
	}
}

// Without a plan the places decide.
func TestWayCautionWithoutAPlan(t *testing.T) {
	if got := wayCaution(nil, []trip.Candidate{{ByRoad: true}, {Excluded: &fact.Fact{Kind: "out.avoided"}}}); got.Kind != waysByRoad {
		t.Errorf("%q, want roads", got.Kind)
	}
	if got := wayCaution(nil, []trip.Candidate{{}}); got.Kind != waysEstimated {
		t.Errorf("%q, want estimates", got.Kind)
	}
}

func TestWayCaution(t *testing.T) {
	days := func(byRoad ...bool) []trip.Day {
		var d trip.Day
		for _, b := range byRoad {
			d.Calls = append(d.Calls, trip.Call{ByRoad: b})
		}
		return []trip.Day{d}
	}
	for _, tc := range []struct {
		days []trip.Day
		want fact.Kind
	}{{nil, waysEstimated}, {days(false), waysEstimated}, {days(true, true), waysByRoad}, {days(true, false), waysSome}} {
		if got := wayCaution(tc.days, nil); got.Kind != tc.want {
			t.Errorf("%v: %q, want %q", tc.days, got.Kind, tc.want)
		}
	}
}
