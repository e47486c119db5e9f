package build

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
	"ullage/geo"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

func TestBuildTakesWhatIsSaidAndLikelyNotWhatIsUnknown(t *testing.T) {
	b := mustBuild(t, triptest.Eastwards(200), []trip.Place{
		triptest.At("yes", "fuel", 10, 0, triptest.Yes("diesel")),
		triptest.At("likely", "fuel", 20, 0, triptest.Likely("diesel")),
		triptest.At("unknown", "fuel", 30, 0, trip.Offer{Tank: "diesel"}),
		triptest.At("no", "fuel", 40, 0, trip.Offer{Tank: "diesel", Answer: trip.No, Likely: true}),
		triptest.At("other", "tap", 50, 0, trip.Offer{Tank: "wine", Answer: trip.Yes}),
		triptest.At("far", "fuel", 60, 5.1, triptest.Yes("diesel")),
	}, Options{})
	if got, want := triptest.StopIDs(b.Problem), "yes likely"; got != want {
		t.Errorf("stops = %q, want %q", got, want)
	}
	if len(b.Candidates) != 2 {
		t.Errorf("candidates = %v, want 2: places of no use are dropped", b.Candidates)
	}
}

// What a night on hook-up brings is no service of its own.
func TestBuildServesNoBattery(t *testing.T) {
	b := mustBuild(t, triptest.Eastwards(200), []trip.Place{triptest.At("a", "service", 10, 0, triptest.Yes("fresh"), triptest.Yes("battery"))}, Options{})
	if s := triptest.StopOf(t, b.Problem, "a").Serves; len(s) != 1 || s[0].Tank != "fresh" {
		t.Errorf("serves %+v, want fresh water only", s)
	}
}

// The detour is 2 × 3 km × 1.4 = 8.4 km, 12.6 min at 40 km/h.
func TestBuildDetour(t *testing.T) {
	s := triptest.StopOf(t, mustBuild(t, triptest.Eastwards(200), []trip.Place{triptest.At("a", "fuel", 100, 3, triptest.Yes("diesel"))}, Options{}).Problem, "a")
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"km", s.Km, 100}, {"detour km", s.DetourKm, 8.4}, {"detour min", s.DetourMin, 12.6}, {"price", s.Serves[0].Price, 1.60}} {
		if math.Abs(c.got-c.want) > 0.01 {
			t.Errorf("%s = %v, want %v", c.what, c.got, c.want)
		}
	}
}

func TestBuildExcludes(t *testing.T) {
	tr := triptest.Eastwards(200) // 2.65 m high, 2.05 m wide, 5.41 m long, 3.5 t
	tr.Avoid = []string{"avoided"}
	with := func(id string, change func(*trip.Place)) trip.Place {
		p := triptest.At(id, "fuel", 50, 0, triptest.Yes("diesel"))
		change(&p)
		return p
	}
	for _, c := range []struct {
		place trip.Place
		want  string // the reason; "" is a candidate
	}{
		{with("tall", func(p *trip.Place) { p.Limits.HeightM = 2.75 }), ""},
		{with("low", func(p *trip.Place) { p.Limits.HeightM = 2.74 }), "out.low limit=2.74m needs=2.75m"},
		{with("narrow", func(p *trip.Place) { p.Limits.WidthM = 2.1 }), "out.narrow limit=2.10m needs=2.15m"},
		{with("short", func(p *trip.Place) { p.Limits.LengthM = 5 }), "out.short limit=5.00m needs=5.41m"},
		{with("weak", func(p *trip.Place) { p.Limits.MassT = 2.8 }), "out.weak allowed=3500kg mass=2800kg"},
		{with("strong", func(p *trip.Place) { p.Limits.MassT = 3.5 }), ""},
		{with("private", func(p *trip.Place) { p.Access = "private" }), "out.access tag=access=private who=access.private"},
		{with("permit", func(p *trip.Place) { p.Access = "permit" }), "out.access tag=access=permit who=access.permit"},
		{with("avoided", func(*trip.Place) {}), "out.avoided"},
		{with("unclear", func(p *trip.Place) { p.Limits.Unclear = "maxheight=below_default" }), ""},
	} {
		b := mustBuild(t, tr, []trip.Place{c.place}, Options{})
		got := ""
		if why := b.Candidates[0].Excluded; why != nil {
			got = triptest.Line(*why)
		}
		if got != c.want {
			t.Errorf("%s: excluded = %q, want %q", c.place.ID, got, c.want)
		}
		if (got == "") != (len(b.Problem.Stops) == 1) {
			t.Errorf("%s: excluded = %q but %d stops", c.place.ID, got, len(b.Problem.Stops))
		}
	}
}

