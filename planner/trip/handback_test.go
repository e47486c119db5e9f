package trip

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/life"
)

// living is island in a vehicle that lives, with a station near the end.
func living(t *testing.T) (*Built, Itinerary) {
	t.Helper()
	tr, places := island()
	tr.Vehicle = Fleet()[0]
	tr.Party.Showers, tr.KeysByMin = "sites", 16*60
	last := at("n5", "fuel", 295, 1, yes("diesel"))
	b := mustBuild(t, tr, append(places, last), Options{})
	it, err := b.Plan(context.Background(), Options{})
	if err != nil || len(it.Days) == 0 {
		t.Fatalf("%s, %v, %v", it.Status, it.Why, err)
	}
	return b, it
}

// The planned level is the worse edge of the band, which the likely level lies
// in; half of a trip's use is exact about itself.
func TestBands(t *testing.T) {
	b, it := living(t)
	wide := false
	for _, s := range it.Strips {
		for _, p := range s.Points {
			edge := p.Low
			if s.Kind == planner.Waste {
				edge = p.High
			}
			if math.Abs(edge-p.L) > 1e-6 || p.Low > p.Likely+1e-9 || p.Likely > p.High+1e-9 || p.Low < 0 || p.High > s.Capacity+1e-9 {
				t.Fatalf("%s at km %.1f: %+v", s.Tank, p.Km, p)
			}
			wide = wide || p.High-p.Low > 1
		}
	}
	if !wide {
		t.Error("no band is wide")
	}
	tr := b.Trip
	tr.Confidence = 0.5
	exact := mustBuild(t, tr, b.places, Options{})
	plan, err := exact.Plan(context.Background(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range plan.Strips {
		for _, p := range s.Points {
			if math.Abs(p.High-p.Low) > 1e-6 {
				t.Fatalf("%s at confidence 0.5: %+v", s.Tank, p)
			}
		}
	}
	if plan.Care != nil {
		t.Errorf("care at confidence 0.5: %+v", plan.Care)
	}
	if it.Care == nil || it.Care.Price < 0 || it.Confidence != 0.9 || !strings.Contains(it.Care.Text, "on 90 of 100 such trips") {
		t.Errorf("care %+v", it.Care)
	}
}

// The last stops are in order, the last station is the one at km 295, and the
// keys are in time.
func TestReturn(t *testing.T) {
	_, it := living(t)
	r := it.Return
	if r == nil || !strings.HasPrefix(r.Station, "N5, 5 km before the end, 1.0 km off the route") {
		t.Fatalf("return %+v", r)
	}
	if want := 16*60 - math.Mod(r.ArriveMin, 1440); r.InHandMin != want || want < 60 || len(r.Warnings) > 0 {
		t.Errorf("in hand %v min, want %v; %q", r.InHandMin, want, r.Warnings)
	}
	all := strings.Join(r.Steps, "\n")
	if !strings.Contains(all, "drain Grey water") || !strings.Contains(all, "16:00 keys") || !strings.Contains(strings.Join(r.Agreed, "\n"), "Toilet cassette empty") {
		t.Errorf("steps %q, agreed %q", r.Steps, r.Agreed)
	}
	for _, l := range it.Checklists {
		for _, i := range l.Items {
			if len(l.Items) == 0 || i.Text == "" {
				t.Errorf("%s: %+v", l.ID, i)
			}
		}
	}
	if len(it.Checklists) != 4 {
		t.Errorf("%d checklists, want set-off, arrival, service, return", len(it.Checklists))
	}
	tr, places := island()
	tr.Vehicle, tr.KeysByMin, tr.Party.Showers = Fleet()[0], 10*60, "sites"
	late, err := Plan(context.Background(), tr, places, Options{})
	if err != nil || late.Return == nil || !strings.Contains(strings.Join(late.Return.Warnings, " "), "after the keys are due") {
		t.Errorf("%v, %+v", err, late.Return)
	}
}

// A family in the over-cab: 2930 + 2 × 75 + 2 × 40 + 40 + 72.1 kg, full of
// diesel (75 × 0.84), exhaust fluid (19 × 1.09) and gas (43.52 × 0.508) leave
// 3500 − 3377.9 = 122 L of water.
func TestWeightLimitsFreshWater(t *testing.T) {
	tr := lived(3, "2027-07-15")
	tr.Party = Party{Adults: 2, Children: 2, Showers: "sites"}
	b := mustBuild(t, tr, nil, Options{})
	if w := b.weight; w == nil || math.Abs(w.FreshL-122.1) > 0.3 || !strings.Contains(w.Text, "at most 122 L") {
		t.Fatalf("weight %+v", w)
	}
	i := 3
	if k := b.Problem.Tanks[i]; k.ID != "fresh" || math.Abs(k.Capacity-b.weight.FreshL) > 1e-9 || k.Start > k.Capacity {
		t.Errorf("tank %+v, want %v L", k, b.weight.FreshL)
	}
	tr.GearKg = 400 // too heavy even without water: a warning, and no dry trip
	heavy := mustBuild(t, tr, nil, Options{})
	if !strings.HasPrefix(heavy.weight.Text, "Too heavy") || heavy.Problem.Tanks[i].Capacity != 140 {
		t.Errorf("%+v, tank of %v", heavy.weight, heavy.Problem.Tanks[i].Capacity)
	}
}

// What the vehicle does not have is not asked for.
func TestConditions(t *testing.T) {
	for i, c := range []struct {
		vehicle int
		has     map[string]bool
	}{
		{0, map[string]bool{life.HasGas: true, life.HasAbsorption: true, life.HasDEF: true, life.HasLithium: false}},
		{1, map[string]bool{life.HasGas: false, life.HasAbsorption: false, life.HasLithium: true}},
		{2, map[string]bool{life.HasDEF: false, life.HasGas: true}},
	} {
		holds := mustBuild(t, lived(c.vehicle, "2027-07-15"), nil, Options{}).conditions(false)
		for what, want := range c.has {
			if holds(what) != want {
				t.Errorf("%d: %s is %v", i, what, !want)
			}
		}
	}
}

// What is counted with is what the problem counts with.
func TestCounts(t *testing.T) {
	b, it := living(t)
	for i, c := range it.Counts {
		if k := b.Problem.Tanks[i]; c.Tank != k.ID || math.Abs(c.Per100.High-100*k.PerKm) > 1e-9 || c.Source == "" || c.Night.High < c.Night.Likely {
			t.Errorf("%+v for %+v", c, k)
		}
	}
	if len(it.Counts) != 7 {
		t.Errorf("%d counts, want one a tank", len(it.Counts))
	}
}

// In frost a tap by the road is said to be often shut off; in summer it is not.
func TestFrostAtServices(t *testing.T) {
	for start, want := range map[string]bool{"2027-01-15": true, "2027-07-15": false} {
		tr := lived(0, start)
		tap := at("tap", "water", 0, 0, yes("fresh"))
		tap.Point, tap.EleM = orb.Point{0.5, 47}, new(1200.0)
		tr.Levels = map[string]float64{"fresh": 20}
		b := mustBuild(t, tr, []Place{tap}, Options{})
		it := driven(t, b, planner.Visit{Stop: "tap", Serve: []planner.Serve{{Tank: "fresh", Amount: 30}}})
		if got := strings.Contains(strings.Join(it.Days[0].Calls[0].Cautions, " "), "often shut off"); got != want {
			t.Errorf("%s: frost said %v, want %v", start, got, want)
		}
	}
}
