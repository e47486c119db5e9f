package audit_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"ullage/data/hours"
	"ullage/data/osm"
	"ullage/planner"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/audit"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

var (
	many     = flag.Int("many", 60, "how many random trips TestManySheets plans")
	manySeed = flag.Uint64("seed", 1, "seed of the first of them")
)

// TestManySheets plans random trips, on made roads and in the extracts at hand, and
// wants each sheet to pass its auditor: go test ./planner/trip/audit -run TestManySheets -many 20000 -timeout 2h.
func TestManySheets(t *testing.T) {
	lands := []land{{name: "made"}}
	if runtime.GOARCH == "wasm" { // a tenth as fast: some will do
		*many = min(*many, 10)
	} else {
		lands = append(lands, extracts(t)...)
	}
	status, broken, refused := map[planner.Status]int{}, map[audit.Rule]int{}, map[string]int{}
	for n := range *many {
		seed := *manySeed + uint64(n)
		tr, places := lands[seed%uint64(len(lands))].draw(seed)
		it, err := sheet(t.Context(), tr, places)
		if err != nil {
			var unusable *build.Unusable
			if !errors.As(err, &unusable) { // a required place that cannot be used is an answer
				t.Errorf("seed %d (%s): %v", seed, tr.Name, err)
			}
			continue
		}
		status[it.Status]++
		for _, w := range it.Why {
			refused[string(w.Cause)+" "+string(w.Says.Kind)]++
			break
		}
		for _, b := range audit.Sheet(tr, places, it, opening) {
			if broken[b.Rule]++; broken[b.Rule] <= 3 {
				t.Errorf("seed %d (%s): %v", seed, tr.Name, &b)
			}
		}
	}
	t.Logf("%d trips: %v; broken: %v", *many, status, broken)
	for _, why := range slices.Sorted(maps.Keys(refused)) {
		t.Logf("refused first for %s: %d", why, refused[why])
	}
	if status[planner.Optimal]+status[planner.Feasible] < *many/5 {
		t.Error("want more plans to look at")
	}
}

// sheet is the itinerary of a trip, without what is told besides.
func sheet(ctx context.Context, tr trip.Trip, places []trip.Place) (trip.Itinerary, error) {
	ctx, cancel := context.WithTimeout(ctx, 400*time.Millisecond)
	defer cancel()
	return answer.Trip(ctx, tr, places, answer.Options{Build: build.Options{Hours: opening}, Solve: solve.Options{MaxLabels: 20_000},
		Answer: func(trip.Itinerary) { cancel() }, Progress: func(it trip.Itinerary) {
			if it.Status == planner.Infeasible && len(it.Why) > 0 {
				cancel()
			}
		}})
}

// A land is where random trips lie.
type land struct {
	name   string
	places []trip.Place // nil: made along the equator
}

// extracts are those at hand.
func extracts(t *testing.T) []land {
	var out []land
	for _, name := range []string{"andorra-2025-01-19.osm.pbf", "liechtenstein-2013-08-03.osm.pbf"} {
		f, err := os.Open(filepath.Join("..", "..", "..", "..", "shared", "data", "osm", name))
		if err != nil {
			t.Logf("without %s: no open data beside the project, as ../shared/data", name)
			continue
		}
		x, err := osm.Read(t.Context(), name, f, osm.Options{NoBackdrop: true})
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, land{name, x.Places})
	}
	return out
}

