package trip

import (
	"math"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/life"
)

// lived is a trip in the Alps on a day of a month, in the model of a fleet.
func lived(vehicle int, start string) Trip {
	tr := eastwards(200)
	tr.Vehicle, tr.Start = Fleet()[vehicle], start
	for i := range tr.Route {
		tr.Route[i][1] += 47 // along the parallel
	}
	return tr
}

// nightAt is what one night at a place takes from a tank, to plan with.
func nightAt(t *testing.T, tr Trip, s Stay, change func(*Place)) map[string]float64 {
	t.Helper()
	p := at("a", "campsite", 50, 0)
	p.Point[1] += 47
	p.Point[0] = 0.5
	p.Stay = &s
	if change != nil {
		change(&p)
	}
	return stopOf(t, mustBuild(t, tr, []Place{p}, Options{}), "a").Night.Use
}

// A night is what package life says at the place, on the day, with the pillar's
// current, planned with at the trip's confidence for as long as the tank lasts.
func TestNightIsWhatLifeSays(t *testing.T) {
	tr := lived(3, "2027-01-15")
	s := Stay{HookUp: Yes, Amps: 10, Showers: Yes}
	got := nightAt(t, tr, s, nil)
	m, ok := tr.Model()
	if !ok {
		t.Fatal("the fleet does not live")
	}
	// 111.3 km × cos 47° a degree: 1.796° are 136 km, one day of 2.27 h.
	line := mustBuild(t, tr, nil, Options{}).Problem.LengthKm
	n, err := m.Stay(life.Stay{At: life.Where{Lat: 47, Lon: 0.5}, YearDay: 15, WheelHours: line / 60, HookUp: true, Amps: 10, Showers: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range tr.Vehicle.Tanks {
		u := n.Of(k.ID)
		want := u.Planned(0.9, u.Lasts(k.Capacity-k.Reserve))
		if math.Abs(got[k.ID]-want) > 1e-6*math.Max(1, math.Abs(want)) {
			t.Errorf("%s: %v, want %v", k.ID, got[k.ID], want)
		}
	}
}

// What must be true of any model: more cold, more height, warmer wishes and
// less current take more gas; more care takes more of everything.
func TestNightsByWeatherAndWishes(t *testing.T) {
	const torrask = 3
	plain := Stay{}
	winter := nightAt(t, lived(torrask, "2027-01-15"), plain, nil)
	summer := nightAt(t, lived(torrask, "2027-07-15"), plain, nil)
	high := nightAt(t, lived(torrask, "2027-01-15"), plain, func(p *Place) { p.EleM = new(1800.0) })
	warm := lived(torrask, "2027-01-15")
	warm.Comfort = life.Comfort{InsideC: 23, NightC: 20}
	tepid := lived(torrask, "2027-07-15")
	tepid.Comfort.HotC = 40
	likely := lived(torrask, "2027-01-15")
	likely.Confidence = 0.5
	sixAmps := nightAt(t, lived(torrask, "2027-01-15"), Stay{HookUp: Yes, Amps: 6}, nil)
	sixteen := nightAt(t, lived(torrask, "2027-01-15"), Stay{HookUp: Yes, Amps: 16}, nil)
	unknown := nightAt(t, lived(torrask, "2027-01-15"), Stay{HookUp: Yes}, nil)
	for _, c := range []struct {
		what       string
		more, less map[string]float64
		tank       string
	}{
		{"winter", winter, summer, "lpg"},
		{"height", high, winter, "lpg"},
		{"warm inside", nightAt(t, warm, plain, nil), winter, "lpg"},
		{"60 °C", summer, nightAt(t, tepid, plain, nil), "lpg"},
		{"care", winter, nightAt(t, likely, plain, nil), "lpg"},
		{"care", winter, nightAt(t, likely, plain, nil), "fresh"},
		{"no pillar", winter, sixAmps, "lpg"},
		{"6 A", sixAmps, sixteen, "lpg"},
	} {
		if !(c.more[c.tank] > c.less[c.tank]*1.02) {
			t.Errorf("%s: %s %v, without %v", c.what, c.tank, c.more[c.tank], c.less[c.tank])
		}
	}
	if unknown["lpg"] != sixAmps["lpg"] {
		t.Errorf("unknown supply: %v L of gas, at 6 A %v: the lowest common one counts", unknown["lpg"], sixAmps["lpg"])
	}
}

// The first day of a longer stay is driven, the others are not, and plugged in all day.
func TestLongerStaysAreNotDriven(t *testing.T) {
	tr := lived(3, "2027-01-15")
	u, err := newUsage(tr, []planner.Pace{{ToKm: 150, MinPerKm: 60 / tr.Day.SpeedKmh}}, axis{})
	if err != nil {
		t.Fatal(err)
	}
	p := at("a", "campsite", 50, 0)
	p.Stay = &Stay{HookUp: Yes, Amps: 16}
	one, two, three := u.nights(&p, where(&p), 50, 1), u.nights(&p, where(&p), 50, 2), u.nights(&p, where(&p), 50, 3)
	for i, k := range tr.Vehicle.Tanks {
		if a, b := two[i].High-one[i].High, three[i].High-two[i].High; math.Abs(a-b) > 1e-9 {
			t.Errorf("%s: the second day takes %v, the third %v", k.ID, a, b)
		}
	}
}

// What readings taught scales road and nights, and only of its tank.
func TestLearnedScales(t *testing.T) {
	tr := lived(3, "2027-07-15")
	before := nightAt(t, tr, Stay{}, nil)
	tr.Confidence = 0.5
	likely := nightAt(t, tr, Stay{}, nil)
	tr.Learned = []life.Factor{{Tank: "fresh", Factor: 1.2, SD: 0.05, PriorSD: 0.15, Readings: 3}}
	after := nightAt(t, tr, Stay{}, nil)
	if math.Abs(after["fresh"]-1.2*likely["fresh"]) > 1e-9 || after["grey"] != likely["grey"] {
		t.Errorf("fresh %v, want 1.2 × %v; grey %v, want %v", after["fresh"], likely["fresh"], after["grey"], likely["grey"])
	}
	tr.Confidence = 0
	if sure := nightAt(t, tr, Stay{}, nil)["fresh"]; sure/1.2 >= before["fresh"] {
		t.Errorf("planned with %v × 1.2, before %v: readings make sure", sure/1.2, before["fresh"])
	}
}

// Less warmth, tepid water and less care are tried where gas is short in
// winter: each takes less gas, and none is tried twice or without a model.
func TestRemediesOfLife(t *testing.T) {
	night := func(tr Trip) float64 { return nightAt(t, tr, Stay{}, nil)["lpg"] }
	tried := 0
	for _, r := range remedies {
		for _, word := range []string{"cooler", "40 °C", "75 of 100"} {
			if !strings.Contains(r.text, word) {
				continue
			}
			tried++
			tr := lived(2, "2027-01-15")
			before := night(tr)
			if !r.apply(&tr) || !(night(tr) < before) {
				t.Errorf("%s: %v L of gas a night, before %v", r.text, night(tr), before)
			}
			if r.apply(&tr) {
				t.Errorf("%s: twice", r.text)
			}
			if plain := eastwards(100); word != "40 °C" && r.apply(&plain) {
				t.Errorf("%s: for a vehicle without a model", r.text)
			}
		}
	}
	if tried != 3 {
		t.Errorf("%d remedies tried", tried)
	}
}

// Above 3.5 t nothing is planned faster than 80 km/h: 200 km at a wished average
// of 95 take 150 min instead of 126.3, less diesel, and a word about the law. By
// roads it is the roads' pace that is used by, not the trip's.
func TestSpeedByMassClass(t *testing.T) {
	per100 := func(kg float64, pace ...planner.Pace) (float64, *Built) {
		tr := eastwards(200)
		tr.Vehicle, tr.Day.SpeedKmh = Fleet()[2], 95
		tr.Vehicle.MassKg = kg
		var roads Roads
		if pace != nil {
			roads = paced(pace)
		}
		b := mustBuild(t, tr, nil, Options{Roads: roads})
		return 100 * b.use.perKm(tr.Vehicle.Tanks[0]).Likely, b
	}
	light, a := per100(3500)
	heavy, b := per100(3501)
	if m, n := a.Problem.Drive.Minutes(0, 200), b.Problem.Drive.Minutes(0, 200); math.Abs(m-126.3) > 0.1 || math.Abs(n-150) > 0.1 {
		t.Errorf("light %v min, heavy %v, want 126.3 and 150", m, n)
	}
	if heavy > light-1 {
		t.Errorf("heavy %v L/100 km at 80 km/h, light %v at 95", heavy, light)
	}
	if text := strings.Join(b.cautions, " "); !strings.Contains(text, "may weigh 3501 kg") || strings.Contains(strings.Join(a.cautions, " "), "may weigh") {
		t.Errorf("heavy is told %q, light %q", text, a.cautions)
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

// paced are roads that know a pace only.
type paced []planner.Pace

func (p paced) Course(Trip, float64) (Course, error) { return Course{Pace: p}, nil }
func (paced) Ways([]*Place) ([]Way, error)           { return nil, nil }

// A mixture of half butane stays liquid in part at frost: what does not come out
// is reserve, and said; propane comes out, and so does the mixture in July.
func TestGasThatStaysLiquid(t *testing.T) {
	lpg := func(start string, butane float64) (planner.Tank, *Built) {
		tr := lived(0, start)
		v := *tr.Vehicle.Life
		v.Gas.ButaneShare = butane
		tr.Vehicle.Life = &v
		b := mustBuild(t, tr, nil, Options{})
		return b.Problem.Tanks[2], b
	}
	k, b := lpg("2027-01-15", 0.5)
	air := b.use.stay(nil, life.Where{Lat: 47}, 0, false).Air
	if least := (1 - life.Gas{ButaneShare: 0.5}.Evaporates(air.MinC)) * k.Capacity; k.ID != "lpg" || k.Reserve < least-1e-9 || least <= 3 {
		t.Errorf("reserve of %s is %v of %v L at %.1f °C, want at least %v", k.ID, k.Reserve, k.Capacity, air.MinC, least)
	}
	if text := strings.Join(b.cautions, " "); !strings.Contains(text, "stays liquid") {
		t.Errorf("cautions %q", text)
	}
	for _, c := range []struct {
		start  string
		butane float64
	}{{"2027-01-15", 0}, {"2027-07-15", 0.5}} {
		if k, b := lpg(c.start, c.butane); k.Reserve != 3 || strings.Contains(strings.Join(b.cautions, " "), "stays liquid") {
			t.Errorf("%+v: reserve %v, cautions %q", c, k.Reserve, b.cautions)
		}
	}
}

// 3,000 m up and down on 200 km, spread evenly, take the diesel that package life
// says; half of them are left from the middle on.
func TestClimbing(t *testing.T) {
	tr := eastwards(200)
	tr.Vehicle = Fleet()[2]
	flat := mustBuild(t, tr, nil, Options{}).use.road.Of("diesel").Likely
	tr.UpM, tr.DownM = 3000, 3000
	b := mustBuild(t, tr, nil, Options{})
	sections := life.MixedProfile(100, 60)
	for i := range sections {
		sections[i].UpM, sections[i].DownM = 1500*sections[i].Km/100, 1500*sections[i].Km/100
	}
	want, err := b.use.model.Drive(sections)
	if err != nil {
		t.Fatal(err)
	}
	if got := b.use.road.Of("diesel").Likely; math.Abs(got-want.Of("diesel").Likely) > 1e-6 || got < flat+0.2 {
		t.Errorf("%v L/100 km in the hills, want %v, flat %v", got, want.Of("diesel").Likely, flat)
	}
	o, err := tr.Onward(driven(t, b), Now{Km: new(100.0), Time: "2026-06-12T11:00"})
	if err != nil || math.Abs(o.Trip.UpM-1500) > 1 || math.Abs(o.Trip.DownM-1500) > 1 {
		t.Errorf("%v: %v m up and %v m down are left, want 1500 each", err, o.Trip.UpM, o.Trip.DownM)
	}
	tr.DownM = -1
	if err := tr.Validate(); err == nil {
		t.Error("a fall of −1 m is valid")
	}
}

// A day of more than 300 km or 5 h at the wheel is called long.
func TestLongDay(t *testing.T) {
	tr := eastwards(310)
	tr.Day = DayLimits{MaxKm: 400, MaxMin: 900, DepartMin: 480, SpeedKmh: 70}
	if it := driven(t, mustBuild(t, tr, nil, Options{})); !strings.Contains(strings.Join(it.Cautions, " "), "Day 1 is long: 310 km and 4 h 26 min") {
		t.Errorf("cautions %q", it.Cautions)
	}
	tr.Route = eastwards(290).Route
	if it := driven(t, mustBuild(t, tr, nil, Options{})); strings.Contains(strings.Join(it.Cautions, " "), "is long") {
		t.Errorf("290 km in 4 h 09 min are called long: %q", it.Cautions)
	}
}
