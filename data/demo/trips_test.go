package demo

import (
	"bytes"
	"context"
	"math"
	"slices"
	"testing"
	"time"

	"ullage/data/hours"
	"ullage/data/osm"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
)

func TestTripsAreValid(t *testing.T) {
	for _, tr := range situations() {
		if err := tr.Validate(); err != nil {
			t.Errorf("%s: %v", tr.Name, err)
		}
	}
}

// places are what the reader of real data finds on the island.
func places(t *testing.T) []trip.Place {
	t.Helper()
	extract, err := osm.Read(context.Background(), "demo.osm.pbf", bytes.NewReader(Extract()), osm.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return extract.Places
}

func opening(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
	s, err := hours.Parse(p.Hours)
	if err != nil {
		return nil, false
	}
	return s.Windows(from, days, hours.Where{Lat: p.Point.Lat(), Lon: p.Point.Lon()})
}

// One limit of time for the slow plans; the test looks at what is true of every
// plan, so it does not matter how far the search came.
const patience = time.Minute

func planned(t *testing.T, tr trip.Trip, places []trip.Place) trip.Itinerary {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), patience)
	defer cancel()
	it, err := answer.Trip(ctx, tr, places, answer.Options{Build: build.Options{Hours: opening}})
	if err != nil {
		t.Fatalf("%s: %v", tr.Name, err)
	}
	return it
}

// The demo trip can be planned and serves all its seven tanks.
func TestTripServesEveryTank(t *testing.T) {
	it := planned(t, Trip(), places(t))
	if it.Status != planner.Optimal && it.Status != planner.Feasible {
		t.Fatalf("status %s: %v", it.Status, it.Why)
	}
	served := map[string]bool{}
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, k := range c.Tasks {
				served[k.Tank] = true
			}
		}
	}
	for _, k := range Trip().Vehicle.Tanks {
		if !served[k.ID] {
			t.Errorf("no call serves the tank %s", k.ID)
		}
	}
}

// It needs all seven: what is in the tank at the start does not last, even if
// every day were the longest, every night the mildest, and no stop a detour.
func TestTripNeedsEveryTank(t *testing.T) {
	b, err := build.Trip(Trip(), places(t), build.Options{Hours: opening})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range b.Problem.Tanks {
		if left := leftAtBest(b.Problem, k); left >= k.Reserve {
			t.Errorf("%s: %.1f would be left, above the reserve of %.1f: it is never needed", k.ID, left, k.Reserve)
		}
	}
}

// leftAtBest is the least headroom on the way if the tank is never served and
// the rest goes as well as it can. Nights on hook-up count as service.
func leftAtBest(p *planner.Problem, k planner.Tank) float64 {
	night := math.Inf(1)
	for _, s := range p.Stops {
		if s.Night != nil && s.Night.Use[k.ID] >= 0 {
			night = min(night, s.Night.Use[k.ID]/float64(s.Night.Nights))
		}
	}
	headroom := k.Start
	if k.Kind == planner.Waste {
		headroom = k.Capacity - k.Start
	}
	least := headroom
	for range int(math.Ceil(p.LengthKm/p.Drive.MaxKmPerDay)) - 1 {
		headroom = min(k.Capacity, headroom+max(0, -k.PerKm)*p.Drive.MaxKmPerDay) - night
		least = min(least, headroom)
	}
	return min(least, headroom-max(0, k.PerKm)*p.LengthKm)
}

func TestWinterWeekendIsPlanned(t *testing.T) {
	it := planned(t, winterWeekend(), places(t))
	if it.Status != planner.Optimal && it.Status != planner.Feasible {
		t.Fatalf("status %s: %v", it.Status, it.Why)
	}
	if len(it.Days) != 3 {
		t.Errorf("%d days, want a weekend of 3", len(it.Days))
	}
}

// Every kind of place is there, and what keeps a vehicle out.
func TestPlacesAreAsInLife(t *testing.T) {
	kinds, offers := map[trip.PlaceKind]int{}, map[string]int{}
	var low, guests, closed, seasonal int
	for _, p := range places(t) {
		kinds[p.Kind]++
		for _, o := range p.Offers {
			if o.Answer == trip.Yes {
				offers[o.Tank]++
			}
			if o.Guests {
				guests++
			}
		}
		if p.Limits.HeightM > 0 && p.Limits.HeightM < 2.8 {
			low++
		}
		if p.Access == "private" {
			t.Errorf("%s %s is private", p.ID, p.Name)
		}
		// 2027-06-13 is a Sunday.
		if w, known := opening(p, time.Date(2027, 6, 13, 0, 0, 0, 0, time.UTC), 1); p.Hours != "" && known && len(w) == 0 {
			closed++
		}
		if w, known := opening(p, time.Date(2027, 1, 15, 0, 0, 0, 0, time.UTC), 1); p.Hours != "" && known && len(w) == 0 {
			seasonal++
		}
	}
	t.Logf("kinds %v, offers %v, low %d, for guests %d, closed on a Sunday %d, in winter %d", kinds, offers, low, guests, closed, seasonal)
	for kind, least := range map[trip.PlaceKind]int{"fuel": 30, "dump": 8, "water": 8, "tap": 2, "stopover": 12, "campsite": 15} {
		if kinds[kind] < least {
			t.Errorf("%d places of kind %s, want %d at least", kinds[kind], kind, least)
		}
	}
	if offers["lpg"] != 2 {
		t.Errorf("%d pumps sell LPG, want 2: one on the far side, one closed on Sundays", offers["lpg"])
	}
	for what, n := range map[string]int{"low": low, "guests only": guests, "closed on a Sunday": closed, "closed in winter": seasonal} {
		if n == 0 {
			t.Errorf("no place is %s", what)
		}
	}
}

// situations at the desk: the demo, then two people on a winter weekend over the pass, in a vehicle that has no LPG.
func situations() []trip.Trip { return []trip.Trip{Trip(), winterWeekend()} }

func winterWeekend() trip.Trip {
	return trip.Trip{
		Format:     trip.Format,
		Name:       "Winter weekend over the pass",
		Start:      "2027-01-15", // a Friday
		Vehicle:    fromFleet("ondrel"),
		Party:      trip.Party{Adults: 2, Showers: "sites", Toilet: "aboard", Cooking: "little"},
		Day:        trip.DayLimits{MaxKm: 110, MaxMin: 420, DepartMin: 660, SpeedKmh: 52},
		Stays:      trip.StayWishes{Campsites: true, Stopovers: true, HookUp: true},
		CorridorKm: 5,
		Circuity:   1.4,
		ValuePerH:  15,
		Currency:   "EUR",
		Prices:     map[string]float64{"diesel": 1.68, "def": 0.95},
		Route:      drawn("Tamrin", "Evrano Wells", "Savrin", "Bendro", "Arvone Vale", "Tamrin"),
	}
}

// fromFleet is a model of the fleet that the tool ships with.
func fromFleet(id string) trip.Vehicle {
	all := trip.Fleet()
	i := slices.IndexFunc(all, func(v trip.Vehicle) bool { return v.ID == id })
	if i < 0 {
		panic("demo: no vehicle " + id + " in the fleet")
	}
	return all[i]
}
