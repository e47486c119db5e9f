package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"ullage/geo"
	"ullage/planner/trip"
)

// A route drawn through two towns of the island follows roads: it is longer than the
// straight line between them, begins and ends there, and no part of it is straight.
func TestVia(t *testing.T) {
	all, err := towns(t.Context(), "")
	if err != nil || len(all) < 2 {
		t.Fatal(err, len(all))
	}
	from, to := all[0], all[1]
	for _, u := range all[1:] { // not too far
		if d := geo.DistanceM(from.Point, u.Point); d > 20_000 && d < geo.DistanceM(from.Point, to.Point) || geo.DistanceM(from.Point, to.Point) < 20_000 {
			to = u
		}
	}
	at := fmt.Sprintf("%.5f,%.5f", to.Point[1], to.Point[0])
	for _, via := range []string{from.Name + "; " + to.Name, from.Name + ";" + at, strings.ToLower(from.Name) + " ; " + to.Name} {
		code, out, errs := ullage("plan", "-via", via, "-json")
		var it trip.Itinerary
		if err := json.Unmarshal([]byte(out), &it); err != nil {
			t.Fatalf("%s: exit %d, %v, %s", via, code, err, errs)
		}
		straight := geo.DistanceM(from.Point, to.Point) / 1000
		if it.LengthKm < straight || it.LengthKm > 4*straight || len(it.OffRoad) > 0 || strings.Contains(out, string(viaStraight)) {
			t.Errorf("%s: %.1f km, %.1f straight, off the road %v", via, it.LengthKm, straight, it.OffRoad)
		}
	}
}

// What is on no road stays straight, and the sheet says how much of it.
func TestViaOffTheRoad(t *testing.T) {
	all, err := towns(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	sea := fmt.Sprintf("%.5f,%.5f", all[0].Point[1]+1, all[0].Point[0]-1.5)
	_, out, errs := ullage("plan", "-via", all[0].Name+"; "+sea, "-within", "1s")
	if text := strings.Join(strings.Fields(out+errs), " "); !strings.Contains(text, "are on no road of the map data: there it is a straight line") {
		t.Errorf("%s", text)
	}
}

func TestViaSaysWhatIsWrong(t *testing.T) {
	for via, want := range map[string]string{
		"Nowhere at all; Elsewhere": `"Nowhere at all": the map data name no such place: write LAT,LON, or one of`,
		"40,-36":                    "name two places or more, with a semicolon between",
		";;":                        "name two places or more",
		"e; 40.1,-36.5":             `"e": the map data have more than one: write one of`,
		"40.1,-36.5; 40.1,-36.5":    "the route has no length",
	} {
		if code, _, errs := ullage("plan", "-via", via); code == exitOK || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %s, want %s", via, code, errs, want)
		}
	}
	if code, _, errs := ullage("plan", "-via", "a; b", "-route", "x.gpx", "-places", "x.osm"); code == exitOK || !strings.Contains(errs, "leave out -route") {
		t.Errorf("exit %d, %s", code, errs)
	}
	if code, _, errs := ullage(small("-snap")...); code == exitOK || !strings.Contains(errs, "need map data with roads") {
		t.Errorf("-snap without roads: exit %d, %s", code, errs)
	}
}

// A line beside the roads is put on them: the demo's route on its own roads stays as long.
func TestSnap(t *testing.T) {
	lengths := map[string]float64{}
	for _, flags := range []string{"", "-snap"} {
		args := []string{"plan", "-json"}
		if flags != "" {
			args = append(args, flags)
		}
		code, out, errs := ullage(args...)
		var it trip.Itinerary
		if err := json.Unmarshal([]byte(out), &it); err != nil {
			t.Fatalf("%v: exit %d, %v, %s", args, code, err, errs)
		}
		lengths[flags] = it.LengthKm
	}
	if was, is := lengths[""], lengths["-snap"]; is < 0.97*was || is > 1.03*was {
		t.Errorf("%v km put on roads, %v before", is, was)
	}
}
