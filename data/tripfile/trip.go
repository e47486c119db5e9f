package tripfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"ullage/data/plain"
	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A collection is a trip file. V is how the vehicle is given: a trip.Vehicle,
// or a string that names one of the fleet.
type collection[V any] struct {
	Type     string     `json:"type"`
	Ullage   *member[V] `json:"ullage"`
	Features []feature  `json:"features"`
}

// member is the trip; its own Vehicle hides the trip's.
type member[V any] struct {
	trip.Trip
	Vehicle V `json:"vehicle"`
}

type feature struct {
	Type       string            `json:"type"`
	Properties map[string]string `json:"properties"`
	Geometry   *geometry         `json:"geometry"`
}

type geometry struct {
	Type        string      `json:"type"`
	Coordinates [][]float64 `json:"coordinates"`
}

// looks reads only what decides how the rest is read: features that are not
// lines have coordinates of other shapes, and are left out.
type looks struct {
	Type   string `json:"type"`
	Ullage *struct {
		Format  string          `json:"format"`
		Vehicle json.RawMessage `json:"vehicle"`
	} `json:"ullage"`
}

// Read reads a trip file. The vehicle may be an object, or the id of one of
// [trip.Fleet]. A file without a route gives a trip without one, for a route
// to be added. The rest must be valid: an error names the file, the place and
// what to do. notes are what there is to say of it. name is for errors and notes.
// Files over 64 MiB are refused.
func Read(name string, r io.Reader) (t trip.Trip, notes []fact.Fact, err error) {
	b, err := load(name, r)
	if err != nil {
		return trip.Trip{}, nil, err
	}
	if err := marked(name, b); err != nil {
		return trip.Trip{}, nil, err
	}
	if t, notes, err = withoutRoute(name, b); err != nil {
		return trip.Trip{}, nil, err
	}
	tidy(&t)
	if t.Route, err = route(name, b); err != nil {
		return trip.Trip{}, nil, err
	}
	if err := valid(t); err != nil {
		return trip.Trip{}, nil, wrong.In(name, err)
	}
	return t, notes, nil
}

// tidy makes the names of a trip fit to be shown.
func tidy(t *trip.Trip) {
	t.Name, t.Vehicle = plain.Text(t.Name), tidyVehicle(t.Vehicle)
	for i := range t.Done {
		t.Done[i].Name = plain.Text(t.Done[i].Name)
	}
	for i := range t.Round {
		t.Round[i] = plain.Text(t.Round[i])
	}
}

// marked says what is wrong with a text that is no trip file.
func marked(name string, b []byte) error {
	var l looks
	if _, err := decode(name, b, &l, elsewhere); err != nil {
		return err
	}
	if l.Type != "FeatureCollection" {
		return wrong.In(name, fact.Fail(fmt.Errorf("type is %q: a trip file is a GeoJSON FeatureCollection", l.Type), noTrip, nil))
	}
	if l.Ullage == nil {
		return wrong.In(name, fact.Fail(errors.New("has no member \"ullage\": this is GeoJSON, but not a trip; as a route it may do"), noTrip, nil))
	}
	if newer(l.Ullage.Format, trip.Format) {
		return &NewerError{name, l.Ullage.Format, trip.Format}
	}
	if l.Ullage.Format != trip.Format {
		return wrong.In(name, ofVersion(fmt.Errorf("ullage.format is %q: write %q", l.Ullage.Format, trip.Format), l.Ullage.Format, trip.Format))
	}
	return nil
}

// The members of a trip, and of nothing.
const ours, elsewhere = "ullage.", "\x00"

// withoutRoute reads the trip itself, and its vehicle as it is given.
func withoutRoute(name string, b []byte) (trip.Trip, []fact.Fact, error) {
	var l looks
	if err := json.Unmarshal(b, &l); err == nil && len(l.Ullage.Vehicle) > 0 && l.Ullage.Vehicle[0] == '"' {
		return withFleetVehicle(name, b)
	}
	var c struct {
		Ullage member[trip.Vehicle] `json:"ullage"`
	}
	notes, err := decode(name, b, &c, ours)
	t := c.Ullage.Trip
	t.Vehicle = c.Ullage.Vehicle
	return t, notes, err
}

