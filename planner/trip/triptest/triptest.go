package triptest

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"ullage/planner"
	"ullage/planner/trip"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"
)

// Eastwards is a trip along the equator, where 1° is 111.319 km (WGS84:
// 6378.137 km × π/180), with a place at each given km.
func Eastwards(km float64) trip.Trip {
	return trip.Trip{
		Name: "East", Start: "2026-06-12", Vehicle: Plain(),
		Party:      trip.Party{Adults: 2, Showers: "aboard", Toilet: "aboard", Cooking: "aboard"},
		Day:        trip.DayLimits{MaxKm: 250, MaxMin: 600, DepartMin: 540, SpeedKmh: 60},
		Stays:      trip.StayWishes{Campsites: true, Stopovers: true},
		CorridorKm: 5, ValuePerH: 10, Currency: "EUR",
		Route: orb.LineString{{0, 0}, {km / KmPerDegree, 0}},
	}
}

// Plain is the first of the fleet with uses that tanks state, so that tests
// can count by hand: 9 L/100 km, a day of 35 L of fresh water a person.
func Plain() trip.Vehicle {
	v := trip.Fleet()[0]
	v.Life, v.EmptyKg = nil, 0
	hookUp := map[string]float64{"lpg": 0.047 / 0.51, "battery": -100}
	use := map[string]trip.Use{
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

const KmPerDegree = 6378.137 * math.Pi / 180

// At puts a place beside the route: km along, off to the north.
func At(id string, kind trip.PlaceKind, km, offKm float64, offers ...trip.Offer) trip.Place {
	const kmPerDegreeNorth = 110.574 // of latitude at the equator, WGS84
	return trip.Place{ID: id, Kind: kind, Name: strings.ToUpper(id), Point: orb.Point{km / KmPerDegree, offKm / kmPerDegreeNorth}, Offers: offers}
}

func Yes(tank string) trip.Offer { return trip.Offer{Tank: tank, Answer: trip.Yes, Tag: tank + "=yes"} }

func Likely(tank string) trip.Offer { return trip.Offer{Tank: tank, Likely: true} }

func StopOf(t *testing.T, p *planner.Problem, id string) planner.Stop {
	t.Helper()
	for _, s := range p.Stops {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no stop %q in %v", id, StopIDs(p))
	return planner.Stop{}
}

func StopIDs(p *planner.Problem) string {
	var ids []string
	for _, s := range p.Stops {
		ids = append(ids, s.ID)
	}
	return strings.Join(ids, " ")
}

// SiteAt is a campsite.
func SiteAt(id string, km float64) trip.Place {
	p := At(id, "campsite", km, 0)
	p.Stay = &trip.Stay{}
	return p
}

// AlpineSite is a campsite beside the route of [Lived].
func AlpineSite(id string, s trip.Stay) trip.Place {
	p := At(id, "campsite", 50, 0)
	p.Point = orb.Point{0.5, p.Point[1] + 47}
	p.Stay = &s
	return p
}

// Careless gives the vehicle back as it is.
func Careless(v trip.Vehicle) trip.Vehicle {
	v.Tanks = slices.Clone(v.Tanks)
	for i := range v.Tanks {
		v.Tanks[i].End = nil
	}
	return v
}

// Lived is a trip in the Alps on a day of a month, in the model of a fleet.
func Lived(vehicle int, start trip.Date) trip.Trip {
	tr := Eastwards(200)
	tr.Vehicle, tr.Start = trip.Fleet()[vehicle], start
	for i := range tr.Route {
		tr.Route[i][1] += 47 // along the parallel
	}
	return tr
}

// TwoWays is 300 km with a night near the middle at one of two sites, the
// second for 32 EUR at first and the first for 30.
func TwoWays(second string) (trip.Trip, []trip.Place) {
	tr := Eastwards(300)
	tr.Day.MaxKm = 200
	tr.Vehicle.Tanks = slices.Clone(tr.Vehicle.Tanks)
	for i := range tr.Vehicle.Tanks {
		tr.Vehicle.Tanks[i].End = nil // nothing to hand back in a state
	}
	one, two := At("one", "campsite", 150, 0), At("two", "campsite", 160, 0)
	one.Stay, two.Stay = &trip.Stay{HookUp: trip.Yes, Charge: "30 EUR"}, &trip.Stay{HookUp: trip.Yes, Charge: second}
	return tr, []trip.Place{one, two}
}

// SomePlaces draws places of every kind on both sides of a route of km.
func SomePlaces(t *rapid.T, km float64) []trip.Place {
	answer := rapid.SampledFrom([]trip.Answer{trip.Unknown, trip.Yes, trip.No})
	var out []trip.Place
	for i := range rapid.IntRange(0, 12).Draw(t, "places") {
		kind := rapid.SampledFrom([]trip.PlaceKind{"fuel", "dump", "water", "tap", "stopover", "campsite", "service", "gas", "else"}).Draw(t, "kind")
		p := At(fmt.Sprintf("n%d", i), kind, rapid.Float64Range(-5, km+5).Draw(t, "km"), rapid.Float64Range(-7, 7).Draw(t, "off"))
		for _, tank := range trip.TankIDs() {
			if rapid.Bool().Draw(t, tank) {
				p.Offers = append(p.Offers, trip.Offer{Tank: tank, Answer: answer.Draw(t, "answer"), Likely: rapid.Bool().Draw(t, "likely"), Guests: rapid.Bool().Draw(t, "guests")})
			}
		}
		if rapid.Bool().Draw(t, "stay") {
			p.Stay = &trip.Stay{HookUp: answer.Draw(t, "hookup"), Showers: answer.Draw(t, "showers"), Fee: answer.Draw(t, "fee")}
		}
		p.Limits.HeightM = rapid.SampledFrom([]float64{0, 2, 2.7, 4}).Draw(t, "height")
		out = append(out, p)
	}
	return out
}

// SomeFerries draws up to two ferries on a route of km.
func SomeFerries(t *rapid.T, km float64) []trip.Ferry {
	var out []trip.Ferry
	at := 0.0
	for range rapid.IntRange(0, 2).Draw(t, "ferries") {
		from := at + rapid.SampledFrom([]float64{0, 0, 1e-4, 1}).Draw(t, "before")*(km-at)/3
		to := from + rapid.Float64Range(0.001, 1).Draw(t, "long")*(km-from)/2
		out = append(out, trip.Ferry{FromKm: from, ToKm: to, Min: rapid.Float64Range(0, 300).Draw(t, "sea")})
		at = to
	}
	return out
}

// Island is 300 km with a station, a site on hook-up and a disposal point.
func Island() (trip.Trip, []trip.Place) {
	tr := Eastwards(300)
	tr.Levels = map[string]float64{"battery": 40}
	fuel := At("n1", "fuel", 40, 2, Likely("diesel"))
	fuel.Limits.Unclear = "maxheight=below_default"
	site := At("n2", "campsite", 150, 0, trip.Offer{Tank: "fresh", Answer: trip.Yes, Guests: true, Tag: "drinking_water=yes"})
	site.Stay = &trip.Stay{HookUp: trip.Yes, Tag: "tourism=camp_site"}
	dump := At("n3", "dump", 290, 0, Yes("grey"), Yes("cassette"))
	other := At("n4", "fuel", 60, 0, Yes("diesel"))
	other.Name = ""
	return tr, []trip.Place{fuel, site, dump, other}
}
