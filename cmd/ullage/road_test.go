package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/data/tripfile"
)

// On the second morning of the small trip, at km 150: a day and the night are
// behind, the gauge of fresh water teaches, the place that is closed is left
// out, and the file holds the rest of the trip.
func TestPlanOnTheRoad(t *testing.T) {
	rest := filepath.Join(t.TempDir(), "rest.geojson")
	code, out, errs := ullage(small("-at", "150", "-now", "2026-06-13T10:15", "-levels", "diesel=20,fresh=1/4,grey=80%,cassette=dark", "-closed", "n6", "-save", rest)...)
	text := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{"route of 50.4 km; from Saturday, 13 June 2026", "[x] Friday, km 134 Slack Quay (n4): night",
		"Fresh water: planned with", "of the difference is believed", "10:15 to", "empty Toilet cassette"} {
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
	tr, err := tripfile.Read(rest, f)
	if err != nil || len(tr.Learned) == 0 || len(tr.Done) == 0 || tr.FromMin != 615 || tr.Avoid[0] != "n6" {
		t.Errorf("%v: learnt %+v, done %+v, from %v, avoid %v", err, tr.Learned, tr.Done, tr.FromMin, tr.Avoid)
	}
	// The rest is a trip like any other.
	code, again, errs := ullage("plan", "-trip", rest, "-places", "testdata/small.osm")
	if code != exitOK || !strings.Contains(again, "Behind you") {
		t.Errorf("exit %d, %s%s", code, again, errs)
	}
}

func TestPlanOnTheRoadErrors(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"-at 10", "both -at and -now"},
		{"-at here -now 2026-06-12T10:00", "latitude,longitude"},
		{"-at 0,nowhere -now 2026-06-12T10:00", "latitude,longitude"},
		{"-at 10 -now 10:00", "write it as 2026-06-13T14:20"},
		{"-at 10 -now 2026-06-12T10:00 -levels fresh=half", "fresh=3/4"},
		{"-at 10 -now 2026-06-12T10:00 -levels wine=3", "no such tank"},
		{"-at 999 -now 2026-06-12T10:00", "before its end"},
	} {
		if code, _, errs := ullage(small(strings.Fields(c.args)...)...); code != exitUsage || !strings.Contains(errs, c.want) {
			t.Errorf("%s: exit %d, %s", c.args, code, errs)
		}
	}
}