// draw is a random trip: any vehicle, month, party and wish.
func (l land) draw(seed uint64) (trip.Trip, []trip.Place) {
	g := rand.New(rand.NewPCG(seed, 7))
	pick := func(n int) int { return g.IntN(n) }
	tr := triptest.Eastwards(float64(20 + pick(480)))
	fleet := trip.Fleet()
	tr.Vehicle = fleet[pick(len(fleet))]
	tr.Name = fmt.Sprintf("%s, %s", l.name, tr.Vehicle.ID)
	tr.Start = trip.Date(fmt.Sprintf("2027-%02d-%02d", 1+pick(12), 1+pick(28)))
	tr.Party = trip.Party{Adults: 1 + pick(4), Children: pick(4), Showers: []trip.Showers{"aboard", "sites", "frugal"}[pick(3)],
		Toilet: []trip.Toilet{"aboard", "sites"}[pick(2)], Cooking: []trip.Cooking{"aboard", "little"}[pick(2)]}
	tr.Day = trip.DayLimits{MaxKm: float64(60 + pick(300)), MaxMin: float64(240 + 60*pick(6)), DepartMin: float64(420 + 30*pick(9)), SpeedKmh: float64(35 + pick(40))}
	tr.Stays = trip.StayWishes{MinNights: []int{0, 1, 2, 3, 5, 7, 14}[pick(7)], Campsites: pick(8) > 0, Stopovers: pick(5) > 0, HookUp: pick(8) == 0}
	if pick(2) == 0 {
		tr.Stays.MaxNights = tr.Stays.MinNights + 1 + pick(2)
	}
	if pick(3) == 0 {
		tr.KeysByMin = float64(900 + 30*pick(15))
	}
	tr.Backup = pick(6) == 0
	tr.CorridorKm = float64(3 + pick(10))
	places := l.places
	if places == nil {
		places = made(g, tr)
	} else {
		tr.Route = through(g, places)
	}
	for range pick(3) {
		if id := places[pick(len(places))].ID; pick(2) == 0 {
			tr.Avoid = append(tr.Avoid, id)
		} else if pick(3) == 0 {
			tr.Require = append(tr.Require, id)
		}
	}
	tr.Require = slices.DeleteFunc(tr.Require, func(id string) bool { return slices.Contains(tr.Avoid, id) })
	return tr, places
}

// through is a line from one place to another, by way of some.
func through(g *rand.Rand, places []trip.Place) orb.LineString {
	var line orb.LineString
	for range 2 + g.IntN(4) {
		if p := places[g.IntN(len(places))].Point; len(line) == 0 || line[len(line)-1] != p {
			line = append(line, p)
		}
	}
	if len(line) < 2 {
		line = append(line, orb.Point{line[0][0] + 0.1, line[0][1]})
	}
	return line
}

// made are places along the equator, of every kind.
func made(g *rand.Rand, tr trip.Trip) []trip.Place {
	km := tr.Route[1][0] * triptest.KmPerDegree
	var out []trip.Place
	for i := range 8 + g.IntN(30) {
		kind := []trip.PlaceKind{"fuel", "fuel", "dump", "water", "stopover", "stopover", "campsite", "campsite", "service"}[g.IntN(9)]
		p := triptest.At(fmt.Sprintf("n%d", i+1), kind, km*g.Float64(), 6*g.Float64()-3)
		for _, tank := range trip.TankIDs() {
			sells := kind == "fuel" && (tank == "diesel" || tank == "def" || tank == "lpg" && g.IntN(3) == 0)
			takes := kind != "fuel" && kind != "water" && (tank == "grey" || tank == "cassette") && g.IntN(5) > 0
			gives := kind != "fuel" && kind != "dump" && tank == "fresh" && g.IntN(5) > 0
			if sells || takes || gives {
				p.Offers = append(p.Offers, trip.Offer{Tank: tank, Answer: trip.Answer(g.IntN(2)), Likely: true, Guests: kind == "campsite" && g.IntN(2) == 0})
			}
		}
		if kind == "stopover" || kind == "campsite" {
			p.Stay = &trip.Stay{HookUp: trip.Answer(g.IntN(3)), Showers: trip.Answer(g.IntN(3)), Toilets: trip.Answer(g.IntN(3)), MaxStay: []string{"", "", "24 hours", "3 days"}[g.IntN(4)],
				CheckIn: []string{"", "", "", "14:00-19:00", "from 15:00"}[g.IntN(5)]}
		}
		if g.IntN(4) == 0 {
			p.Hours = []string{"Mo-Fr 08:00-18:00", "Mo-Su 07:00-21:00", "Apr-Oct", "24/7"}[g.IntN(4)]
		}
		out = append(out, p)
	}
	return out
}

// opening reads the hours that a place states.
func opening(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
	s, err := hours.Parse(p.Hours)
	if err != nil {
		return nil, false
	}
	return s.Windows(from, days, hours.Where{Lat: p.Point.Lat(), Lon: p.Point.Lon()})
}
