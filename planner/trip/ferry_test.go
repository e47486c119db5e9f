package trip

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/replay"
)

// By hand: 200 km at 60 km/h, of which km 50 to 80 are two hours on a ferry. 170
// driven km take 170 min, 15.3 L of diesel at 9 L/100 km, 0.612 L of exhaust
// fluid at 0.36, and charge the battery by 42.5 Ah at 0.25 Ah/km. From 09:00 on
// that ends at 13:50; the ferry sails at 09:50 and is there at 11:50.
func TestFerryByHand(t *testing.T) {
	tr := eastwards(200)
	tr.Levels = map[string]float64{"battery": 10}
	tr.Day.MaxKm = 171 // 200 km would be too far for a day
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].Capacity = max(tr.Vehicle.Tanks[i].Capacity, 75)
	}
	b := mustBuild(t, tr, nil, Options{})
	it := driven(t, b)
	if len(it.Days) != 1 {
		t.Fatalf("%d days, want one: the ferry counts for no day's kilometres", len(it.Days))
	}
	d := it.Days[0]
	if math.Abs(d.DriveKm-170) > 0.01 || math.Abs(d.DriveMin-170) > 0.01 || math.Abs(d.EndMin-(830)) > 0.01 || d.Breaks != 1 || d.ToKm != b.axis.lengthKm {
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
	text := strings.Join(it.Cautions, "\n")
	for _, say := range []string{"Ferry, km 50.0 to km 80.0: counted as 120 min without driving (as the trip says)", "Gas off at the cylinder before you drive on"} {
		if !strings.Contains(text, say) {
			t.Errorf("no caution says %q in\n%s", say, text)
		}
	}
	if !slices.ContainsFunc(it.Checklists[0].Items, func(i life.Item) bool { return i.ID == "ferry" }) {
		t.Errorf("set-off says nothing of the ferry: %+v", it.Checklists[0].Items)
	}
}

// Places by a ferry are called at from its nearer pier, if that is near enough;
// stations at both piers are not taken for neighbours.
func TestFerryPlaces(t *testing.T) {
	tr := eastwards(200)
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	b := mustBuild(t, tr, []Place{
		at("before", "fuel", 50, 0, yes("diesel")), at("by", "fuel", 53, 0, yes("diesel")),
		at("rock", "fuel", 65, 0, yes("diesel")), at("after", "fuel", 80, 0, yes("diesel")),
	}, Options{})
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
	if got := stopIDs(b); got != "before after" {
		t.Errorf("stops %q, want before and after: by is no better than the station before it", got)
	}
	if c := driven(t, b, planner.Visit{Stop: "after", Serve: []planner.Serve{{Tank: "diesel", Amount: 1}}}).Days[0].Calls[0]; c.Km != 80 || math.Abs(c.ArriveMin-710) > 0.01 {
		t.Errorf("after: km %v at %v, want 80 at 11:50", c.Km, c.ArriveMin)
	}
}

// A refusal names positions of the route.
func TestFerryRefusal(t *testing.T) {
	tr := eastwards(200)
	tr.Levels = map[string]float64{"diesel": 20} // of which 12 are reserve: 88 km
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	it, err := mustBuild(t, tr, []Place{at("far", "fuel", 150, 0, yes("diesel"))}, Options{}).Plan(context.Background(), Options{})
	if err != nil || it.Status != planner.Infeasible {
		t.Fatalf("%s, %v", it.Status, err)
	}
	// 120 km to the station need 10.8 L.
	if want := "between km 0 and km 150: 2.8 L more"; !strings.Contains(it.Why[0].Text, want) || math.Abs(it.Why[0].ToKm-150) > 0.01 {
		t.Errorf("%q to km %v does not say %q", it.Why[0].Text, it.Why[0].ToKm, want)
	}
}

// A ferry that does not fit into a day is said to be why there is no plan.
func TestFerryLongerThanADay(t *testing.T) {
	tr := eastwards(100)
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 700}} // a day has 600
	it, err := mustBuild(t, tr, nil, Options{}).Plan(context.Background(), Options{})
	if err != nil || it.Status != planner.Infeasible || !strings.Contains(strings.Join(it.Cautions, " "), "longer than a day on the road may be, 600 min") {
		t.Errorf("%s, %v, cautions %q", it.Status, err, it.Cautions)
	}
}

func TestFerriesThatAreWrong(t *testing.T) {
	for _, c := range []struct {
		name    string
		ferries []Ferry
		want    string
	}{
		{"backwards", []Ferry{{50, 40, 10}}, "ferry 1 runs"},
		{"no time", []Ferry{{50, 60, -1}}, "ferry 1 runs"},
		{"not a number", []Ferry{{50, 60, math.NaN()}}, "ferry 1 runs"},
		{"out of order", []Ferry{{50, 60, 10}, {55, 70, 10}}, "ferry 2 runs"},
		{"beyond the end", []Ferry{{50, 60, 10}, {190, 220, 30}}, "ferry 2 runs from km 190.0 to km 220.0, but the route ends at km 200.0"},
		{"endless", []Ferry{{50, math.Inf(1), 10}}, "ferry 1 runs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := eastwards(200)
			tr.Ferries = c.ferries
			if _, err := Build(tr, nil, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%v, want %q", err, c.want)
			}
		})
	}
}

