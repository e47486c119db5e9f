package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/data/tripfile"

	"ullage/planner/trip/onward"
)

// On the second morning of the small trip, at km 150: a day and the night are
// behind, the gauge of fresh water teaches, the place that is closed is left
// out, and the file holds the rest of the trip.
func TestPlanOnTheRoad(t *testing.T) {
	rest := filepath.Join(t.TempDir(), "rest.geojson")
	code, out, errs := ullage(small("-at", "150", "-now", "2026-06-13T10:15", "-levels", "diesel=60,fresh=1/4,grey=80%,cassette=dark", "-closed", "n6", "-save", rest)...)
	text := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{"50.4 km, from Saturday, 13 June 2026", "[x] Friday 12 June, km 134 Slack Quay (n4): stay the night",
		"we plan for 16 L to be safe.", "the gauge says 38 L. We now plan for 2 % less than usual.", "Leave at 10:15", "Empty the toilet cassette"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if code != exitOK || strings.Contains(text, "Lastgate (") || t.Failed() {
		t.Fatalf("exit %d, %s%s", code, out, errs)
	}
	f, err := os.Open(rest)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	tr, _, err := tripfile.Read(rest, f)
	if err != nil || len(tr.Learned) == 0 || len(tr.Done) == 0 || tr.FromMin != 615 || tr.Avoid[0] != "n6" {
		t.Errorf("%v: learnt %+v, done %+v, from %v, avoid %v", err, tr.Learned, tr.Done, tr.FromMin, tr.Avoid)
	}
	// The rest is a trip like any other.
	code, again, errs := ullage("plan", "-trip", rest, "-places", "testdata/small.osm")
	if code != exitOK || !strings.Contains(again, "Behind you") {
		t.Errorf("exit %d, %s%s", code, again, errs)
	}
}

// What is left is saved only where it has a plan; else an earlier file stays as it is.
func TestSaveNeedsAPlan(t *testing.T) {
	rest := write(t, "rest.geojson", "an earlier rest")
	args := small("-at", "150", "-now", "2026-06-13T10:15", "-levels", "diesel=6", "-closed", "n1,n5", "-save", rest)
	code, out, errs := ullage(args...)
	if text, _ := os.ReadFile(rest); code != exitInfeasible || string(text) != "an earlier rest" {
		t.Errorf("exit %d, the file holds %.80q\n%s%s", code, text, out, errs)
	}
}

// As JSON the answer also has what the gauges taught.
func TestPlanOnTheRoadJSON(t *testing.T) {
	code, out, errs := ullage(small("-at", "150", "-now", "2026-06-13T10:15", "-levels", "fresh=1/4", "-json")...)
	var got planned
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != exitOK {
		t.Fatalf("exit %d, %v, %s", code, err, errs)
	}
	if len(got.Lessons) != 1 || got.Lessons[0].Tank != "fresh" || len(got.Days) == 0 || len(got.Done) == 0 {
		t.Errorf("lessons %+v, %d days, %d stops behind", got.Lessons, len(got.Days), len(got.Done))
	}
}

// A stop that was passed without a call is not done: its services did not
// happen, so the levels are those without them.
func TestPlanPassed(t *testing.T) {
	args := small("-at", "150", "-now", "2026-06-13T10:15", "-json")
	_, out, _ := ullage(args...)
	var called, passed planned
	if err := json.Unmarshal([]byte(out), &called); err != nil || len(called.Done) < 2 {
		t.Fatalf("%v, done %+v", err, called.Done)
	}
	first := called.Done[0]
	code, out, errs := ullage(append(args, "-passed", first.Place)...)
	if err := json.Unmarshal([]byte(out), &passed); err != nil || code == exitUsage {
		t.Fatalf("exit %d, %v, %s", code, err, errs)
	}
	if len(passed.Done) != len(called.Done)-1 || passed.Done[0].Place == first.Place {
		t.Errorf("passed %s, and still behind are %+v", first.Place, passed.Done)
	}
}

func TestPlanOnTheRoadErrors(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"-at 10", "both -at and -now"},
		{"-at here -now 2026-06-12T10:00", "latitude,longitude"},
		{"-at 0,nowhere -now 2026-06-12T10:00", "latitude,longitude"},
		{"-at 10 -now 10:00", "write the date and time as 2026-06-13T14:20, not “10:00”"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=half", "fresh=3/4"},
		{"-at 10 -now 2026-06-12T10:00 -levels wine=3", "no tank called wine; it has diesel"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=900", "the gauge cannot show 900, only 0 to 90; read it again"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=3/2", "fresh=3/4"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=1/0", "fresh=3/4"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=-1/2", "fresh=3/4"},
		{"-at 10 -now 2026-06-12T10:00 -passed n99", "no stop of the plan; it has "},
		{"-at 999 -now 2026-06-12T10:00", "before its end"},
	} {
		if code, _, errs := ullage(small(strings.Fields(c.args)...)...); code != exitUsage || !strings.Contains(errs, c.want) {
			t.Errorf("%s: exit %d, %s", c.args, code, errs)
		}
	}
}

// A gauge is read as any part of a whole.
func TestFractions(t *testing.T) {
	for text, want := range map[string]float64{"1/2": 2, "2/4": 2, "3/4": 3, "3/8": 1.5, "1/3": 4.0 / 3, "0/5": 0, "4/4": 4, "1/1": 4} {
		got, err := gauges("fresh=" + text)
		if err != nil || got["fresh"] != (onward.Shown{Kind: "quarters", Value: want}) {
			t.Errorf("%s: %+v, %v, want %v quarters", text, got, err, want)
		}
	}
}
