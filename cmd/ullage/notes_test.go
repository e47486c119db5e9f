package main

import (
	"encoding/json"
	"strings"
	"testing"

	"ullage/planner/trip"
)

// A note that the night's place is shut moves the night, or says that there is no plan; one
// about another place is told to fit nothing; and the sheet shows the text with its date.
func TestNotes(t *testing.T) {
	_, out, _ := ullage(small("-json")...)
	var was trip.Itinerary
	if err := json.Unmarshal([]byte(out), &was); err != nil {
		t.Fatal(err)
	}
	night := was.Days[0].Calls[len(was.Days[0].Calls)-1]
	file := func(properties string) string {
		return write(t, "notes.geojson", `{"type":"FeatureCollection","ullage_notes":"ullage-notes-1","features":[
			{"type":"Feature","geometry":{"type":"Point","coordinates":[9,9]},"properties":{`+properties+`,"who":"desk","when":"2026-05-01"}}]}`)
	}
	_, out, errs := ullage(small("-notes", file(`"id":"`+night.Place+`","text":"pitch 12 is ours"`))...)
	if text := strings.Join(strings.Fields(out), " "); !strings.Contains(text, "Note of Friday 1 May by desk: pitch 12 is ours") {
		t.Errorf("%s%s", out, errs)
	}
	_, out, _ = ullage(small("-json", "-notes", file(`"id":"`+night.Place+`","night":"no"`))...)
	var is trip.Itinerary
	if err := json.Unmarshal([]byte(out), &is); err != nil {
		t.Fatal(err)
	}
	for _, d := range is.Days {
		for _, c := range d.Calls {
			if c.Night && c.Place == night.Place {
				t.Errorf("the night is still at %s", c.Place)
			}
		}
	}
	_, out, errs = ullage(small("-notes", file(`"id":"n404","text":"gone"`))...)
	if text := strings.Join(strings.Fields(out+errs), " "); !strings.Contains(text, "on n404 fits no place of the map data") {
		t.Errorf("%s%s", out, errs)
	}
	if code, _, errs := ullage(small("-notes", write(t, "no.geojson", "{}"))...); code == exitOK || !strings.Contains(errs, "no.geojson") {
		t.Errorf("exit %d, %s", code, errs)
	}
}
