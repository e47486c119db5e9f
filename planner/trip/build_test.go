package trip

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"ullage/planner"
)

// eastwards is a trip along the equator, where 1° is 111.319 km (WGS84:
// 6378.137 km × π/180), with a place at each given km.
func eastwards(km float64) Trip {
	return Trip{
		Name: "East", Start: "2026-06-12", Vehicle: plain(),
		Party:      Party{Adults: 2, Showers: "aboard", Toilet: "aboard", Cooking: "aboard"},
		Day:        DayLimits{MaxKm: 250, MaxMin: 600, DepartMin: 540, SpeedKmh: 60},
		Stays:      StayWishes{Campsites: true, Stopovers: true},
		CorridorKm: 5, ValuePerH: 10, Currency: "EUR",
		Route: orb.LineString{{0, 0}, {km / kmPerDegree, 0}},
	}
}

// plain is the first of the fleet with uses that tanks state, so that tests
// can count by hand: 9 L/100 km, a day of 35 L of fresh water a person.
func plain() Vehicle {
	v := Fleet()[0]
	v.Life, v.EmptyKg = nil, 0
	hookUp := map[string]float64{"lpg": 0.047 / 0.51, "battery": -100}
	use := map[string]Use{
		"diesel": {PerKm: 0.09}, "def": {PerKm: 0.0036},
		"lpg":   {PerNight: (0.0777*5 + 0.35 + 2*0.047) / 0.51, PerPersonNight: 0.075 / 0.51},
		"fresh": {PerPersonNight: 35}, "grey": {PerPersonNight: 31.5}, "cassette": {PerPersonNight: 2.5},
		"battery": {PerKm: -0.25, PerNight: 30},
	}
	for i, k := range v.Tanks {
		v.Tanks[i].Use = use[k.ID]
		if h, ok := hookUp[k.ID]; ok {
			v.Tanks[i].Use.HookUpNight = new(h)
		}
	}
	return v
}

const kmPerDegree = 6378.137 * math.Pi / 180

// at puts a place beside the route: km along, off to the north.
func at(id, kind string, km, offKm float64, offers ...Offer) Place {
	const kmPerDegreeNorth = 110.574 // of latitude at the equator, WGS84
	return Place{ID: id, Kind: kind, Name: strings.ToUpper(id), Point: orb.Point{km / kmPerDegree, offKm / kmPerDegreeNorth}, Offers: offers}
}

func yes(tank string) Offer    { return Offer{Tank: tank, Answer: Yes, Tag: tank + "=yes"} }
func likely(tank string) Offer { return Offer{Tank: tank, Likely: true} }

func mustBuild(t *testing.T, tr Trip, places []Place, opt Options) *Built {
	t.Helper()
	b, err := Build(tr, places, opt)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func stopOf(t *testing.T, b *Built, id string) planner.Stop {
	t.Helper()
	for _, s := range b.Problem.Stops {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no stop %q in %v", id, stopIDs(b))
	return planner.Stop{}
}

func stopIDs(b *Built) string {
	var ids []string
	for _, s := range b.Problem.Stops {
		ids = append(ids, s.ID)
	}
	return strings.Join(ids, " ")
}

func TestBuildTakesWhatIsSaidAndLikelyNotWhatIsUnknown(t *testing.T) {
	b := mustBuild(t, eastwards(200), []Place{
		at("yes", "fuel", 10, 0, yes("diesel")),
		at("likely", "fuel", 20, 0, likely("diesel")),
		at("unknown", "fuel", 30, 0, Offer{Tank: "diesel"}),
		at("no", "fuel", 40, 0, Offer{Tank: "diesel", Answer: No, Likely: true}),
		at("other", "tap", 50, 0, Offer{Tank: "wine", Answer: Yes}),
		at("far", "fuel", 60, 5.1, yes("diesel")),
	}, Options{})
	if got, want := stopIDs(b), "yes likely"; got != want {
		t.Errorf("stops = %q, want %q", got, want)
	}
	if len(b.Candidates) != 2 {
		t.Errorf("candidates = %v, want 2: places of no use are dropped", b.Candidates)
	}
}

// The detour is 2 × 3 km × 1.4 = 8.4 km, 12.6 min at 40 km/h.
func TestBuildDetour(t *testing.T) {
	s := stopOf(t, mustBuild(t, eastwards(200), []Place{at("a", "fuel", 100, 3, yes("diesel"))}, Options{}), "a")
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"km", s.Km, 100}, {"detour km", s.DetourKm, 8.4}, {"detour min", s.DetourMin, 12.6}, {"price", s.Serves[0].Price, 1.60}} {
		if math.Abs(c.got-c.want) > 0.01 {
			t.Errorf("%s = %v, want %v", c.what, c.got, c.want)
		}
	}
}

