package build

import (
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/replay"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"
)

func TestFerriesThatAreWrong(t *testing.T) {
	for _, c := range []struct {
		name    string
		ferries []trip.Ferry
		want    string
	}{
		{"backwards", []trip.Ferry{{FromKm: 50, ToKm: 40, Min: 10}}, "ferry 1 runs"},
		{"no time", []trip.Ferry{{FromKm: 50, ToKm: 60, Min: -1}}, "ferry 1 runs"},
		{"not a number", []trip.Ferry{{FromKm: 50, ToKm: 60, Min: math.NaN()}}, "ferry 1 runs"},
		{"out of order", []trip.Ferry{{FromKm: 50, ToKm: 60, Min: 10}, {FromKm: 55, ToKm: 70, Min: 10}}, "ferry 2 runs"},
		{"beyond the end", []trip.Ferry{{FromKm: 50, ToKm: 60, Min: 10}, {FromKm: 190, ToKm: 220, Min: 30}}, "ferry 2 runs from km 190.0 to km 220.0, but the route ends at km 200.0"},
		{"endless", []trip.Ferry{{FromKm: 50, ToKm: math.Inf(1), Min: 10}}, "ferry 1 runs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := triptest.Eastwards(200)
			tr.Ferries = c.ferries
			if _, err := Trip(tr, nil, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%v, want %q", err, c.want)
			}
		})
	}
}

// On a ferry gas is off: a stay after 6 h on one takes less gas than without,
// and its battery runs all the hours that the engine does not.
func TestFerryTurnsGasOff(t *testing.T) {
	use := func(ferries ...trip.Ferry) map[string]float64 {
		tr := triptest.Lived(0, "2027-01-15")
		tr.Day.MaxMin, tr.Ferries = 1000, ferries
		return nightAt(t, tr, trip.Stay{}, nil)
	}
	land, sea := use(), use(trip.Ferry{FromKm: 1, ToKm: 1.001, Min: 360})
	m, _ := triptest.Lived(0, "2027-01-15").Model()
	line := mustBuild(t, triptest.Lived(0, "2027-01-15"), nil, Options{}).Problem.LengthKm
	n, err := m.Stay(life.Stay{At: life.Where{Lat: 47, Lon: 0.5}, YearDay: 15, WheelHours: line / 60, FerryHours: 6})
	if err != nil {
		t.Fatal(err)
	}
	u := n.Of("lpg")
	if want := u.Planned(0.9, u.Lasts(27.2*life.FillShare-3)); math.Abs(sea["lpg"]-want) > 1e-3 || sea["lpg"] > 0.85*land["lpg"] {
		t.Errorf("%v L of gas, without the ferry %v, want %v", sea["lpg"], land["lpg"], want)
	}
	if sea["fresh"] != land["fresh"] {
		t.Errorf("%v L of water at sea, %v on land", sea["fresh"], land["fresh"])
	}
}

// The pace along the route, whatever its sections, holds on land; each ferry
// takes its minutes, and a late beginning comes on top.
func TestFerryPace(t *testing.T) {
	roads := []planner.Pace{{ToKm: 40, MinPerKm: 1}, {ToKm: 60, MinPerKm: 2}, {ToKm: 100, MinPerKm: 1.5}}
	a := trip.NewAxis(100, []trip.Crossing{{Ferry: trip.Ferry{FromKm: 50, ToKm: 70, Min: 45}}, {Ferry: trip.Ferry{FromKm: 90, ToKm: 100, Min: 30}}})
	d := planner.Drive{Pace: sailing(a, roads)}
	late := planner.Drive{Pace: delayed(d.Pace, 100)}
	for _, c := range []struct{ from, to, want float64 }{
		{0, 40, 40}, {40, 50, 20}, {50, 70, 45}, {70, 90, 30}, {90, 100, 30}, {0, 100, 165},
	} {
		if got := d.Minutes(a.Driven(c.from), a.Driven(c.to)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("km %v to %v: %v min, want %v", c.from, c.to, got, c.want)
		}
		if c.from == 0 {
			c.want += 100
		}
		if got := late.Minutes(a.Driven(c.from), a.Driven(c.to)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("late, km %v to %v: %v min, want %v", c.from, c.to, got, c.want)
		}
	}
	if last := d.Pace[len(d.Pace)-1].ToKm; math.Abs(last-a.Driven(100)) > 1e-9 {
		t.Errorf("ends at km %v", last)
	}
	// On board from the beginning, and late.
	first := trip.NewAxis(100, []trip.Crossing{{Ferry: trip.Ferry{FromKm: 0, ToKm: 10, Min: 45}}})
	if got := (planner.Drive{Pace: delayed(sailing(first, roads), 100)}).Minutes(0, trip.Metre); math.Abs(got-145) > 1e-9 {
		t.Errorf("%v min in the first metre, want 145", got)
	}
}