// Ferries that roads know count where the trip names none.
func TestFerriesOfRoads(t *testing.T) {
	tr := eastwards(200)
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	known := []Crossing{{Ferry: Ferry{49, 81, 60}, Name: "mapped", Basis: "a"}, {Ferry: Ferry{190, 200.05, 30}, Name: "Last", Basis: "b"}}
	b := mustBuild(t, tr, nil, Options{Roads: boats{ferries: known}})
	if n := len(b.axis.ferries); n != 2 || b.axis.ferries[0].Min != 120 || b.axis.ferries[1].Name != "Last" || b.axis.ferries[1].ToKm != b.axis.lengthKm {
		t.Errorf("ferries %+v, want the trip's own and the last", b.axis.ferries)
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
	tr := eastwards(200)
	tr.Ferries = []Ferry{{FromKm: 20, ToKm: 30, Min: 20}, {FromKm: 50, ToKm: 80, Min: 120}, {FromKm: 100, ToKm: 110, Min: 60}}
	roads := boats{ferries: []Crossing{{Ferry: Ferry{49, 81, 60}}}, off: [][2]float64{{98, 106}}}
	text := strings.Join(mustBuild(t, tr, nil, Options{Roads: roads}).cautions, "\n")
	if !strings.Contains(text, "Ferry 1, km 20.0 to km 30.0, is on roads of the map data for 10 km") || strings.Contains(text, "Ferry 2, ") || strings.Contains(text, "Ferry 3, ") {
		t.Errorf("cautions\n%s", text)
	}
	if text := strings.Join(mustBuild(t, tr, nil, Options{}).cautions, "\n"); strings.Contains(text, "is on roads") {
		t.Errorf("without roads: %s", text)
	}
}

// boats are roads that know ferries only.
type boats struct {
	ferries []Crossing
	off     [][2]float64
}

func (c boats) Course(Trip, float64) (Course, error) {
	return Course{Ferries: c.ferries, Off: c.off}, nil
}
func (boats) Ways([]*Place) ([]Way, error) { return nil, nil }

// On a ferry gas is off: a stay after 6 h on one takes less gas than without,
// and its battery runs all the hours that the engine does not.
func TestFerryTurnsGasOff(t *testing.T) {
	use := func(ferries ...Ferry) map[string]float64 {
		tr := lived(0, "2027-01-15")
		tr.Day.MaxMin, tr.Ferries = 1000, ferries
		return nightAt(t, tr, Stay{}, nil)
	}
	land, sea := use(), use(Ferry{FromKm: 1, ToKm: 1.001, Min: 360})
	m, _ := lived(0, "2027-01-15").Model()
	line := mustBuild(t, lived(0, "2027-01-15"), nil, Options{}).Problem.LengthKm
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

// The two axes are each other's inverse, and ascend together.
func TestAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var sea []Crossing
		for _, f := range someFerries(t, 100) {
			sea = append(sea, Crossing{Ferry: f})
		}
		a := newAxis(100, sea)
		one, two := rapid.Float64Range(0, 100).Draw(t, "one"), rapid.Float64Range(0, 100).Draw(t, "two")
		if back := a.route(a.driven(one)); math.Abs(back-one) > 1e-6 {
			t.Fatalf("km %v comes back as %v with %+v", one, back, sea)
		}
		if (one < two) != (a.driven(one) < a.driven(two)) {
			t.Fatalf("km %v and %v become %v and %v", one, two, a.driven(one), a.driven(two))
		}
	})
}

// The pace along the route, whatever its sections, holds on land; each ferry
// takes its minutes, and a late beginning comes on top.
func TestFerryPace(t *testing.T) {
	roads := []planner.Pace{{ToKm: 40, MinPerKm: 1}, {ToKm: 60, MinPerKm: 2}, {ToKm: 100, MinPerKm: 1.5}}
	a := newAxis(100, []Crossing{{Ferry: Ferry{50, 70, 45}}, {Ferry: Ferry{90, 100, 30}}})
	d := planner.Drive{Pace: a.pace(roads)}
	late := planner.Drive{Pace: delayed(d.Pace, 100)}
	for _, c := range []struct{ from, to, want float64 }{
		{0, 40, 40}, {40, 50, 20}, {50, 70, 45}, {70, 90, 30}, {90, 100, 30}, {0, 100, 165},
	} {
		if got := d.Minutes(a.driven(c.from), a.driven(c.to)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("km %v to %v: %v min, want %v", c.from, c.to, got, c.want)
		}
		if c.from == 0 {
			c.want += 100
		}
		if got := late.Minutes(a.driven(c.from), a.driven(c.to)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("late, km %v to %v: %v min, want %v", c.from, c.to, got, c.want)
		}
	}
	if last := d.Pace[len(d.Pace)-1].ToKm; math.Abs(last-a.driven(100)) > 1e-9 {
		t.Errorf("ends at km %v", last)
	}
	// On board from the beginning, and late.
	first := newAxis(100, []Crossing{{Ferry: Ferry{0, 10, 45}}})
	if got := (planner.Drive{Pace: delayed(first.pace(roads), 100)}).Minutes(0, metre); math.Abs(got-145) > 1e-9 {
		t.Errorf("%v min in the first metre, want 145", got)
	}
}

