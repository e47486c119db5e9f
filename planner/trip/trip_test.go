package trip_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/triptest"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

func TestNightUse(t *testing.T) {
	v := triptest.Plain()
	tank := func(id string) trip.Tank {
		for _, k := range v.Tanks {
			if k.ID == id {
				return k
			}
		}
		t.Fatal(id)
		return trip.Tank{}
	}
	two := trip.Party{Adults: 2}
	for _, c := range []struct {
		name  string
		tank  string
		party trip.Party
		stay  *trip.Stay
		want  float64
	}{
		{"showers aboard", "fresh", two, nil, 70},
		{"showers at the site", "fresh", trip.Party{Adults: 2, Showers: "sites"}, &trip.Stay{Showers: trip.Yes}, 18},
		{"site without showers", "fresh", trip.Party{Adults: 2, Showers: "sites"}, &trip.Stay{}, 40},
		{"frugal", "fresh", trip.Party{Adults: 2, Showers: "frugal"}, nil, 20},
		{"grey is nine tenths", "grey", two, nil, 63},
		{"a child", "cassette", trip.Party{Adults: 1, Children: 1}, nil, 2.5 * 1.7},
		{"toilets at the site", "cassette", trip.Party{Adults: 2, Toilet: "sites"}, &trip.Stay{Toilets: trip.Yes}, 3},
		{"toilets unknown", "cassette", trip.Party{Adults: 2, Toilet: "sites"}, &trip.Stay{}, 5},
		{"cooks little, of which dishes are the rest", "grey", trip.Party{Adults: 2, Cooking: trip.CookLittle}, nil, 0.85 * 63},
		{"cooks little", "fresh", trip.Party{Adults: 2, Cooking: trip.CookLittle}, nil, 0.85 * 70},
		{"battery", "battery", two, nil, 30},
		{"hook-up charges", "battery", two, &trip.Stay{HookUp: trip.Yes}, -100},
		{"hook-up saves gas", "lpg", two, &trip.Stay{HookUp: trip.Yes}, (0.047 + 0.15) / 0.51},
	} {
		if got := trip.NightUse(tank(c.tank), c.party, c.stay); math.Abs(got-c.want) > 1e-9 {
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
		if got, ok := trip.ParseAmount(c.tag, "EUR", "night"); got != c.want || ok != c.ok {
			t.Errorf("parseAmount(%q) = %v, %v, want %v, %v", c.tag, got, ok, c.want, c.ok)
		}
	}
}

// The two axes are each other's inverse, and ascend together.
func TestAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var sea []trip.Crossing
		for _, f := range triptest.SomeFerries(t, 100) {
			sea = append(sea, trip.Crossing{Ferry: f})
		}
		a := trip.NewAxis(100, sea)
		one, two := rapid.Float64Range(0, 100).Draw(t, "one"), rapid.Float64Range(0, 100).Draw(t, "two")
		if back := a.Route(a.Driven(one)); math.Abs(back-one) > 1e-6 {
			t.Fatalf("km %v comes back as %v with %+v", one, back, sea)
		}
		if (one < two) != (a.Driven(one) < a.Driven(two)) {
			t.Fatalf("km %v and %v become %v and %v", one, two, a.Driven(one), a.Driven(two))
		}
	})
}

// A ferry belongs to the leg that it begins in; the half metre beside its pier is
// rounding.
func TestBetween(t *testing.T) {
	a := trip.NewAxis(100, []trip.Crossing{{Ferry: trip.Ferry{FromKm: 50, ToKm: 60, Min: 30}}})
	for _, c := range []struct {
		from, to float64
		want     int
	}{{0, 100, 1}, {0, 50, 0}, {50, 90, 1}, {0, 50.0004, 0}, {0, 50.0006, 1}, {50.0004, 90, 1}, {50.0006, 90, 0}} {
		if got := len(a.Between(c.from, c.to)); got != c.want {
			t.Errorf("km %v to %v: %d ferries, want %d", c.from, c.to, got, c.want)
		}
	}
}