// What the route was led round is said with the plan.
func TestBuildRound(t *testing.T) {
	tr, places, it, _ := afterTheNight(t)
	tr.Round = []string{"Low Lane: height limit 2.70 m"}
	round, err := Plan(context.Background(), tr, places, Options{})
	const want = "This vehicle does not go by Low Lane: height limit 2.70 m: the route goes round it."
	if err != nil || !slices.Contains(round.Cautions, want) || slices.Contains(it.Cautions, want) {
		t.Errorf("%v: cautions %q, without %q", err, round.Cautions, it.Cautions)
	}
}

func TestBuildExcludes(t *testing.T) {
	tr := eastwards(200) // 2.65 m high, 2.05 m wide, 5.41 m long, 3.5 t
	tr.Avoid = []string{"avoided"}
	with := func(id string, change func(*Place)) Place {
		p := at(id, "fuel", 50, 0, yes("diesel"))
		change(&p)
		return p
	}
	for _, c := range []struct {
		place Place
		want  string // part of the reason; "" is a candidate
	}{
		{with("tall", func(p *Place) { p.Limits.HeightM = 2.75 }), ""},
		{with("low", func(p *Place) { p.Limits.HeightM = 2.74 }), "too low: 2.74 m, this vehicle needs 2.75 m"},
		{with("narrow", func(p *Place) { p.Limits.WidthM = 2.1 }), "too narrow"},
		{with("short", func(p *Place) { p.Limits.LengthM = 5 }), "too short"},
		{with("weak", func(p *Place) { p.Limits.MassT = 2.8 }), "too weak: 2.80 t, this vehicle needs 3.50 t"},
		{with("private", func(p *Place) { p.Access = "private" }), "private"},
		{with("permit", func(p *Place) { p.Access = "permit" }), "with a permit only"},
		{with("avoided", func(*Place) {}), "avoided"},
		{with("unclear", func(p *Place) { p.Limits.Unclear = "maxheight=below_default" }), ""},
	} {
		b := mustBuild(t, tr, []Place{c.place}, Options{})
		got := b.Candidates[0].Excluded
		if c.want == "" != (got == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: excluded = %q, want %q", c.place.ID, got, c.want)
		}
		if (got == "") != (len(b.Problem.Stops) == 1) {
			t.Errorf("%s: excluded = %q but %d stops", c.place.ID, got, len(b.Problem.Stops))
		}
	}
}

func TestBuildNights(t *testing.T) {
	site := func(id string, s Stay) Place {
		p := at(id, "campsite", 50, 0)
		p.Stay = &s
		return p
	}
	for _, c := range []struct {
		name   string
		place  Place
		wishes StayWishes
		nights bool
		fee    float64
	}{
		{"site", site("a", Stay{}), StayWishes{Campsites: true}, true, 30},
		{"no sites", site("a", Stay{}), StayWishes{Stopovers: true}, false, 0},
		{"tagged fee", site("a", Stay{Charge: "12.50 EUR"}), StayWishes{Campsites: true}, true, 12.5},
		{"free", site("a", Stay{Fee: No}), StayWishes{Campsites: true}, true, 0},
		{"too dear", site("a", Stay{}), StayWishes{Campsites: true, MaxFee: 29}, false, 0},
		{"hook-up unknown is not yes", site("a", Stay{}), StayWishes{Campsites: true, HookUp: true}, false, 0},
		{"hook-up", site("a", Stay{HookUp: Yes}), StayWishes{Campsites: true, HookUp: true}, true, 30},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := eastwards(200)
			tr.Stays = c.wishes
			b := mustBuild(t, tr, []Place{c.place}, Options{})
			if !c.nights {
				if len(b.Problem.Stops) != 0 {
					t.Errorf("stops = %v, want none", stopIDs(b))
				}
				return
			}
			if s := stopOf(t, b, "a"); s.Night == nil || s.Night.Fee != c.fee {
				t.Errorf("night = %+v, want fee %v", s.Night, c.fee)
			}
		})
	}
}

// Services for guests come with the night; who may not stay gets none.
func TestBuildGuests(t *testing.T) {
	p := at("a", "campsite", 50, 0, Offer{Tank: "cassette", Answer: Yes, Guests: true})
	p.Stay = &Stay{}
	tr := eastwards(200)
	s := stopOf(t, mustBuild(t, tr, []Place{p}, Options{}), "a")
	if !s.Serves[0].GuestsOnly {
		t.Errorf("serves = %+v, want guests only", s.Serves)
	}
	tr.Stays.Campsites = false
	if b := mustBuild(t, tr, []Place{p}, Options{}); len(b.Problem.Stops) != 0 {
		t.Errorf("stops = %v, want none without the night", stopIDs(b))
	}
}