// Who begins late is late.
func TestLateBeginning(t *testing.T) {
	tr := eastwards(200)
	tr.FromMin = 780
	b := mustBuild(t, tr, []Place{at("a", "fuel", 0, 0, yes("diesel"))}, Options{})
	plan, err := replay.Plan(b.Problem, []planner.Visit{{Stop: "a"}})
	if err != nil || math.Abs(plan.Visits[0].Arrive.Min-780) > 0.01 || math.Abs(plan.End.Min-(780+stopMin+200)) > 0.01 {
		t.Errorf("%v: there at %v, at the end at %v, want 13:00 and 16:24", err, plan.Visits[0].Arrive.Min, plan.End.Min)
	}
}

// Stations where the trip begins, at a pier where one leaves and at one where one
// lands: passed without a call, what they sell is not in the tank.
func TestPassedByFerry(t *testing.T) {
	tr := eastwards(200)
	tr.Levels = map[string]float64{"diesel": 40}
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80.1, Min: 120}}
	var places []Place
	var visits []planner.Visit
	for id, km := range map[string]float64{"a": 0, "b": 50, "c": 80.1} {
		places = append(places, at(id, "fuel", km, 0, yes("diesel")))
	}
	for _, id := range []string{"a", "b", "c"} {
		visits = append(visits, planner.Visit{Stop: id, Serve: []planner.Serve{{Tank: "diesel", Amount: 5}}})
	}
	it := driven(t, mustBuild(t, tr, places, Options{}), visits...)
	at := Now{Km: new(100.0), Time: "2026-06-12T14:00"}
	all := mustOnward(t, tr, it, at).Trip.Levels["diesel"]
	for _, id := range []string{"a", "b", "c"} {
		at.Called = map[string]bool{id: false}
		if got := mustOnward(t, tr, it, at).Trip.Levels["diesel"]; math.Abs(all-5-got) > 0.01 {
			t.Errorf("%s passed: %v L, want 5 less than %v", id, got, all)
		}
	}
}

// On the road, beside and after a ferry: what is behind is not waited for again,
// what is half sailed has half its minutes left, and a reading after it knows
// that its kilometres used nothing.
func TestOnwardByFerry(t *testing.T) {
	tr := eastwards(200)
	tr.Vehicle, tr.Day.MaxMin = Fleet()[0], 900
	tr.Ferries = []Ferry{{FromKm: 50, ToKm: 80, Min: 120}}
	it := driven(t, mustBuild(t, tr, nil, Options{}))
	half := mustOnward(t, tr, it, Now{Km: new(65.0), Time: "2026-06-12T10:50"})
	if f := half.Trip.Ferries; len(f) != 1 || f[0].FromKm != 0 || math.Abs(f[0].ToKm-15) > 1e-9 || math.Abs(f[0].Min-60) > 1e-9 {
		t.Errorf("on board %+v, want 15 km and an hour", f)
	}
	rest := driven(t, mustBuild(t, half.Trip, nil, Options{}))
	if end := rest.Days[0].EndMin; math.Abs(end-(650+60+120)) > 0.1 || math.Abs(rest.Days[0].Ferries[0].StartMin-650) > 0.1 {
		t.Errorf("at the end at %v, on board from %v, want 13:50 and 10:50", end, rest.Days[0].Ferries[0].StartMin)
	}
	if text := strings.Join(half.Notes, " "); !strings.Contains(text, "The 50 km of today") {
		t.Errorf("notes %q, want the 50 km that were driven", text)
	}
	use := it.Counts[0].Per100.Likely / 100
	later := mustOnward(t, tr, it, Now{Km: new(100.0), Time: "2026-06-12T12:10", Gauges: map[string]Shown{"diesel": {Kind: "litres", Value: 75 - 70*use}}})
	if l := later.Lessons[0]; math.Abs(l.Factor-1) > 0.01 {
		t.Errorf("%+v, want a factor of 1: 70 km were driven", l)
	}
	if len(later.Trip.Ferries) != 0 {
		t.Errorf("ferries ahead %+v", later.Trip.Ferries)
	}
}