func TestFleetIsValidAndDiffers(t *testing.T) {
	without := map[string]int{"def": 0, "lpg": 0}
	for _, v := range trip.Fleet() {
		if err := v.Validate(); err != nil {
			t.Error(err)
		}
		for id := range without {
			if !strings.Contains(v.TankIDs(), id) {
				without[id]++
			}
		}
	}
	if without["def"] == 0 || without["lpg"] == 0 || len(trip.Fleet()) < 3 {
		t.Errorf("models without exhaust fluid and LPG = %v of %d, want one each of at least three", without, len(trip.Fleet()))
	}
}

// Every fault names the field and says what to do.
func TestTripValidate(t *testing.T) {
	if err := triptest.Eastwards(100).Validate(); err != nil {
		t.Fatal(err)
	}
	free := triptest.Eastwards(100)
	free.Prices, free.Stays.MinNights, free.Stays.MaxNights = map[string]float64{"diesel": 0}, 3, 3
	if err := free.Validate(); err != nil {
		t.Errorf("what costs nothing, and three nights exactly: %v", err)
	}
	for _, c := range []struct {
		name   string
		change func(*trip.Trip)
		want   string
	}{
		{"hook-up", func(t *trip.Trip) { t.Vehicle.Tanks[0].Use.HookUpNight = new(math.Inf(1)) }, "use per hook-up night is +Inf"},
		{"ferry of no length", func(t *trip.Trip) { t.Ferries = []trip.Ferry{{FromKm: 30, ToKm: 30, Min: 45}} }, "ferr"},
		{"format", func(t *trip.Trip) { t.Format = "ullage-trip-9" }, `"ullage-trip-1"`},
		{"date", func(t *trip.Trip) { t.Start = "12.6.2026" }, "write it as 2026-06-12"},
		{"no tanks", func(t *trip.Trip) { t.Vehicle.Tanks = nil }, "has no tanks"},
		{"height", func(t *trip.Trip) { t.Vehicle.HeightM = 29 }, "height in m is 29: give 1 to 4.5"},
		{"level of no tank", func(t *trip.Trip) { t.Levels = map[string]float64{"beer": 1} }, `"beer"`},
		{"level", func(t *trip.Trip) { t.Levels = map[string]float64{"diesel": 76} }, "give 0 to 75"},
		{"nobody", func(t *trip.Trip) { t.Party.Adults = 0 }, "adults is 0: give 1 to 20"},
		{"showers", func(t *trip.Trip) { t.Party.Showers = "often" }, "write one of aboard, frugal, sites"},
		{"speed", func(t *trip.Trip) { t.Day.SpeedKmh = math.NaN() }, "speed in km/h is NaN"},
		{"nights", func(t *trip.Trip) { t.Stays.MinNights, t.Stays.MaxNights = 3, 2 }, "raise the most"},
		{"corridor", func(t *trip.Trip) { t.CorridorKm = 51 }, "corridor in km is 51"},
		{"circuity", func(t *trip.Trip) { t.Circuity = 0.5 }, "give 1 to 5"},
		{"price", func(t *trip.Trip) { t.Prices = map[string]float64{"diesel": -1} }, "price of diesel is -1"},
		{"both", func(t *trip.Trip) { t.Avoid, t.Require = []string{"n1"}, []string{"n1"} }, "choose one"},
		{"no route", func(t *trip.Trip) { t.Route = nil }, "draw or load"},
		{"drawn off the earth", func(t *trip.Trip) { t.Points = orb.LineString{{0, 0}, {0, 91}} }, "drawn point 2"},
		{"too far south", func(t *trip.Trip) { t.Route = orb.LineString{{0, 0}, {0, -90.5}} }, "route point 2"},
		{"too far west", func(t *trip.Trip) { t.Route = orb.LineString{{-180.5, 0}, {0, 0}} }, "route point 1"},
		{"off the earth", func(t *trip.Trip) { t.Route = orb.LineString{{0, 0}, {0, 91}} }, "route point 2"},
		{"tank twice", func(t *trip.Trip) { t.Vehicle.Tanks = append(t.Vehicle.Tanks, t.Vehicle.Tanks[0]) }, "twice"},
		{"unknown tank", func(t *trip.Trip) { t.Vehicle.Tanks = append([]trip.Tank{}, trip.Tank{ID: "beer"}) }, "unknown: use one of"},
		{"reserve", func(t *trip.Trip) { t.Vehicle.Tanks[0].Reserve = 76 }, "reserve is 76"},
		{"kind", func(t *trip.Trip) { t.Vehicle.Tanks[0].Kind = "both" }, "supply or waste"},
		{"year", func(t *trip.Trip) { t.Start = "1999-12-31" }, "give a day from 2000-01-01"},
		{"century", func(t *trip.Trip) { t.Start = "2100-01-01" }, "to 2099-12-31"},
		{"capacity", func(t *trip.Trip) { t.Vehicle.Tanks[0].Capacity = 1e300 }, "more than 0 and at most 10000"},
		{"price of nothing", func(t *trip.Trip) { t.Prices = map[string]float64{"disel": 1} }, `price of "disel", which is no tank: use one of battery,`},
		{"currency", func(t *trip.Trip) { t.Currency = "EUO" }, "ISO 4217"},
		{"use beside a life", func(t *trip.Trip) {
			t.Vehicle = trip.Fleet()[0]
			t.Vehicle.Tanks[0].Use.PerNight = 1
		}, "remove one of the two"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := triptest.Eastwards(100)
			c.change(&tr)
			if err := tr.Validate(); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("Validate() = %v, want it to say %q", err, c.want)
			}
		})
	}
}

