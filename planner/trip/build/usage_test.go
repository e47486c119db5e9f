package build

import (
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
)

// A night is what package life says at the place, on the day, with the pillar's
// current, planned with at the trip's confidence for as long as the tank lasts.
func TestNightIsWhatLifeSays(t *testing.T) {
	tr := triptest.Lived(3, "2027-01-15")
	s := trip.Stay{HookUp: trip.Yes, Amps: 10, Showers: trip.Yes}
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
	plain := trip.Stay{}
	winter := nightAt(t, triptest.Lived(torrask, "2027-01-15"), plain, nil)
	summer := nightAt(t, triptest.Lived(torrask, "2027-07-15"), plain, nil)
	high := nightAt(t, triptest.Lived(torrask, "2027-01-15"), plain, func(p *trip.Place) { p.EleM = new(1800.0) })
	warm := triptest.Lived(torrask, "2027-01-15")
	warm.Comfort = life.Comfort{InsideC: 23, NightC: 20}
	tepid := triptest.Lived(torrask, "2027-07-15")
	tepid.Comfort.HotC = 40
	likely := triptest.Lived(torrask, "2027-01-15")
	likely.Confidence = 0.5
	sixAmps := nightAt(t, triptest.Lived(torrask, "2027-01-15"), trip.Stay{HookUp: trip.Yes, Amps: 6}, nil)
	sixteen := nightAt(t, triptest.Lived(torrask, "2027-01-15"), trip.Stay{HookUp: trip.Yes, Amps: 16}, nil)
	unknown := nightAt(t, triptest.Lived(torrask, "2027-01-15"), trip.Stay{HookUp: trip.Yes}, nil)
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
	tr := triptest.Lived(3, "2027-01-15")
	u, err := trip.NewUsage(tr, []planner.Pace{{ToKm: 150, MinPerKm: 60 / tr.Day.SpeedKmh}}, trip.Axis{})
	if err != nil {
		t.Fatal(err)
	}
	p := triptest.At("a", "campsite", 50, 0)
	p.Stay = &trip.Stay{HookUp: trip.Yes, Amps: 16}
	one, two, three := u.Nights(&p, trip.Where(&p), 50, 1), u.Nights(&p, trip.Where(&p), 50, 2), u.Nights(&p, trip.Where(&p), 50, 3)
	for i, k := range tr.Vehicle.Tanks {
		if a, b := two[i].High-one[i].High, three[i].High-two[i].High; math.Abs(a-b) > 1e-9 {
			t.Errorf("%s: the second day takes %v, the third %v", k.ID, a, b)
		}
	}
}

// What readings taught scales road and nights, and only of its tank.
func TestLearnedScales(t *testing.T) {
	tr := triptest.Lived(3, "2027-07-15")
	before := nightAt(t, tr, trip.Stay{}, nil)
	tr.Confidence = 0.5
	likely := nightAt(t, tr, trip.Stay{}, nil)
	tr.Learned = []life.Factor{{Tank: "fresh", Factor: 1.2, SD: 0.05, PriorSD: 0.15, Readings: 3}}
	after := nightAt(t, tr, trip.Stay{}, nil)
	if math.Abs(after["fresh"]-1.2*likely["fresh"]) > 1e-9 || after["grey"] != likely["grey"] {
		t.Errorf("fresh %v, want 1.2 × %v; grey %v, want %v", after["fresh"], likely["fresh"], after["grey"], likely["grey"])
	}
	tr.Confidence = 0
	if sure := nightAt(t, tr, trip.Stay{}, nil)["fresh"]; sure/1.2 >= before["fresh"] {
		t.Errorf("planned with %v × 1.2, before %v: readings make sure", sure/1.2, before["fresh"])
	}
}

// A mixture of half butane stays liquid in part at frost: what does not come out
// is reserve, and said; propane comes out, and so does the mixture in July.
func TestGasThatStaysLiquid(t *testing.T) {
	lpg := func(start trip.Date, butane float64) (planner.Tank, *Built) {
		tr := triptest.Lived(0, start)
		v := *tr.Vehicle.Life
		v.Gas.ButaneShare = butane
		tr.Vehicle.Life = &v
		b := mustBuild(t, tr, nil, Options{})
		return b.Problem.Tanks[2], b
	}
	k, b := lpg("2027-01-15", 0.5)
	air := b.Use.Stay(nil, life.Where{Lat: 47}, 0).Air
	if least := (1 - life.Gas{ButaneShare: 0.5}.Evaporates(air.MinC)) * k.Capacity; k.ID != "lpg" || k.Reserve < least-1e-9 || least <= 3 {
		t.Errorf("reserve of %s is %v of %v L at %.1f °C, want at least %v", k.ID, k.Reserve, k.Capacity, air.MinC, least)
	}
	if got := triptest.Lines(b.Notes); !strings.HasPrefix(got, "start.gas_stuck part=") {
		t.Errorf("notes %q", got)
	}
	for _, c := range []struct {
		start  trip.Date
		butane float64
	}{{"2027-01-15", 0}, {"2027-07-15", 0.5}} {
		if k, b := lpg(c.start, c.butane); k.Reserve != 3 || len(b.Notes) > 0 {
			t.Errorf("%+v: reserve %v, cautions %q", c, k.Reserve, triptest.Lines(b.Notes))
		}
	}
}

// The usual night is one in the middle of the route, where nothing is to be had.
func TestUsualNight(t *testing.T) {
	tr := triptest.Lived(0, "2027-01-15")
	tr.Route = orb.LineString{{0, 40}, {0, 44}, {0, 45}, {0, 49}}
	tr.Day.MaxKm = 200
	c := mustBuild(t, tr, nil, Options{}).Course
	want := c.Use.Nights(nil, life.Where{Lat: 45}, c.Axis.LengthKm/2, 1)
	if got := c.UsualNight(); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
