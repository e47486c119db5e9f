package main

import (
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"ullage/cmd/ullage/progress"
	"ullage/data/demo"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
)

// golden compares text with a file that -update rewrites.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs (rewrite it with -update and read it):\n%s", path, got)
	}
}

func small(args ...string) []string {
	return append([]string{"plan", "-within", patience.String(), "-trip", "testdata/small-trip.geojson", "-route", "testdata/small-route.gpx", "-places", "testdata/small.osm"}, args...)
}

// Checked by hand: Underlow is too low (2.50 m for 2.65 m and the margin); the
// exhaust fluid is at Oddwater only; the night is at a place within 150 km of
// both ends; grey water and cassette are empty at the end.
func TestPlanSmall(t *testing.T) {
	code, out, errs := ullage(small()...)
	if code != exitOK || errs != "" {
		t.Fatalf("plan: exit %d, %s", code, errs)
	}
	golden(t, "small.golden", out)
}

func TestPlanJSON(t *testing.T) {
	code, out, _ := ullage(small("-json")...)
	var it trip.Itinerary
	if err := json.Unmarshal([]byte(out), &it); err != nil || code != exitOK {
		t.Fatalf("plan -json: exit %d, %v", code, err)
	}
	if it.Status != planner.Optimal || len(it.Days) != 2 || len(it.Places) != 7 {
		t.Errorf("itinerary = %s, %d days, %d places, want optimal, 2, 7", it.Status, len(it.Days), len(it.Places))
	}
}

// What plan -problem prints, solve answers at the same cost.
func TestPlanProblem(t *testing.T) {
	_, problem, _ := ullage(small("-problem")...)
	code, out, errs := ullage("solve", write(t, "problem.json", problem))
	var plan planner.Plan
	if err := json.Unmarshal([]byte(out), &plan); err != nil || code != exitOK {
		t.Fatalf("solve: exit %d, %v, %s", code, err, errs)
	}
	_, out, _ = ullage(small("-json")...)
	var it trip.Itinerary
	if err := json.Unmarshal([]byte(out), &it); err != nil || it.Least == nil || it.Least.Cost != plan.Cost {
		t.Errorf("the cheapest plan costs %+v, solve %v (%v)", it.Least, plan.Cost, err)
	}
}

// A route without a trip is planned with what is usual.
func TestPlanUsualTrip(t *testing.T) {
	code, out, errs := ullage("plan", "-route", "testdata/small-route.gpx", "-places", "testdata/small.osm", "-start", "2026-06-12")
	if code != exitOK || !strings.Contains(out, "Along the equator") || !strings.Contains(out, "Day 1, Friday 12 June") {
		t.Errorf("plan: exit %d, %s%s", code, out, errs)
	}
}

// Nowhere to stay within the day's limit: refused, with the reason.
func TestPlanRefused(t *testing.T) {
	text, err := os.ReadFile("testdata/small-trip.geojson")
	if err != nil {
		t.Fatal(err)
	}
	short := write(t, "short.geojson", strings.Replace(string(text), `"max_km": 150`, `"max_km": 60`, 1))
	code, out, errs := ullage("plan", "-trip", short, "-route", "testdata/small-route.gpx", "-places", "testdata/small.osm")
	if code != exitInfeasible || !strings.Contains(out, "There is no plan for this trip") {
		t.Fatalf("plan: exit %d, %s%s", code, out, errs)
	}
	// Slack Quay and Reedholm are at km 134 and 111: both beyond a day of 60 km.
	if !strings.Contains(out, "No place for the night is near enough") || !strings.Contains(out, "a day of 60 km is") {
		t.Errorf("plan = %s, want the day's limit named", out)
	}
	if !strings.Contains(out, "NOT A VALID PLAN") {
		t.Errorf("plan = %s, want what comes nearest, marked", out)
	}
}

// patience is for machines that have much else to do; a plan takes a second or two.
const patience = 10 * time.Minute