func withFleetVehicle(name string, b []byte) (trip.Trip, []fact.Fact, error) {
	var c struct {
		Ullage member[string] `json:"ullage"`
	}
	notes, err := decode(name, b, &c, ours)
	if err != nil {
		return trip.Trip{}, nil, err
	}
	t := c.Ullage.Trip
	var ids []string
	for _, v := range trip.Fleet() {
		if v.ID == c.Ullage.Vehicle {
			t.Vehicle = v
			return t, notes, nil
		}
		ids = append(ids, v.ID)
	}
	err = fmt.Errorf("ullage.vehicle is %q: write one of %s, or the vehicle itself", c.Ullage.Vehicle, strings.Join(ids, ", "))
	return trip.Trip{}, nil, wrong.In(name, fact.Fail(err, noVehicle, fact.V{"found": fact.Text(c.Ullage.Vehicle), "list": fact.Texts(ids)}))
}

// route reads the one LineString among the features; nil if there is none.
func route(name string, b []byte) (orb.LineString, error) {
	var c struct {
		Features []struct {
			Geometry *struct {
				Type        string          `json:"type"`
				Coordinates json.RawMessage `json:"coordinates"`
			} `json:"geometry"`
		} `json:"features"`
	}
	if _, err := decode(name, b, &c, elsewhere); err != nil {
		return nil, err
	}
	var line orb.LineString
	for i, f := range c.Features {
		if f.Geometry == nil || f.Geometry.Type != "LineString" {
			continue
		}
		if line != nil {
			return nil, wrong.In(name, fact.Fail(fmt.Errorf("features[%d] is a second LineString: a trip has one route, remove the other", i), twoRoutes, nil))
		}
		points, err := pointsOf(f.Geometry.Coordinates)
		if err != nil {
			return nil, wrong.In(name, fmt.Errorf("features[%d]: coordinates are not a list of [longitude, latitude]: %w", i, err))
		}
		for j, p := range points {
			if len(p) < 2 {
				return nil, wrong.In(name, fmt.Errorf("features[%d]: point %d has %d numbers: write [longitude, latitude]", i, j+1, len(p)))
			}
			line = append(line, orb.Point{p[0], p[1]})
		}
		if len(line) == 0 {
			return nil, wrong.In(name, fmt.Errorf("features[%d]: the route has no points: draw one, or remove the feature", i))
		}
	}
	return line, nil
}

func pointsOf(coordinates []byte) (points [][]float64, err error) {
	_, err = strict.UnmarshalKnown(coordinates, &points)
	var wrong *strict.Error
	if errors.As(err, &wrong) {
		err = wrong.Unplaced() // its line is that of the part
	}
	return points, err
}

// valid is Trip.Validate for a trip whose route may still be missing.
func valid(t trip.Trip) error {
	if t.Route == nil {
		t.Route = orb.LineString{{0, 0}, {0, 1}}
	}
	return t.Validate()
}

func featureOf(t trip.Trip) feature {
	g := &geometry{Type: "LineString"}
	for _, p := range t.Route {
		g.Coordinates = append(g.Coordinates, slices.Clone(p[:]))
	}
	return feature{Type: "Feature", Properties: map[string]string{"name": t.Name}, Geometry: g}
}

// Write writes a trip file with the vehicle in it. [Read] gives the same trip
// back; heights in the route do not exist here and so are not lost.
func Write(w io.Writer, t trip.Trip) error {
	t.Format = trip.Format
	c := collection[trip.Vehicle]{
		Type:     "FeatureCollection",
		Ullage:   &member[trip.Vehicle]{Trip: t, Vehicle: t.Vehicle},
		Features: []feature{},
	}
	if len(t.Route) > 0 {
		c.Features = append(c.Features, featureOf(t))
	}
	if err := json.NewEncoder(w).Encode(c); err != nil {
		return fmt.Errorf("write trip %q: %w", t.Name, err)
	}
	return nil
}
