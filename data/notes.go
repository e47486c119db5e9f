package data

import (
	"fmt"
	"io"

	"ullage/data/plain"
	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner/trip"
)

// NotesFormat is the member ullage_notes of a file of notes.
const NotesFormat = "ullage-notes-1"

// ReadNotes reads a file of notes on places: a GeoJSON FeatureCollection with the member
// ullage_notes, a feature a note, a point where it is, the rest in its properties. It is
// strict: what it does not know is an error, for a misspelt word must not become nothing.
// The error names the file and the line, or the feature.
func ReadNotes(name string, r io.Reader) ([]trip.Note, error) {
	all, err := io.ReadAll(r)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	text, err := utf8Text(all)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	var f struct {
		Type     string `json:"type"`
		Format   string `json:"ullage_notes"`
		Features []struct {
			Type       string     `json:"type"`
			Geometry   pointShape `json:"geometry"`
			Properties trip.Note  `json:"properties"`
		} `json:"features"`
	}
	if err := strict.Unmarshal(text, &f); err != nil {
		return nil, wrong.In(name, err)
	}
	if f.Type != "FeatureCollection" || f.Format != NotesFormat {
		return nil, wrong.In(name, fmt.Errorf("it is a %q with notes %q; notes are a FeatureCollection with \"ullage_notes\": %q", f.Type, f.Format, NotesFormat))
	}
	var out []trip.Note
	for i, feature := range f.Features {
		n := feature.Properties
		n.Point = feature.Geometry.Coordinates
		n.Name, n.Text, n.Who = plain.Text(n.Name), plain.Text(n.Text), plain.Text(n.Who)
		if feature.Type != "Feature" || feature.Geometry.Type != "Point" {
			return nil, wrong.In(name, fmt.Errorf("feature %d is a %s with a %s: a note is a Feature with a Point", i+1, feature.Type, feature.Geometry.Type))
		}
		if err := n.Validate(); err != nil {
			return nil, wrong.In(name, fmt.Errorf("feature %d: %w", i+1, err))
		}
		out = append(out, n)
	}
	return out, nil
}
