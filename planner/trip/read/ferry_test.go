package read

import (
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
	"ullage/planner/trip/triptest/built"
)

// By hand: 200 km at 60 km/h, of which km 50 to 80 are two hours on a ferry. 170
// driven km take 170 min, 15.3 L of diesel at 9 L/100 km, 0.612 L of exhaust
// fluid at 0.36, and charge the battery by 42.5 Ah at 0.25 Ah/km. From 09:00 on
// that ends at 13:50; the ferry sails at 09:50 and is there at 11:50.
func TestFerryByHand(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Levels = map[string]float64{"battery": 10}
	tr.Day.MaxKm = 171 // 200 km would be too far for a day
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].Capacity = max(tr.Vehicle.Tanks[i].Capacity, 75)
	}
	b := built.Trip(t, tr, nil, build.Options{})
	it := driven(t, b)
	if len(it.Days) != 1 {
		t.Fatalf("%d days, want one: the ferry counts for no day's kilometres", len(it.Days))
	}
	d := it.Days[0]
	if math.Abs(d.DriveKm-170) > 0.01 || math.Abs(d.DriveMin-170) > 0.01 || math.Abs(d.EndMin-(830)) > 0.01 || d.Breaks != 1 || d.ToKm != b.Axis.LengthKm {
		t.Errorf("%v km and %v min at the wheel until %v, %d breaks, to km %v; want 170, 170, 830, 1", d.DriveKm, d.DriveMin, d.EndMin, d.Breaks, d.ToKm)
	}
	if f := d.Ferries; len(f) != 1 || math.Abs(f[0].StartMin-590) > 0.01 {
		t.Errorf("ferries %+v, want one at 09:50", f)
	}
	// What is left at the first pier, at the second, at the end.
	want := map[string][3]float64{
		"diesel": {75 - 4.5, 75 - 4.5, 75 - 15.3}, "def": {17 - 0.18, 17 - 0.18, 17 - 0.612}, "battery": {10 + 12.5, 10 + 12.5, 10 + 42.5}, "fresh": {90, 90, 90},
	}
	for _, s := range it.Strips {
		w, counted := want[s.Tank]
		if !counted {
			continue
		}
		p := s.Points
		if len(p) != 4 || p[1].Km != 50 || p[2].Km != 80 || math.Abs(p[1].Min-590) > 0.01 || math.Abs(p[2].Min-710) > 0.01 {
			t.Fatalf("%s: points %+v, want the start, both piers and the end", s.Tank, p)
		}
		for i := range w {
			// A metre of the planner's way stands for the ferry.
			if math.Abs(p[i+1].L-w[i]) > 0.001 || math.Abs(p[i+1].Likely-w[i]) > 0.001 {
				t.Errorf("%s: %v at km %v, want %v", s.Tank, p[i+1].L, p[i+1].Km, w[i])
			}
		}
	}
	ferry := append(triptest.Of(it.Cautions, ferryCounted), triptest.Of(it.Cautions, ferryGas)...)
	if got, want := triptest.Lines(ferry), "ferry.counted basis=(ferry.basis.trip) for=120min from=km50.0 to=km80.0 | ferry.gas"; got != want {
		t.Errorf("cautions %q, want %q", got, want)
	}
	if !slices.ContainsFunc(it.Checklists[0].Items, func(i advice.Item) bool { return i.ID == "ferry" }) {
		t.Errorf("set-off says nothing of the ferry: %+v", it.Checklists[0].Items)
	}
}

// Places by a ferry are called at from its nearer pier, if that is near enough;
// stations at both piers are not taken for neighbours.
func TestFerryPlaces(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	b := built.Trip(t, tr, []trip.Place{
		triptest.At("before", "fuel", 50, 0, triptest.Yes("diesel")), triptest.At("by", "fuel", 53, 0, triptest.Yes("diesel")),
		triptest.At("rock", "fuel", 65, 0, triptest.Yes("diesel")), triptest.At("after", "fuel", 80, 0, triptest.Yes("diesel")),
	}, build.Options{})
	var got []string
	for _, c := range b.Candidates {
		got = append(got, c.Place)
	}
	if strings.Join(got, " ") != "before by after" {
		t.Fatalf("candidates %v, want before, by and after: the rock is 15 km from both piers", got)
	}
	if c := b.Candidates[1]; math.Abs(c.Km-50) > 1e-6 || math.Abs(c.OffKm-3) > 0.01 {
		t.Errorf("by: km %v, %v km off, want 50 and 3", c.Km, c.OffKm)
	}
	if got := triptest.StopIDs(b.Problem); got != "before after" {
		t.Errorf("stops %q, want before and after: by is no better than the station before it", got)
	}
	if c := driven(t, b, planner.Visit{Stop: "after", Serve: []planner.Serve{{Tank: "diesel", Amount: 1}}}).Days[0].Calls[0]; c.Km != 80 || math.Abs(c.ArriveMin-710) > 0.01 {
		t.Errorf("after: km %v at %v, want 80 at 11:50", c.Km, c.ArriveMin)
	}
}

