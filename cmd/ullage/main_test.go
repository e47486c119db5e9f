package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/planner"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// ullage runs a command in-process.
func ullage(args ...string) (code int, stdout, stderr string) {
	var out, errs bytes.Buffer
	code = run(context.Background(), args, streams{&out, &errs})
	return code, out.String(), errs.String()
}

func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// Lin's slides on refuelling a fixed path: window 0–12, start 0, prices 3.5
// 3.7 3.6 3.0, use 6 8 4 4; published amounts 12, 2, 4, 4; cost 75.80.
const lin = `{"format":"ullage-problem-1","length_km":22,"time_cost_per_h":0,
"drive":{"max_km_per_day":99,"max_min_per_day":999,"depart_min":0,"pace":[{"to_km":22,"min_per_km":1}]},
"tanks":[{"id":"diesel","kind":"supply","capacity":12,"reserve":0,"start":0,"per_km":1}],
"stops":[
{"id":"a","km":0,"detour_km":0,"detour_min":0,"stop_min":0,"fee":0,"serves":[{"tank":"diesel","price":3.5,"min":0}]},
{"id":"b","km":6,"detour_km":0,"detour_min":0,"stop_min":0,"fee":0,"serves":[{"tank":"diesel","price":3.7,"min":0}]},
{"id":"c","km":14,"detour_km":0,"detour_min":0,"stop_min":0,"fee":0,"serves":[{"tank":"diesel","price":3.6,"min":0}]},
{"id":"d","km":18,"detour_km":0,"detour_min":0,"stop_min":0,"fee":0,"serves":[{"tank":"diesel","price":3.0,"min":0}]}]}`

func TestSolveAndAudit(t *testing.T) {
	problem := write(t, "problem.json", lin)
	code, out, errs := ullage("solve", problem)
	if code != exitOK || errs != "" {
		t.Fatalf("solve: exit %d, %s", code, errs)
	}
	var plan planner.Plan
	if err := json.Unmarshal([]byte(out), &plan); err != nil {
		t.Fatal(err)
	}
	if plan.Status != planner.Optimal || plan.Cost < 75.79 || plan.Cost > 75.81 || len(plan.Visits) != 4 || plan.Visits[0].Serve[0].Amount != 12 {
		t.Errorf("solve = %s, want the published 12, 2, 4, 4 for 75.80", out)
	}
	if code, out, errs := ullage("audit", problem, write(t, "plan.json", out)); code != exitOK || !strings.Contains(out, "keeps every rule: optimal, cost 75.8000") {
		t.Errorf("audit: exit %d, %s%s", code, out, errs)
	}
	broken := strings.Replace(out, `"amount": 12`, `"amount": 13`, 1)
	if code, _, errs := ullage("audit", problem, write(t, "plan.json", broken)); code != exitBroken || !strings.Contains(errs, "capacity") {
		t.Errorf("audit of a plan over capacity: exit %d, %s, want 1 and the rule", code, errs)
	}
}

// With a tank of 7 the leg of 8 cannot be driven.
func TestSolveInfeasible(t *testing.T) {
	code, out, errs := ullage("solve", write(t, "problem.json", strings.Replace(lin, `"capacity":12`, `"capacity":7`, 1)))
	if code != exitInfeasible || !strings.Contains(out, `"status": "infeasible"`) || strings.Count(errs, "\n") < 2 {
		t.Errorf("solve: exit %d, %s%s, want 3 and reasons", code, out, errs)
	}
}

// Without time there is neither a plan nor a proof, and it says what to do.
func TestSolveWithoutTime(t *testing.T) {
	code, out, errs := ullage("solve", "-within", "0s", write(t, "problem.json", lin))
	if code != exitInfeasible || !strings.Contains(out, `"status": "unknown"`) || !strings.Contains(errs, "give it more time, -within") {
		t.Errorf("solve: exit %d, %s%s, want 3 and what to do", code, out, errs)
	}
}

// Everything wrong with flags and files is one line and exit 2.
func TestWrongInput(t *testing.T) {
	no := filepath.Join(t.TempDir(), "no.json")
	empty, list := write(t, "empty.json", ""), write(t, "list.json", "[]")
	trip, route := filepath.Join("testdata", "small-trip.geojson"), filepath.Join("testdata", "small-route.gpx")
	for _, args := range [][]string{
		{"fly"},
		{"solve"}, {"solve", no}, {"solve", empty}, {"solve", list}, {"solve", "-x"}, {"solve", "-within", "soon", list},
		{"audit", no}, {"audit", no, no}, {"audit", list, list},
		{"places"}, {"places", no}, {"places", empty}, {"places", "-x", empty}, {"places", list},
		{"plan", "-nonsense"}, {"plan", "more"}, {"plan", "-route", route}, {"plan", "-trip", trip}, {"plan", "-places", list},
		{"plan", "-trip", no, "-places", list}, {"plan", "-route", no, "-places", list}, {"plan", "-route", list, "-places", list},
		{"plan", "-trip", list, "-places", list}, {"plan", "-start", "tomorrow"}, {"plan", "-within", "soon"},
	} {
		code, out, errs := ullage(args...)
		if code != exitUsage || out != "" || strings.Count(errs, "\n") != 1 || !strings.HasPrefix(errs, "ullage: ") {
			t.Errorf("ullage %q: exit %d, stdout %q, stderr %q, want exit 2 and one line", args, code, out, errs)
		}
	}
}