func TestBuildNights(t *testing.T) {
	site := func(id string, s trip.Stay) trip.Place {
		p := triptest.At(id, "campsite", 50, 0)
		p.Stay = &s
		return p
	}
	for _, c := range []struct {
		name   string
		place  trip.Place
		wishes trip.StayWishes
		nights bool
		fee    float64
	}{
		{"site", site("a", trip.Stay{}), trip.StayWishes{Campsites: true}, true, 30},
		{"no sites", site("a", trip.Stay{}), trip.StayWishes{Stopovers: true}, false, 0},
		{"tagged fee", site("a", trip.Stay{Charge: "12.50 EUR"}), trip.StayWishes{Campsites: true}, true, 12.5},
		{"free", site("a", trip.Stay{Fee: trip.No}), trip.StayWishes{Campsites: true}, true, 0},
		{"too dear", site("a", trip.Stay{}), trip.StayWishes{Campsites: true, MaxFee: 29}, false, 0},
		{"hook-up unknown is not yes", site("a", trip.Stay{}), trip.StayWishes{Campsites: true, HookUp: true}, false, 0},
		{"hook-up", site("a", trip.Stay{HookUp: trip.Yes}), trip.StayWishes{Campsites: true, HookUp: true}, true, 30},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := triptest.Eastwards(200)
			tr.Stays = c.wishes
			b := mustBuild(t, tr, []trip.Place{c.place}, Options{})
			if !c.nights {
				if len(b.Problem.Stops) != 0 {
					t.Errorf("stops = %v, want none", triptest.StopIDs(b.Problem))
				}
				return
			}
			if s := triptest.StopOf(t, b.Problem, "a"); s.Night == nil || s.Night.Fee != c.fee {
				t.Errorf("night = %+v, want fee %v", s.Night, c.fee)
			}
		})
	}
}

// Services for guests come with the night; who may not stay gets none.
func TestBuildGuests(t *testing.T) {
	p := triptest.At("a", "campsite", 50, 0, trip.Offer{Tank: "cassette", Answer: trip.Yes, Guests: true})
	p.Stay = &trip.Stay{}
	tr := triptest.Eastwards(200)
	s := triptest.StopOf(t, mustBuild(t, tr, []trip.Place{p}, Options{}).Problem, "a")
	if !s.Serves[0].GuestsOnly {
		t.Errorf("serves = %+v, want guests only", s.Serves)
	}
	tr.Stays.Campsites = false
	if b := mustBuild(t, tr, []trip.Place{p}, Options{}); len(b.Problem.Stops) != 0 {
		t.Errorf("stops = %v, want none without the night", triptest.StopIDs(b.Problem))
	}
}