// A ferry that begins within the first metre begins with the trip, so that a late
// beginning and it share that metre; those of the trip stand before those of the
// roads beside them.
func TestFerriesInOrder(t *testing.T) {
	sails := func(fromKm, toKm float64) trip.Ferry { return trip.Ferry{FromKm: fromKm, ToKm: toKm, Min: 10} }
	for _, c := range []struct {
		own, known []trip.Ferry
		want       []trip.Ferry
	}{
		{[]trip.Ferry{sails(0.0009, 5)}, nil, []trip.Ferry{sails(0, 5)}},
		{[]trip.Ferry{sails(trip.Metre, 5)}, nil, []trip.Ferry{sails(trip.Metre, 5)}},
		{[]trip.Ferry{sails(10, 20)}, []trip.Ferry{sails(20, 30), sails(40, 50)}, []trip.Ferry{sails(10, 20), sails(20, 30), sails(40, 50)}},
		{[]trip.Ferry{sails(30, 40)}, []trip.Ferry{sails(10, 30)}, []trip.Ferry{sails(10, 30), sails(30, 40)}},
		{[]trip.Ferry{sails(29, 40)}, []trip.Ferry{sails(10, 30)}, []trip.Ferry{sails(29, 40)}},
		{nil, []trip.Ferry{sails(-1, 5), sails(4, 8), sails(5, 9), sails(95, 101)}, []trip.Ferry{sails(0, 5), sails(5, 9), sails(95, 100)}},
	} {
		var known []trip.Crossing
		for _, f := range c.known {
			known = append(known, trip.Crossing{Ferry: f})
		}
		out, err := ferries(trip.Trip{Ferries: c.own}, 100, known)
		var got []trip.Ferry
		for _, f := range out {
			got = append(got, f.Ferry)
		}
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("own %v, known %v: %v, %v, want %v", c.own, c.known, got, err, c.want)
		}
	}
}

// A ferry may end a hundred metres beyond the route, and ends with it then.
func TestFerryBeyondTheEnd(t *testing.T) {
	for to, ok := range map[float64]bool{100: true, 100.09: true, 100.11: false} {
		out, err := ferries(trip.Trip{Ferries: []trip.Ferry{{FromKm: 90, ToKm: to, Min: 10}}}, 100, nil)
		if (err == nil) != ok || ok && (len(out) != 1 || out[0].ToKm != 100) {
			t.Errorf("to km %v of 100: %+v, %v", to, out, err)
		}
	}
}

// Who begins late is late.
func TestLateBeginning(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.FromMin = 780
	b := mustBuild(t, tr, []trip.Place{triptest.At("a", "fuel", 0, 0, triptest.Yes("diesel"))}, Options{})
	plan, err := replay.Plan(b.Problem, []planner.Visit{{Stop: "a"}})
	if err != nil || math.Abs(plan.Visits[0].Arrive.Min-780) > 0.01 || math.Abs(plan.End.Min-(780+stopMin+200)) > 0.01 {
		t.Errorf("%v: there at %v, at the end at %v, want 13:00 and 16:24", err, plan.Visits[0].Arrive.Min, plan.End.Min)
	}
}
