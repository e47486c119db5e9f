package main

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/audit"
	"ullage/planner/backup"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest"
)

// backed returns the demo trip and the one in Andorra, to survive closures.
func backed(t *testing.T) map[string]*build.Built {
	t.Helper()
	out := map[string]*build.Built{}
	for name, in := range map[string]planInput{
		"demo":    {},
		"andorra": {trip: "testdata/andorra-trip.geojson", route: "testdata/andorra-route.geojson", places: andorraExtract},
	} {
		if in.places != "" {
			if _, err := os.Stat(in.places); err != nil {
				t.Log("without Andorra: open data are not beside the project, as ../shared/data/osm: ", err)
				continue
			}
		}
		read, err := in.read(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		read.trip.Backup = true
		if out[name], err = build.Trip(read.trip, read.from.places, build.Options{Hours: openingHours()}); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

var andorraExtract = filepath.Join("..", "..", "..", "shared", "data", "osm", "andorra-2025-01-19.osm.pbf")

// TestNoTankRunsDry closes every planned stop in turn and drives on as the
// fallbacks say: no tank is ever empty or over full, the closed place serves
// nothing, and nothing before it was different.
func TestNoTankRunsDry(t *testing.T) {
	for name, b := range backed(t) {
		p := b.Problem
		plan, closures, err := backup.Survive(t.Context(), p, p, backup.Steady{}, solve.Options{})
		if err != nil || plan.End == nil {
			t.Fatalf("%s: %s, %v", name, plan.Status, err)
		}
		if len(closures) != len(plan.Visits) || len(closures) < 4 {
			t.Errorf("%s: %d closures of %d visits", name, len(closures), len(plan.Visits))
		}
		for i, c := range closures {
			if !c.Survived {
				t.Errorf("%s: closure of %s: %v", name, c.Stop, c.Err)
				continue
			}
			if err := audit.Check(c.Problem, c.Plan); err != nil {
				t.Errorf("%s: closure of %s: %v", name, c.Stop, err)
			}
			look := func(where string, levels map[string]float64) {
				for _, k := range p.Tanks {
					if l := levels[k.ID]; l < -planner.Tolerance || l > k.Capacity+planner.Tolerance {
						t.Errorf("%s: closure of %s: %s holds %v of %v at %s", name, c.Stop, k.ID, l, k.Capacity, where)
					}
				}
			}
			for j, v := range c.Plan.Visits {
				look(v.Stop, v.Arrive.Levels)
				look(v.Stop, v.Leave.Levels)
				if j == i && (v.Stop != c.Stop || v.Night || len(v.Serve) > 0) || j < i && v.Stop != plan.Visits[j].Stop {
					t.Errorf("%s: closure of %s: visit %d is %+v", name, c.Stop, j, v)
				}
			}
			look("the end", c.Plan.End.Levels)
		}
	}
}

// Every stop of a sheet with backup says where to go, and none that there is
// no way on.
func TestBackupNamesFallbacks(t *testing.T) {
	for name, b := range backed(t) {
		ctx, enough := context.WithCancel(t.Context())
		it, err := answer.Plan(ctx, b, answer.Options{Answer: func(it trip.Itinerary) {
			if it.Safety != nil { // what comes after it is not looked at
				enough()
			}
		}})
		enough()
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range it.Days {
			for _, c := range d.Calls {
				if len(c.Fallback) == 0 || triptest.Has(c.Cautions, "call.no_way_on") {
					t.Errorf("%s: %s: %q, %q", name, c.Stop, triptest.Lines(c.Fallback), triptest.Lines(c.Cautions))
				}
			}
		}
		if it.Safety == nil || it.Safety.Price < 0 || it.Safety.Says.Kind != "safety.costs" {
			t.Errorf("%s: safety %+v", name, it.Safety)
		}
	}
}

// Five nights with little gas, where no place of the region sells it and few
// have hook-up: refused with the gas named, the cures tried, and a trip that
// breaks least marked as no plan.
func TestLittleGas(t *testing.T) {
	if _, err := os.Stat(andorraExtract); err != nil {
		t.Skip("open data are not beside the project, as ../shared/data/osm: ", err)
	}
	text, err := os.ReadFile("testdata/andorra-trip.geojson")
	if err != nil {
		t.Fatal(err)
	}
	little := strings.NewReplacer(`"min_nights": 2`, `"min_nights": 3`, `"max_nights": 2`, `"max_nights": 5`, `"diesel": 18,`, `"diesel": 18, "lpg": 3.2,`).Replace(string(text))
	args := []string{"plan", "-within", patience.String(), "-trip", write(t, "little.geojson", little), "-route", "testdata/andorra-route.geojson", "-places", andorraExtract}
	code, out, errs := ullage(args...)
	for _, want := range []string{"There is no plan", "LPG runs out between km 0 and 73: you need 3.1 L more", "What would help:\n  - Start with 3.1 L more of LPG", "NOT A VALID PLAN", "! LPG runs out"} {
		if !strings.Contains(out, want) {
			t.Errorf("want %q", want)
		}
	}
	if code != exitInfeasible || t.Failed() {
		t.Errorf("exit %d, %s%s", code, out, errs)
	}
	_, out, _ = ullage(append(args, "-json")...)
	var it trip.Itinerary
	if err := json.Unmarshal([]byte(out), &it); err != nil || it.Nearest == nil || len(it.Days) != 0 || len(it.Strips) != 0 || it.Status != planner.Infeasible {
		t.Errorf("%v, %s with %d days, nearest %+v: want it apart from a plan", err, it.Status, len(it.Days), it.Nearest)
	}
}

// A route in two pieces says so on the sheet.
func TestRouteGapIsPrinted(t *testing.T) {
	text, err := os.ReadFile("testdata/small-route.gpx")
	if err != nil {
		t.Fatal(err)
	}
	gap := strings.Replace(string(text), "</trkseg>", `</trkseg><trkseg><trkpt lat="0" lon="1.81"/><trkpt lat="0" lon="1.82"/></trkseg>`, 1)
	_, out, errs := ullage("plan", "-trip", "testdata/small-trip.geojson", "-route", write(t, "gap.gpx", gap), "-places", "testdata/small.osm")
	if !strings.Contains(strings.Join(strings.Fields(out), " "), "between part 1 and part 2 lies a gap of") {
		t.Errorf("no word of the gap: %s%s", out, errs)
	}
}