// 200 km at 250 km a day force no night; who wants four may stay longer.
func TestBuildLongerStays(t *testing.T) {
	p := triptest.At("a", "campsite", 50, 0, trip.Offer{Tank: "cassette", Answer: trip.Yes, Guests: true})
	p.Stay = &trip.Stay{Fee: trip.Yes}
	tr := triptest.Eastwards(200)
	tr.Stays.MinNights, tr.Stays.MaxNights = 4, 4
	b := mustBuild(t, tr, []trip.Place{p}, Options{})
	if got, want := triptest.StopIDs(b.Problem), "a a*2 a*3 a*4"; got != want {
		t.Errorf("stops = %q, want %q", got, want)
	}
	if s := triptest.StopOf(t, b.Problem, "a*3"); s.Night.Fee != 90 || s.Night.Nights != 3 || math.Abs(s.Night.Use["cassette"]-15) > 1e-9 {
		t.Errorf("three nights = %+v, want fee 90 and 3 × 2 × 2.5 L of cassette", s.Night)
	}
	p.Stay.MaxStay = "2 nights"
	if got, want := triptest.StopIDs(mustBuild(t, tr, []trip.Place{p}, Options{}).Problem), "a a*2"; got != want {
		t.Errorf("with maxstay=2 nights: stops = %q, want %q", got, want)
	}
}

