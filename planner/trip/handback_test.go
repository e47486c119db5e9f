package trip

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/replay"
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

// The last station is one that is not closed when the plan comes by; what is not
// known is said to be not known, and a nearer one that is closed is named.
func TestLastStation(t *testing.T) {
	tr := eastwards(300)
	tr.Vehicle = careless(tr.Vehicle)
	tr.Day.MaxKm, tr.Day.MaxMin = 300, 600 // from 09:00 at 60 km/h: km 270 at 13:30, 280 at 13:40, 290 at 13:50
	station := func(id, hours string, km float64) Place {
		p := at(id, "fuel", km, 0, yes("diesel"))
		p.Hours = hours
		return p
	}
	hours := func(p Place, _ time.Time, _ int) ([][2]float64, bool) {
		switch p.Hours {
		case "am":
			return [][2]float64{{480, 720}}, true
		case "all day":
			return [][2]float64{{480, 1200}}, true
		}
		return nil, false
	}
	for _, c := range []struct {
		name   string
		places []Place
		want   string
	}{
		{"open", []Place{station("a", "all day", 270), station("b", "all day", 290)}, "B, 10 km before the end; open when you come by at 13:50"},
		{"the last is closed", []Place{station("a", "am", 270), station("b", "all day", 280), station("c", "am", 290)}, "B, 20 km before the end; open when you come by at 13:40; C, 10 km before the end, is closed by then"},
		{"not known", []Place{station("a", "all day", 270), station("b", "", 280), station("c", "??", 290)}, "C, 10 km before the end; whether it is open then is not known"},
		{"all closed", []Place{station("a", "am", 270)}, "none is open when you come by: A, 30 km before the end, is closed by then"},
	} {
		t.Run(c.name, func(t *testing.T) {
			it := driven(t, mustBuild(t, tr, c.places, Options{Hours: hours}))
			if got := it.Return.Station; got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
	// Who sleeps beyond the last station passes it the day before.
	early := driven(t, mustBuild(t, tr, []Place{station("a", "all day", 200), siteAt("n", 280)}, Options{Hours: hours}), planner.Visit{Stop: "n", Night: true})
	if got, want := early.Return.Station, "A, 100 km before the end; open when you come by at 12:20 on day 1"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	// The night in between counts, and so do the minutes at a stop.
	tr.Day.MaxKm = 200
	b := mustBuild(t, tr, []Place{station("a", "all day", 50), siteAt("n", 150), station("b", "am", 290)}, Options{Hours: hours})
	plan, err := replay.Plan(b.Problem, []planner.Visit{{Stop: "n", Night: true}})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := b.passing(plan, 50), 590.0; math.Abs(got-want) > 0.1 {
		t.Errorf("km 50 at %v, want %v", got, want)
	}
	if got, want := b.passing(plan, 290), 1440+540+140.0; math.Abs(got-want) > 0.1 {
		t.Errorf("km 290 at %v, want %v", got, want)
	}
}

// The last morning: leave, sail, stop, arrive, keys, by the clock.
func TestLastMorningInOrder(t *testing.T) {
	tr := eastwards(300)
	tr.Vehicle, tr.Day.MaxKm, tr.KeysByMin = careless(tr.Vehicle), 200, 960
	tr.Ferries = []Ferry{{FromKm: 200, ToKm: 220, Min: 60}}
	b := mustBuild(t, tr, []Place{siteAt("n", 150), at("a", "fuel", 290, 0, yes("diesel"))}, Options{})
	it := driven(t, b, planner.Visit{Stop: "n", Night: true}, planner.Visit{Stop: "a", Serve: []planner.Serve{{Tank: "diesel", Amount: 10}}})
	// 09:00, 50 km, an hour at sea, 70 km, 4 min to stop and 6 to refuel, 10 km.
	want := "09:00 leave N|09:50 km 200 ferry to km 220, gas off|12:00 km 290 A: refuel Diesel (10 L)|12:20 at the end of the route|16:00 keys"
	if got := strings.Join(it.Return.Steps, "|"); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// siteAt is a campsite.
func siteAt(id string, km float64) Place {
	p := at(id, "campsite", km, 0)
	p.Stay = &Stay{}
	return p
}

// careless gives the vehicle back as it is.
func careless(v Vehicle) Vehicle {
	v.Tanks = slices.Clone(v.Tanks)
	for i := range v.Tanks {
		v.Tanks[i].End = nil
	}
	return v
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

// Whoever hands the vehicle back needs an hour for it: what is left between
// the end of the route (14:00, by hand: 300 km at 60 km/h from 09:00) and the
// keys is warned of below 60 minutes, not at 60, and named as late below none.
func TestKeysWarning(t *testing.T) {
	tr := eastwards(300)
	tr.Vehicle = careless(tr.Vehicle)
	tr.Day.MaxKm, tr.Day.MaxMin = 300, 600
	const arrive = 14 * 60
	for _, c := range []struct {
		inHand float64
		want   string
	}{{-31, "after the keys are due"}, {-1, "after the keys are due"}, {0, "until the keys are due"}, {29, "until the keys are due"}, {59, "until the keys are due"}, {60, ""}, {89, ""}} {
		tr.KeysByMin = arrive + c.inHand
		r := driven(t, mustBuild(t, tr, nil, Options{})).Return
		if r.ArriveMin != arrive || r.InHandMin != c.inHand {
			t.Fatalf("arrives at %v with %v in hand, want %v and %v", r.ArriveMin, r.InHandMin, arrive, c.inHand)
		}
		told := slices.DeleteFunc(slices.Clone(r.Warnings), func(s string) bool { return !strings.Contains(s, "keys") })
		if c.want == "" && len(told) > 0 || c.want != "" && (len(told) != 1 || !strings.Contains(told[0], c.want)) {
			t.Errorf("%v min in hand: %q, want %q", c.inHand, told, c.want)
		}
	}
}
