package audit_test

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

var forty = flag.Bool("measure", false, "print the figures of TestFortyTrips (minutes)")

// TestFortyTrips plans 40 trips on real data and the island, of 1 to 14 nights in January
// and July, and counts what nobody should be handed: go test ./planner/trip/audit -run TestFortyTrips -v -measure -timeout 1h.
func TestFortyTrips(t *testing.T) {
	if !*forty {
		t.Skip("run with -measure")
	}
	fmt.Printf("%-34s %-10s %7s %6s %5s %5s %5s %5s %5s %5s %6s %6s\n", "trip", "status", "cost", "least", ">tank", "<30km", "<noon", "again", "kg", "<1/10", "seconds", "first")
	for _, l := range lands(t) {
		for i, nights := range []int{1, 3, 7, 14} {
			for k, month := range []string{"01", "07"} {
				tr := triptest.Eastwards(100)
				tr.Route, tr.Name = l.route, fmt.Sprintf("%s, %d nights in %s", l.name, nights, month)
				tr.Start = trip.Date("2027-" + month + "-15")
				tr.Day = trip.DayLimits{MaxKm: 200, MaxMin: 480, DepartMin: 540, SpeedKmh: 50}
				tr.Stays = trip.StayWishes{MinNights: nights, MaxNights: nights, Campsites: true, Stopovers: true}
				tr.Vehicle, tr.Party = trip.Fleet()[2*((i+k)%2)], trip.Party{Adults: 2, Children: 2 * ((i + k) % 2), Showers: "sites", Toilet: "aboard", Cooking: "aboard"}
				figure(t, tr, l.places)
			}
		}
	}
}

// figure prints a line about a trip.
func figure(t *testing.T, tr trip.Trip, places []trip.Place) {
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	began := time.Now()
	first := time.Duration(0)
	it, err := answer.Trip(ctx, tr, places, answer.Options{Build: build.Options{Hours: opening}, Answer: func(trip.Itinerary) {
		if first == 0 {
			first = time.Since(began)
		}
		cancel()
	}})
	if err != nil {
		fmt.Printf("%-34s %v\n", tr.Name, err)
		return
	}
	if len(it.Days) == 0 {
		why := ""
		for _, w := range it.Why {
			why += " " + string(w.Cause) + ":" + triptest.Line(w.Says)
		}
		fmt.Printf("%-34s %-10s%s\n", tr.Name, it.Status, why)
		return
	}
	c := counted(tr, it)
	fmt.Printf("%-34s %-10s %7.2f %6.2f %5d %5d %5d %5d %5.0f %5d %6.2f %6.2f\n", tr.Name, it.Status, it.Cost, cheapest(it), c.over, c.short, c.early, c.again, c.kg, c.little, time.Since(began).Seconds(), first.Seconds())
}

// cheapest is the cost of the cheapest plan.
func cheapest(it trip.Itinerary) float64 {
	if it.Least != nil {
		return it.Least.Cost
	}
	return it.Cost
}

type counts struct {
	over, short, early, again, little int
	kg                                float64
}

// counted is what nobody should be handed.
func counted(tr trip.Trip, it trip.Itinerary) counts {
	var c counts
	capacity := map[string]float64{}
	for _, k := range tr.Vehicle.Tanks {
		capacity[k.ID] = k.Capacity
	}
	var last *trip.Call
	for _, d := range it.Days {
		for _, x := range d.Calls {
			small := len(x.Tasks) > 0 && !x.Night
			for _, task := range x.Tasks {
				if task.Amount > capacity[task.Tank]+0.01 {
					c.over++
				}
				small = small && task.Amount < 0.1*capacity[task.Tank]
			}
			if small {
				c.little++
			}
			if it.Weight != nil {
				kg := it.Weight.Kg
				for _, k := range tr.Vehicle.Tanks {
					kg += kgPer[k.ID] * (x.Leave[k.ID] - tr.LevelOf(k))
				}
				c.kg = max(c.kg, kg-it.Weight.AllowedKg)
			}
			if !x.Night {
				continue
			}
			if int(x.ArriveMin)%1440 < 720 {
				c.early++
			}
			if last != nil && x.Km-last.Km < 30 {
				c.short++
			}
			if last != nil && x.Place == last.Place {
				c.again++
			}
			last = &x
		}
	}
	return c
}

// Densities of EN 590, ISO 22241 and EN 589, once more.
var kgPer = map[string]float64{"diesel": 0.84, "def": 1.09, "lpg": 0.51, "fresh": 1, "grey": 1, "cassette": 1}

type where struct {
	name   string
	route  orb.LineString
	places []trip.Place
}

// lands are where the forty trips lead.
func lands(t *testing.T) []where {
	shared := filepath.Join("..", "..", "..", "..", "shared", "data")
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/paulmach/osm").Output()
	if err != nil {
		t.Fatal(err)
	}
	return []where{
		{"Andorra", orb.LineString{{1.463, 42.435}, {1.52, 42.507}, {1.53, 42.575}, {1.60, 42.566}, {1.73, 42.54}, {1.52, 42.507}, {1.463, 42.435}}, read(t, filepath.Join(shared, "osm", "andorra-2025-01-19.osm.pbf"))},
		{"Liechtenstein", orb.LineString{{9.50, 47.06}, {9.52, 47.14}, {9.55, 47.22}, {9.52, 47.25}, {9.52, 47.14}, {9.61, 47.11}, {9.50, 47.06}}, read(t, filepath.Join(shared, "osm", "liechtenstein-2013-08-03.osm.pbf"))},
		{"Delaware", orb.LineString{{-75.55, 39.74}, {-75.58, 39.45}, {-75.52, 39.16}, {-75.43, 38.91}, {-75.13, 38.72}, {-75.08, 38.46}, {-75.57, 38.65}, {-75.60, 39.10}, {-75.75, 39.68}}, read(t, filepath.Join(strings.TrimSpace(string(dir)), "testdata", "delaware-latest.osm.pbf"))},
		{"Isle of Man", orb.LineString{{-4.48, 54.15}, {-4.38, 54.32}, {-4.54, 54.37}, {-4.69, 54.22}, {-4.75, 54.08}, {-4.63, 54.08}, {-4.48, 54.15}}, append(read(t, filepath.Join(shared, "places", "isle-of-man-fuel-osm-2025-10-18.geojson")), read(t, filepath.Join(shared, "places", "isle-of-man-tourism-osm.geojson"))...)},
		{"The island", demo.Trip().Route, read(t, "")},
	}
}

// read the places of a file; "" is the island's.
func read(t *testing.T, name string) []trip.Place {
	t.Helper()
	if name == "" {
		x, err := osm.Read(t.Context(), "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{NoBackdrop: true})
		if err != nil {
			t.Fatal(err)
		}
		return x.Places
	}
	f, err := os.Open(name)
	if err != nil {
		t.Skipf("%v: no open data beside the project, as ../shared/data", err)
	}
	defer f.Close()
	var x osm.Extract
	if strings.HasSuffix(name, "json") {
		x, err = osm.ReadGeoJSON(filepath.Base(name), f)
	} else {
		x, err = osm.Read(t.Context(), filepath.Base(name), f, osm.Options{NoBackdrop: true})
	}
	if err != nil {
		t.Fatal(err)
	}
	return x.Places
}