func TestBuildHours(t *testing.T) {
	tr := triptest.Eastwards(200)
	place := triptest.At("a", "fuel", 50, 0, triptest.Yes("diesel"))
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
		opt := Options{Hours: func(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
			if p.ID != "a" || trip.DateOf(from) != tr.Start || days < 2 {
				t.Errorf("Hours(%s, %v, %d)", p.ID, from, days)
			}
			return c.windows, c.known
		}}
		b := mustBuild(t, tr, []trip.Place{place}, opt)
		if got := b.Candidates[0].Excluded; (got != nil) != c.excluded || c.excluded && triptest.Line(*got) != "out.shut tag=opening_hours=as tagged" {
			t.Errorf("%s: excluded %v, want %v", c.name, got, c.excluded)
		}
		if !c.excluded {
			if got := triptest.StopOf(t, b.Problem, "a").Open; fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("%s: open = %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// A route that comes by twice makes two stops.
func TestBuildPasses(t *testing.T) {
	tr := triptest.Eastwards(100)
	tr.Route = append(tr.Route, orb.Point{0, 0})
	b := mustBuild(t, tr, []trip.Place{triptest.At("a", "fuel", 30, 0.1, triptest.Yes("diesel"))}, Options{})
	if got, want := triptest.StopIDs(b.Problem), "a a@2"; got != want {
		t.Fatalf("stops = %q, want %q", got, want)
	}
	if km := triptest.StopOf(t, b.Problem, "a@2").Km; math.Abs(km-170) > 0.01 {
		t.Errorf("second pass at km %v, want 170", km)
	}
}

// Diesel of the van: 0.09 L/km. From km 50 to the next other place at km 120,
// 1 km off (1.4 km of road): 0.09 × 71.4 = 6.43.
func TestBuildSpare(t *testing.T) {
	places := []trip.Place{
		triptest.At("a", "fuel", 50, 0, triptest.Yes("diesel")),
		triptest.At("beside", "fuel", 50.1, 0, triptest.Yes("diesel")),
		triptest.At("same", "fuel", 90, 0, triptest.Yes("diesel")),
		triptest.At("water", "water", 95, 0, triptest.Yes("fresh")),
		triptest.At("next", "fuel", 120, 1, triptest.Yes("diesel")),
	}
	places[0].Operator, places[2].Operator = "one", "one"
	b := mustBuild(t, triptest.Eastwards(200), places, Options{})
	if got := triptest.StopOf(t, b.Problem, "a").Serves[0].Spare; math.Abs(got-6.43) > 0.02 {
		t.Errorf("spare = %v, want 6.43", got)
	}
	// Nothing follows: enough to reach the end, 0.09 × 81.4.
	if got := triptest.StopOf(t, b.Problem, "next").Serves[0].Spare; math.Abs(got-(0.09*81.4)) > 0.02 {
		t.Errorf("spare of the last = %v, want %v", got, 0.09*81.4)
	}
}

func TestBuildRequire(t *testing.T) {
	tr := triptest.Eastwards(200)
	tr.Require = []string{"a"}
	place := triptest.At("a", "fuel", 50, 0, triptest.Yes("diesel"))
	if !triptest.StopOf(t, mustBuild(t, tr, []trip.Place{place}, Options{}).Problem, "a").Required {
		t.Error("a is not required")
	}
	place.Limits.HeightM = 2
	var unusable *Unusable
	if _, err := Trip(tr, []trip.Place{place}, Options{}); !errors.As(err, &unusable) || unusable.Place != "a" || unusable.Why == nil || unusable.Why.Kind != tooLow {
		t.Errorf("required place that is too low: err = %v", err)
	} else if got := triptest.Line(unusable.Fact()); got != "required.out place=a why=("+triptest.Line(*unusable.Why)+")" {
		t.Errorf("it says %q", got)
	}
	if _, err := Trip(tr, nil, Options{}); !errors.As(err, &unusable) || triptest.Line(unusable.Fact()) != "required.missing place=a" || !strings.Contains(err.Error(), "no such place") {
		t.Errorf("required place that is not there: err = %v", err)
	}
	tr.Require, tr.Avoid = nil, []string{"a", "b"}
	if got := triptest.Line(mustBuild(t, tr, []trip.Place{place}, Options{}).Missing); got != "avoided.missing list=[b]" {
		t.Errorf("places to avoid that are not there: %q", got)
	}
}

// Who sets off below the reserve still gets a plan, and a caution.
func TestBuildStartBelowReserve(t *testing.T) {
	tr := triptest.Eastwards(50)
	tr.Levels = map[string]float64{"diesel": 8}
	b := mustBuild(t, tr, nil, Options{})
	if got := b.Problem.Tanks[0]; got.Start != 8 || got.Reserve != 4 {
		t.Errorf("tank = %+v, want start 8 and reserve 4", got)
	}
	if got := triptest.Lines(b.Notes); got != "start.below_reserve supply=supply tank=diesel" {
		t.Errorf("notes = %q", got)
	}
}

// A tank for waste has room left, not a reserve.
func TestBuildStartWithLittleRoom(t *testing.T) {
	tr := triptest.Eastwards(50)
	tr.Levels = map[string]float64{}
	for _, k := range tr.Vehicle.Tanks {
		if k.Kind == planner.Waste {
			tr.Levels[k.ID] = k.Capacity - k.Reserve/2
		}
	}
	b := mustBuild(t, tr, nil, Options{})
	if got := triptest.Lines(b.Notes); got != "start.below_reserve tank=grey | start.below_reserve tank=cassette" {
		t.Errorf("notes = %q", got)
	}
}

// Who goes on from the road with no more than the reserve gets a plan to the
// next place, and a caution; at home the reserve is kept.
func TestBuildOnTheRoadAtTheReserve(t *testing.T) {
	tr := triptest.Eastwards(50)
	var diesel trip.Tank
	for _, k := range tr.Vehicle.Tanks {
		if k.ID == "diesel" {
			diesel = k
		}
	}
	tr.Levels = map[string]float64{"diesel": diesel.Reserve}
	for _, doneKm := range []float64{0, 120} {
		tr.DoneKm = doneKm
		built, err := Trip(tr, nil, Options{})
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
		said := map[bool]string{true: "start.at_reserve supply=supply tank=diesel"}[doneKm > 0]
		if got := triptest.Lines(built.Notes); got != said {
			t.Errorf("%v km behind: %q, want %q", doneKm, got, said)
		}
	}
}

// Nothing is said where a wider corridor would find a place, nor where no map
// data are open at all.
func TestMapDataWithinTheWidestCorridor(t *testing.T) {
	for _, places := range [][]trip.Place{nil, {triptest.At("beside", "fuel", 50, 49, triptest.Yes("diesel"))}} {
		if b := mustBuild(t, triptest.Eastwards(100), places, Options{}); !b.Apart.Nothing() {
			t.Errorf("%d places: %q", len(places), triptest.Line(b.Apart))
		}
	}
}

// A place that serves nothing changes nothing; nor does the order of places
// that lie apart.
func TestBuildIgnoresWhatIsOfNoUse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr, places := triptest.Eastwards(300), triptest.SomePlaces(t, 300)
		one, err := Trip(tr, places, Options{})
		if err != nil {
			t.Fatal(err)
		}
		two, err := Trip(tr, append([]trip.Place{triptest.At("x", "tap", 50, 0), triptest.At("y", "fuel", 60, 9, triptest.Yes("diesel"))}, places...), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(one.Problem, two.Problem) || !reflect.DeepEqual(one.Candidates, two.Candidates) {
			t.Fatalf("a place of no use changes the problem")
		}
	})
}

// Opening hours are asked for the most days that a trip can last: the nights that
// are wished for at most and a day on either side, or else twice those that are
// needed and a week.
func TestDaysOfHours(t *testing.T) {
	for _, c := range []struct {
		km          float64
		least, most int
		want        int
	}{{200, 0, 0, 9}, {200, 3, 0, 15}, {600, 0, 0, 13}, {600, 1, 0, 13}, {200, 0, 5, 7}, {600, 4, 6, 8}} {
		tr := triptest.Eastwards(c.km) // 250 km a day
		tr.Stays.MinNights, tr.Stays.MaxNights = c.least, c.most
		if got := mustBuild(t, tr, nil, Options{}).Days(); got != c.want {
			t.Errorf("%v km, %d to %d nights: %d days, want %d", c.km, c.least, c.most, got, c.want)
		}
	}
}

// Who wishes for no nights is asked for none, and gets as many as it takes.
func TestBuildWishesForNights(t *testing.T) {
	for _, c := range []struct {
		least, most int
		want        *planner.Range
	}{{0, 0, nil}, {2, 0, &planner.Range{Min: 2, Max: anyNights}}, {0, 5, &planner.Range{Max: 5}}, {2, 5, &planner.Range{Min: 2, Max: 5}}} {
		tr := triptest.Eastwards(200)
		tr.Stays.MinNights, tr.Stays.MaxNights = c.least, c.most
		if got := mustBuild(t, tr, nil, Options{}).Problem.Nights; !reflect.DeepEqual(got, c.want) {
			t.Errorf("%d to %d: %v, want %v", c.least, c.most, got, c.want)
		}
	}
}

// A pass more than a kilometre worse than twice the nearest is none.
func TestWorthwhile(t *testing.T) {
	for _, c := range []struct {
		off  []float64
		want int
	}{{[]float64{100, 1190, 1210}, 2}, {[]float64{1210, 1190, 100}, 2}, {[]float64{3000, 6900}, 2}, {[]float64{4000}, 1}} {
		var passes []geo.Pass
		for _, m := range c.off {
			passes = append(passes, geo.Pass{OffM: m})
		}
		if got := len(worthwhile(passes)); got != c.want {
			t.Errorf("%v m off: %d passes, want %d", c.off, got, c.want)
		}
	}
}

// Where more calls lie along the route than can be weighed, that is said before any
// is made of them.
func TestTooManyStops(t *testing.T) {
	tr := triptest.Eastwards(200)
	var places []trip.Place
	for i := range 40 {
		places = append(places, triptest.At(fmt.Sprint("p", i), "fuel", 10+4*float64(i), 1, triptest.Yes("diesel")))
	}
	if _, err := Trip(tr, places, Options{MostStops: 40}); err != nil {
		t.Error(err)
	}
	_, err := Trip(tr, places, Options{MostStops: 39})
	if v := fact.Why(err); v.Fact == nil || triptest.Line(*v.Fact) != "many.stops n=40 was=39" {
		t.Errorf("%v", err)
	}
}
