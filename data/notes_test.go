package data

import (
	"strings"
	"testing"
)

const oneNote = `{"type":"FeatureCollection","ullage_notes":"ullage-notes-1","features":[
{"type":"Feature","geometry":{"type":"Point","coordinates":[1.5,42.5]},"properties":{"id":"n1","hookup":"yes","prices":{"night":9},"text":"rang them","who":"desk","when":"2027-05-01"}}]}`

func TestReadNotes(t *testing.T) {
	notes, err := ReadNotes("n.geojson", strings.NewReader(oneNote))
	if err != nil || len(notes) != 1 || notes[0].HookUp != "yes" || notes[0].Point[1] != 42.5 || notes[0].Prices["night"] != 9 {
		t.Fatalf("%+v, %v", notes, err)
	}
	for _, c := range []struct{ from, to, want string }{
		{`"hookup":"yes"`, `"hookup":"maybe"`, "hookup is \"maybe\": write yes or no"},
		{`"hookup":"yes"`, `"hokup":"yes"`, `unknown field "hokup"`},
		{`ullage-notes-1`, `ullage-notes-9`, `notes are a FeatureCollection with "ullage_notes"`},
		{`"when":"2027-05-01"`, `"who":"x"`, "given twice"},
		{`,"when":"2027-05-01"`, ``, "it needs a date"},
		{`"Point"`, `"LineString"`, "a note is a Feature with a Point"},
		{`{"night":9}`, `{"beer":9}`, `price "beer"`},
		{`{"night":9}`, `{"night":-9}`, "a sum from 0 on"},
		{`[1.5,42.5]`, `[1.5,142.5]`, "is no position"},
		{`"id":"n1"`, `"kind":"castle"`, `there is no kind of place "castle"`},
		{`"id":"n1"`, `"serves":{"wine":"yes"}`, `there is no tank "wine"`},
	} {
		if _, err := ReadNotes("n.geojson", strings.NewReader(strings.Replace(oneNote, c.from, c.to, 1))); err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "n.geojson") {
			t.Errorf("%s: %v, want %s", c.to, err, c.want)
		}
	}
}

func FuzzReadNotes(f *testing.F) {
	f.Add(oneNote)
	f.Fuzz(func(t *testing.T, text string) {
		notes, err := ReadNotes("n.geojson", strings.NewReader(text))
		for _, n := range notes {
			if err != nil || n.Validate() != nil {
				t.Errorf("%+v, %v", n, err)
			}
		}
	})
}