// The demo trip needs all seven tanks, and its sheet names each.
func TestPlanDemo(t *testing.T) {
	if testing.Short() {
		t.Skip("other plans take seconds: run without -short")
	}
	ctx, enough := context.WithCancel(t.Context())
	defer enough()
	p := planRun{within: patience, byRoad: true}
	job, err := p.prepare(ctx, progress.To(io.Discard))
	if err != nil {
		t.Fatal(err)
	}
	it, err := answer.Plan(ctx, job.built, answer.Options{Answer: func(trip.Itinerary) { enough() }})
	if err != nil || it.Status != planner.Optimal || len(it.Days) < 2 {
		t.Fatalf("%v, %s, %d days", err, it.Status, len(it.Days))
	}
	done := map[string]bool{}
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, task := range c.Tasks {
				done[task.Tank] = true
			}
		}
	}
	if len(it.Strips) != 7 || len(done) != 7 {
		t.Errorf("%d strips, tasks for %v, want all seven tanks", len(it.Strips), done)
	}
	code, out, errs := ullage("plan", "-within", patience.String())
	if code != exitOK || errs != "" {
		t.Fatalf("plan: exit %d, %s", code, errs)
	}
	// Other plans are not proven to be the next best, so a better search may show others.
	sheet, others, _ := strings.Cut(out, "\nOther plans\n")
	if strings.Count(others, " more: ") < 2 || !strings.Contains(others, "stays safe if a place is closed would cost ") {
		t.Errorf("no two other plans: %s", out)
	}
	golden(t, "demo.golden", sheet)
}

// Out to the islet by the ferry of the map data and back the next day: its
// kilometres are no kilometres at the wheel and use nothing.
func TestPlanFerry(t *testing.T) {
	extract := write(t, "demo.osm.pbf", string(demo.Extract()))
	args := []string{"plan", "-within", patience.String(), "-trip", "testdata/islet-trip.geojson", "-places", extract}
	code, out, errs := ullage(args...)
	if code != exitOK || errs != "" {
		t.Fatalf("plan: exit %d, %s%s", code, errs, out)
	}
	sheet, _, _ := strings.Cut(out, "\nOther plans\n")
	golden(t, "islet.golden", sheet)
}

// Andorra with the places of the real map. Names of real firms stay out of
// the golden; the OSM ids name the places.
func TestPlanAndorra(t *testing.T) {
	if _, err := os.Stat(andorraExtract); err != nil {
		t.Skip("open data are not beside the project, as ../shared/data/osm: ", err)
	}
	_, places, _ := ullage("places", andorraExtract)
	nameless := regexp.MustCompile(`"(name|operator)": ?"(\\.|[^"\\])*",? ?`).ReplaceAllString(places, "")
	code, out, errs := ullage("plan", "-within", patience.String(), "-trip", "testdata/andorra-trip.geojson", "-route", "testdata/andorra-route.geojson",
		"-places", write(t, "andorra.geojson", nameless))
	if code != exitOK || errs != "" {
		t.Fatalf("plan: exit %d, %s%s", code, errs, out)
	}
	golden(t, "andorra.golden", out)
}

// The same with the roads of the extract: the place files come first, so their
// nameless places are taken.
func TestPlanAndorraRoads(t *testing.T) {
	if _, err := os.Stat(andorraExtract); err != nil {
		t.Skip("open data are not beside the project, as ../shared/data/osm: ", err)
	}
	_, places, _ := ullage("places", andorraExtract)
	nameless := regexp.MustCompile(`"(name|operator)": ?"(\\.|[^"\\])*",? ?`).ReplaceAllString(places, "")
	code, out, errs := ullage("plan", "-within", patience.String(), "-trip", "testdata/andorra-trip.geojson", "-route", "testdata/andorra-route.geojson",
		"-places", write(t, "andorra.geojson", nameless)+","+andorraExtract)
	if code != exitOK || errs != "" {
		t.Fatalf("plan: exit %d, %s%s", code, errs, out)
	}
	golden(t, "andorra-roads.golden", out)
}

// Without roads the plan is the one by estimates.
func TestPlanWithoutRoads(t *testing.T) {
	_, with, _ := ullage(small()...)
	code, without, errs := ullage(small("-roads=false")...)
	if code != exitOK || errs != "" || !strings.Contains(without, "(estimate)") || strings.Contains(without, "Entrance") {
		t.Errorf("plan -roads=false: exit %d, %s%s", code, errs, without)
	}
	if with != without {
		t.Errorf("small.osm has no roads, yet -roads changes the plan:\n%s", with)
	}
}
