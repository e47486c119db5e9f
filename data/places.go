package data

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// ErrForeign is returned for GeoJSON whose features are not places as
// [WritePlaces] writes them, but for instance OpenStreetMap objects with their
// tags: what tags mean is the business of package osm.
var ErrForeign = errors.New("the features are not places of this program (id, kind and point in their properties); open the file as map data")

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
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	text, err := utf8Text(all)
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	var f struct {
		Type     string            `json:"type"`
		Features []json.RawMessage `json:"features"`
	}
	if err := json.Unmarshal(text, &f); err != nil {
		return nil, fmt.Errorf("read %s: %w", name, atJSON(text, 0, err))
	}
	if f.Type != "FeatureCollection" {
		return nil, fmt.Errorf("read %s: line 1: type is %q; places are a GeoJSON FeatureCollection", name, f.Type)
	}
	places := make([]trip.Place, 0, len(f.Features))
	seen := make(map[string]bool, len(f.Features))
	for i, raw := range f.Features {
		p, err := readPlace(raw)
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

func readPlace(raw []byte) (trip.Place, error) {
	var mark struct {
		Properties struct {
			ID, Kind string
			Point    []float64
		}
	}
	if err := json.Unmarshal(raw, &mark); err != nil || mark.Properties.ID == "" || mark.Properties.Kind == "" || len(mark.Properties.Point) != 2 {
		return trip.Place{}, ErrForeign
	}
	var f placeFeature
	if err := json.Unmarshal(raw, &f); err != nil {
		return trip.Place{}, err
	}
	if f.Geometry.Type != "Point" {
		return trip.Place{}, fmt.Errorf("place %s is a %q; a place is a Point", f.Properties.ID, f.Geometry.Type)
	}
	point, err := checkPoint(f.Geometry.Coordinates[0], f.Geometry.Coordinates[1])
	if err != nil {
		return trip.Place{}, fmt.Errorf("place %s: %w", f.Properties.ID, err)
	}
	if point != f.Properties.Point { // moved: the way in was to where it was
		f.Properties.Point, f.Properties.Outline, f.Properties.Gates = point, nil, nil
	}
	return *f.Properties, nil
}

// atJSON adds the line to an error of encoding/json.
func atJSON(text []byte, start int, err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		return at1(text, start+int(syntax.Offset)-1, err)
	case errors.As(err, &kind):
		return at1(text, start+int(kind.Offset)-1, err)
	}
	return err
}