// Ferries that roads know count where the trip names none.
func TestFerriesOfRoads(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	known := []trip.Crossing{{Ferry: trip.Ferry{FromKm: 49, ToKm: 81, Min: 60}, Name: "mapped", Basis: fact.Of("a", nil)}, {Ferry: trip.Ferry{FromKm: 190, ToKm: 200.05, Min: 30}, Name: "Last", Basis: fact.Of("b", nil)}}
	b := built.Trip(t, tr, nil, build.Options{Roads: triptest.Boats{Ferries: known}})
	if n := len(b.Axis.Ferries); n != 2 || b.Axis.Ferries[0].Min != 120 || b.Axis.Ferries[1].Name != "Last" || b.Axis.Ferries[1].ToKm != b.Axis.LengthKm {
		t.Errorf("ferries %+v, want the trip's own and the last", b.Axis.Ferries)
	}
	if math.Abs(b.Problem.LengthKm-160) > 0.01 {
		t.Errorf("%v km are driven, want 160", b.Problem.LengthKm)
	}
	it := driven(t, b)
	if end := it.Days[0].EndMin; math.Abs(end-(540+160+150)) > 0.1 {
		t.Errorf("at the end at %v, want 540 + 160 + 150", end)
	}
}

// A ferry of the trip where the roads have a road is warned of; at sea it is not.
func TestFerryOnDryLand(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Ferries = []trip.Ferry{{FromKm: 20, ToKm: 30, Min: 20}, {FromKm: 50, ToKm: 80, Min: 120}, {FromKm: 100, ToKm: 110, Min: 60}}
	roads := triptest.Boats{Ferries: []trip.Crossing{{Ferry: trip.Ferry{FromKm: 49, ToKm: 81, Min: 60}}}, Off: [][2]float64{{98, 105}}} // of the last, just half is road
	onLand := func(roads trip.Roads) string {
		b := reader{built.Trip(t, tr, nil, build.Options{Roads: roads})}
		return triptest.Lines(triptest.Of(b.cautions(fact.Fact{}), ferryOnLand))
	}
	if got, want := onLand(roads), "ferry.on_land from=km20.0 km=10km n=1 to=km30.0"; got != want {
		t.Errorf("cautions %q, want %q", got, want)
	}
	if got := onLand(nil); got != "" {
		t.Errorf("without roads: %q", got)
	}
}

// A late beginning is no time at the wheel, and neither is a ferry; both are of the
// first metre or of none.
func TestAtTheWheel(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Day.MaxMin, tr.FromMin = 900, 540+100
	tr.Ferries = []trip.Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	b := reader{built.Trip(t, tr, nil, build.Options{})}
	for _, c := range []struct{ from, to, want float64 }{
		{0, 170, 170}, {0, 50, 50}, {50, 170, 120}, {60, 170, 110}, {trip.Metre, 50, 50}, {0, trip.Metre, 0}, {0, 0, 0},
	} {
		if got := b.driving(c.from, c.to); math.Abs(got-c.want) > 0.01 {
			t.Errorf("km %v to %v: %v min, want %v", c.from, c.to, got, c.want)
		}
	}
}

// What is switched on board is what the vehicle has, and nothing that is done anyway.
func TestSwitchedOnBoard(t *testing.T) {
	for i, want := range []string{"howto.ferry.step.gas_ferry | howto.ferry.step.fridge_ferry", ""} {
		b := reader{built.Trip(t, triptest.Lived(i, "2027-07-15"), nil, build.Options{})}
		if got := triptest.Lines(b.switched()); got != want {
			t.Errorf("%d: %q, want %q", i, got, want)
		}
	}
}