// An end condition that the tank cannot hold is refused where it stands: the
// planner would otherwise say of every plan that there is none.
func TestEndConditionFitsTheTank(t *testing.T) {
	for _, c := range []struct {
		name string
		tank string
		end  func(capacity float64) planner.End
		want string // "" is valid
	}{
		{"all of it", "diesel", func(c float64) planner.End { return planner.End{AtLeast: &c} }, ""},
		{"a litre more", "diesel", func(c float64) planner.End { return planner.End{AtLeast: new(c + 1)} }, "end at_least"},
		{"less than nothing", "diesel", func(float64) planner.End { return planner.End{AtLeast: new(-1.0)} }, "end at_least"},
		{"full waste", "grey", func(c float64) planner.End { return planner.End{AtMost: &c} }, ""},
		{"more than full waste", "grey", func(c float64) planner.End { return planner.End{AtMost: new(c + 1)} }, "end at_most"},
		{"a waste tank that is to be filled", "grey", func(float64) planner.End { return planner.End{AtLeast: new(1.0)} }, "remove it"},
		{"a supply tank that is to be emptied", "diesel", func(float64) planner.End { return planner.End{AtMost: new(1.0)} }, "remove it"},
		{"no price", "diesel", func(float64) planner.End { return planner.End{AtLeast: new(1.0), RefillPrice: new(-0.1)} }, "end refill_price"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := triptest.Eastwards(100)
			i := slices.IndexFunc(tr.Vehicle.Tanks, func(k trip.Tank) bool { return k.ID == c.tank })
			end := c.end(tr.Vehicle.Tanks[i].Capacity)
			tr.Vehicle.Tanks[i].End = &end
			err := tr.Validate()
			if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
				t.Errorf("Validate() = %v, want %q", err, c.want)
			}
		})
	}
}

// Midnight is a time to leave, and the last minute of a day is one too.
func TestDepartureAtItsEdges(t *testing.T) {
	for min, valid := range map[float64]bool{-1: false, 0: true, 1439: true, 1440: false} {
		tr := triptest.Eastwards(100)
		tr.Day.DepartMin = min
		if err := tr.Validate(); (err == nil) != valid {
			t.Errorf("a departure at minute %v: %v", min, err)
		}
	}
}