// 200 km at 250 km a day force no night; who wants four may stay longer.
func TestBuildLongerStays(t *testing.T) {
	p := at("a", "campsite", 50, 0, Offer{Tank: "cassette", Answer: Yes, Guests: true})
	p.Stay = &Stay{Fee: Yes}
	tr := eastwards(200)
	tr.Stays.MinNights, tr.Stays.MaxNights = 4, 4
	b := mustBuild(t, tr, []Place{p}, Options{})
	if got, want := stopIDs(b), "a a*2 a*3 a*4"; got != want {
		t.Errorf("stops = %q, want %q", got, want)
	}
	if s := stopOf(t, b, "a*3"); s.Night.Fee != 90 || s.Night.Nights != 3 || math.Abs(s.Night.Use["cassette"]-15) > 1e-9 {
		t.Errorf("three nights = %+v, want fee 90 and 3 × 2 × 2.5 L of cassette", s.Night)
	}
	p.Stay.MaxStay = "2 nights"
	if got, want := stopIDs(mustBuild(t, tr, []Place{p}, Options{})), "a a*2"; got != want {
		t.Errorf("with maxstay=2 nights: stops = %q, want %q", got, want)
	}
}

func TestBuildHours(t *testing.T) {
	tr := eastwards(200)
	place := at("a", "fuel", 50, 0, yes("diesel"))
	place.Hours = "as tagged"
	for _, c := range []struct {
		name     string
		windows  [][2]float64
		known    bool
		want     [][2]float64
		excluded bool
	}{
		{"unknown", [][2]float64{{0, 60}}, false, nil, false},
		{"a window", [][2]float64{{480, 720}}, true, [][2]float64{{480, 720}}, false},
		{"always", [][2]float64{{0, 99 * 1440}}, true, nil, false},
		{"never", nil, true, nil, true},
	} {
		opt := Options{Hours: func(p Place, from time.Time, days int) ([][2]float64, bool) {
			if p.ID != "a" || from.Format(DateLayout) != tr.Start || days < 2 {
				t.Errorf("Hours(%s, %v, %d)", p.ID, from, days)
			}
			return c.windows, c.known
		}}
		b := mustBuild(t, tr, []Place{place}, opt)
		if got := b.Candidates[0].Excluded != ""; got != c.excluded {
			t.Errorf("%s: excluded %q, want %v", c.name, b.Candidates[0].Excluded, c.excluded)
		}
		if !c.excluded {
			if got := stopOf(t, b, "a").Open; fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("%s: open = %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// A route that comes by twice makes two stops.
func TestBuildPasses(t *testing.T) {
	tr := eastwards(100)
	tr.Route = append(tr.Route, orb.Point{0, 0})
	b := mustBuild(t, tr, []Place{at("a", "fuel", 30, 0.1, yes("diesel"))}, Options{})
	if got, want := stopIDs(b), "a a@2"; got != want {
		t.Fatalf("stops = %q, want %q", got, want)
	}
	if km := stopOf(t, b, "a@2").Km; math.Abs(km-170) > 0.01 {
		t.Errorf("second pass at km %v, want 170", km)
	}
}

// Diesel of the van: 0.09 L/km. From km 50 to the next other place at km 120,
// 1 km off (1.4 km of road): 0.09 × 71.4 = 6.43.
func TestBuildSpare(t *testing.T) {
	places := []Place{
		at("a", "fuel", 50, 0, yes("diesel")),
		at("beside", "fuel", 50.1, 0, yes("diesel")),
		at("same", "fuel", 90, 0, yes("diesel")),
		at("water", "water", 95, 0, yes("fresh")),
		at("next", "fuel", 120, 1, yes("diesel")),
	}
	places[0].Operator, places[2].Operator = "one", "one"
	b := mustBuild(t, eastwards(200), places, Options{})
	if got := stopOf(t, b, "a").Serves[0].Spare; math.Abs(got-6.43) > 0.02 {
		t.Errorf("spare = %v, want 6.43", got)
	}
	// Nothing follows: enough to reach the end, 0.09 × 81.4.
	if got := stopOf(t, b, "next").Serves[0].Spare; math.Abs(got-(0.09*81.4)) > 0.02 {
		t.Errorf("spare of the last = %v, want %v", got, 0.09*81.4)
	}
}

func TestBuildRequire(t *testing.T) {
	tr := eastwards(200)
	tr.Require = []string{"a"}
	place := at("a", "fuel", 50, 0, yes("diesel"))
	if !stopOf(t, mustBuild(t, tr, []Place{place}, Options{}), "a").Required {
		t.Error("a is not required")
	}
	place.Limits.HeightM = 2
	if _, err := Build(tr, []Place{place}, Options{}); err == nil || !strings.Contains(err.Error(), "too low") {
		t.Errorf("required place that is too low: err = %v", err)
	}
	if _, err := Build(tr, nil, Options{}); err == nil || !strings.Contains(err.Error(), "a cannot be used") {
		t.Errorf("required place that is not there: err = %v", err)
	}
}

// Who sets off below the reserve still gets a plan, and a caution.
func TestBuildStartBelowReserve(t *testing.T) {
	tr := eastwards(50)
	tr.Levels = map[string]float64{"diesel": 8}
	b := mustBuild(t, tr, nil, Options{})
	if got := b.Problem.Tanks[0]; got.Start != 8 || got.Reserve != 4 {
		t.Errorf("tank = %+v, want start 8 and reserve 4", got)
	}
	if len(b.cautions) != 1 || !strings.HasPrefix(b.cautions[0], "Diesel sets off below") {
		t.Errorf("cautions = %q", b.cautions)
	}
}

func TestNightUse(t *testing.T) {
	v := plain()
	tank := func(id string) Tank {
		for _, k := range v.Tanks {
			if k.ID == id {
				return k
			}
		}
		t.Fatal(id)
		return Tank{}
	}
	two := Party{Adults: 2}
	for _, c := range []struct {
		name  string
		tank  string
		party Party
		stay  *Stay
		want  float64
	}{
		{"showers aboard", "fresh", two, nil, 70},
		{"showers at the site", "fresh", Party{Adults: 2, Showers: "sites"}, &Stay{Showers: Yes}, 18},
		{"site without showers", "fresh", Party{Adults: 2, Showers: "sites"}, &Stay{}, 40},
		{"frugal", "fresh", Party{Adults: 2, Showers: "frugal"}, nil, 20},
		{"grey is nine tenths", "grey", two, nil, 63},
		{"a child", "cassette", Party{Adults: 1, Children: 1}, nil, 2.5 * 1.7},
		{"toilets at the site", "cassette", Party{Adults: 2, Toilet: "sites"}, &Stay{Toilets: Yes}, 3},
		{"toilets unknown", "cassette", Party{Adults: 2, Toilet: "sites"}, &Stay{}, 5},
		{"battery", "battery", two, nil, 30},
		{"hook-up charges", "battery", two, &Stay{HookUp: Yes}, -100},
		{"hook-up saves gas", "lpg", two, &Stay{HookUp: Yes}, (0.047 + 0.15) / 0.51},
	} {
		if got := nightUse(tank(c.tank), c.party, c.stay); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: nightUse = %v, want %v", c.name, got, c.want)
		}
	}
}

func TestParseAmount(t *testing.T) {
	for _, c := range []struct {
		tag  string
		want float64
		ok   bool
	}{
		{"12 EUR", 12, true}, {"€12.50", 12.5, true}, {"1,459 €", 1.459, true}, {"14 EUR/night", 14, true}, {"14", 14, true},
		{"12 CHF", 0, false}, {"12 EUR/person", 0, false}, {"10-15 EUR", 0, false}, {"yes", 0, false}, {"", 0, false}, {"-3", 0, false},
	} {
		if got, ok := parseAmount(c.tag, "EUR", "night"); got != c.want || ok != c.ok {
			t.Errorf("parseAmount(%q) = %v, %v, want %v, %v", c.tag, got, ok, c.want, c.ok)
		}
	}
}

// Who goes on from the road with no more than the reserve gets a plan to the
// next place, and a caution; at home the reserve is kept.
func TestBuildOnTheRoadAtTheReserve(t *testing.T) {
	tr := eastwards(50)
	var diesel Tank
	for _, k := range tr.Vehicle.Tanks {
		if k.ID == "diesel" {
			diesel = k
		}
	}
	tr.Levels = map[string]float64{"diesel": diesel.Reserve}
	for _, doneKm := range []float64{0, 120} {
		tr.DoneKm = doneKm
		built, err := Build(tr, nil, Options{})
		if err != nil {
			t.Fatal(err)
		}
		want := diesel.Reserve
		if doneKm > 0 {
			want -= 0.02 * diesel.Capacity
		}
		for _, k := range built.Problem.Tanks {
			if k.ID == "diesel" && math.Abs(k.Reserve-want) > 1e-9 {
				t.Errorf("%v km behind: the reserve is %v, want %v", doneKm, k.Reserve, want)
			}
		}
		said := slices.ContainsFunc(built.cautions, func(c string) bool { return strings.Contains(c, "at its reserve") })
		if said != (doneKm > 0) {
			t.Errorf("%v km behind: cautions %q", doneKm, built.cautions)
		}
	}
}
