package data

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/paulmach/orb"

	"ullage/data/plain"
	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// notPlaces: the features of a file are not places of this program.
const notPlaces fact.Kind = "places.foreign"

// ErrForeign is returned for GeoJSON whose features are not places as
// [WritePlaces] writes them, but for instance OpenStreetMap objects with their
// tags: what tags mean is the business of package osm.
var ErrForeign = fact.Fail(errors.New("the features are not places of this program (id, kind and point in their properties); open the file as map data"), notPlaces, nil)

type placeFeature struct {
	Type       string      `json:"type"`
	ID         string      `json:"id"`
	Geometry   pointShape  `json:"geometry"`
	Properties *trip.Place `json:"properties"`
}

type pointShape struct {
	Type        string    `json:"type"`
	Coordinates orb.Point `json:"coordinates"`
}

// WritePlaces writes places as a GeoJSON FeatureCollection, a feature per
// line, in the order given. The properties of a feature are the whole place,
// so that [ReadPlaces] returns the same places. Points must be finite.
func WritePlaces(w io.Writer, places []trip.Place) error {
	if _, err := io.WriteString(w, `{"type":"FeatureCollection","features":[`); err != nil {
		return fmt.Errorf("write places: %w", err)
	}
	for i, p := range places {
		b, err := json.Marshal(placeFeature{"Feature", p.ID, pointShape{"Point", p.Point}, &p})
		if err != nil {
			return fmt.Errorf("write place %s: %w", p.ID, err)
		}
		end := ",\n"
		if i == 0 {
			end = "\n"
		}
		if _, err := w.Write(append([]byte(end), b...)); err != nil {
			return fmt.Errorf("write places: %w", err)
		}
	}
	if _, err := io.WriteString(w, "\n]}\n"); err != nil {
		return fmt.Errorf("write places: %w", err)
	}
	return nil
}

// ReadPlaces reads what [WritePlaces] wrote. The position counts that the
// geometry states, so that a place may be moved in any map tool. The error
// names the file and the line, or is [ErrForeign] for other GeoJSON.
func ReadPlaces(name string, r io.Reader) ([]trip.Place, error) {
	all, err := io.ReadAll(r)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	text, err := utf8Text(all)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	if err := ours(text); err != nil {
		return nil, wrong.In(name, err)
	}
	var f struct {
		Features []placeFeature `json:"features"`
	}
	if _, err := strict.UnmarshalKnown(text, &f); err != nil {
		return nil, wrong.In(name, err)
	}
	places := make([]trip.Place, 0, len(f.Features))
	seen := make(map[string]bool, len(f.Features))
	for i, feature := range f.Features {
		p, err := feature.place()
		if err == nil && seen[p.ID] {
			err = fmt.Errorf("the id %q is there twice", p.ID)
		}
		if err != nil {
			return nil, fmt.Errorf("read %s: feature %d: %w", name, i+1, err)
		}
		seen[p.ID] = true
		places = append(places, p)
	}
	return places, nil
}

// ours says what is wrong with a text that is no collection of this program's places.
func ours(text []byte) error {
	var f struct {
		Type     string            `json:"type"`
		Features []json.RawMessage `json:"features"`
	}
	if _, err := strict.UnmarshalKnown(text, &f); err != nil {
		return err
	}
	if f.Type != "FeatureCollection" {
		return fmt.Errorf("line 1: type is %q; places are a GeoJSON FeatureCollection", f.Type)
	}
	for i, raw := range f.Features {
		var mark struct {
			Properties struct {
				ID, Kind string
				Point    []float64
			}
		}
		p := &mark.Properties
		if err := json.Unmarshal(raw, &mark); err != nil || p.ID == "" || p.Kind == "" || len(p.Point) != 2 {
			return fmt.Errorf("feature %d: %w", i+1, ErrForeign)
		}
	}
	return nil
}

// place is the place of a feature.
func (f placeFeature) place() (trip.Place, error) {
	p := *f.Properties
	if f.Geometry.Type != "Point" {
		return p, fmt.Errorf("place %s is a %q; a place is a Point", p.ID, f.Geometry.Type)
	}
	point, err := checkPoint(f.Geometry.Coordinates[0], f.Geometry.Coordinates[1])
	if err != nil {
		return p, fmt.Errorf("place %s: %w", p.ID, err)
	}
	p.Name, p.Operator = plain.Text(p.Name), plain.Text(p.Operator)
	if point != p.Point { // moved: the way in was to where it was
		p.Point, p.Outline, p.Gates = point, nil, nil
	}
	return p, nil
}