// What could be taken in silence is one line that says what, where and what to do.
func TestNothingIsTakenInSilence(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "small-trip.geojson"))
	if err != nil {
		t.Fatal(err)
	}
	changed := func(from, to string) string {
		out := strings.Replace(string(text), from, to, 1)
		if out == string(text) {
			t.Fatalf("the trip has no %s", from)
		}
		return write(t, "trip.geojson", out)
	}
	trip, route, places := filepath.Join("testdata", "small-trip.geojson"), filepath.Join("testdata", "small-route.gpx"), filepath.Join("testdata", "small.osm")
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"plan", "-trip", trip, "-trip", trip}, "-trip is given twice"},
		{[]string{"plan", "-within", "-5s"}, `-within cannot be "-5s"`},
		{[]string{"plan", "-trip", trip, "-route", route, "-places", places, "-at", "10", "-now", "2026-06-12T12:00", "-closed", "n99"}, `-closed "n99": the map data have no such place`},
		{[]string{"plan", "-trip", changed(`"backup"`, `"require": ["n99"], "backup"`), "-route", route, "-places", places}, "trip.geojson: You asked to stop at n99, but the map data have no such place"},
		{[]string{"plan", "-trip", changed(`"backup"`, `"bakcup"`), "-route", route, "-places", places}, `did you mean "backup"?`},
		{[]string{"plan", "-trip", trip, "-places", places}, "small-trip.geojson: trip: the route has 0 points"},
		{[]string{"plan", "-start", "1999-07-01"}, "give a day from 2000-01-01"},
	} {
		code, _, errs := ullage(c.args...)
		if code != exitUsage || strings.Count(errs, "\n") != 1 || !strings.Contains(errs, c.want) {
			t.Errorf("ullage %q: exit %d, %q, want one line with %q", c.args, code, errs, c.want)
		}
	}
}

// A name from a map can be a megabyte long, turn the direction of what follows, or speak to the terminal: none of that is printed.
func TestNamesAreFitToBePrinted(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "small.osm"))
	if err != nil {
		t.Fatal(err)
	}
	evil := "\u202eyauQ&#x9b;31m" + strings.Repeat("long ", 200_000)
	places := write(t, "evil.osm", strings.NewReplacer(`v="Oddwater"`, `v="`+evil+`"`, `v="Slack Quay"`, `v="מחנה הנמל"`).Replace(string(text)))
	trip, err := os.ReadFile(filepath.Join("testdata", "small-trip.geojson"))
	if err != nil {
		t.Fatal(err)
	}
	named := write(t, "named.geojson", strings.Replace(string(trip), `"name": "A night on the equator"`, `"name": "A night\u001b[2J on\u202e the equator"`, 1))
	code, out, errs := ullage("plan", "-within", patience.String(), "-trip", named, "-route", filepath.Join("testdata", "small-route.gpx"), "-places", places)
	if code != exitOK || len(out) > 60_000 || strings.ContainsAny(out+errs, "\x1b\u009b\u202e") {
		t.Errorf("exit %d, %d bytes, %.2000q%s", code, len(out), out, errs)
	}
	for _, want := range []string{"yauQ31mlong long", "\u2068מחנה הנמל\u2069", "A night[2J on the equator"} {
		if !strings.Contains(out, want) {
			t.Errorf("want %q in %.1500s", want, out)
		}
	}
	if _, _, errs := ullage("plan", "-trip", "no\x1b[2Jsuch.geojson", "-places", "x"); strings.Contains(errs, "\x1b") {
		t.Errorf("the terminal is told %q", errs)
	}
}

func TestPlaces(t *testing.T) {
	osm := filepath.Join("testdata", "small.osm")
	code, out, errs := ullage("places", osm)
	if code != exitOK || !strings.Contains(errs, "      3 fuel stations\n") || !strings.Contains(errs, "      7 places in all\n") || !strings.Contains(errs, "© OpenStreetMap contributors") {
		t.Fatalf("places: exit %d, %s", code, errs)
	}
	// What it prints, it reads; a place given twice is one place.
	code, again, errs := ullage("places", write(t, "places.geojson", out), osm)
	if code != exitOK || again != out {
		t.Errorf("places of its own output: exit %d, %s\n%s\nwant\n%s", code, errs, again, out)
	}
}
