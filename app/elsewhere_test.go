package page

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/job"
	"ullage/planner/byroad"
)

// mapOf is map data with places in a box.
func mapOf(w, s, e, n float64) File {
	return File{Name: "m.osm.pbf", Kind: "places", Count: 3, Box: [4]float64{w, s, e, n}}
}

func TestElsewhere(t *testing.T) {
	route := sampleTrip().Route.Bound()
	w, s, e, n := route.Min[0], route.Min[1], route.Max[0], route.Max[1]
	for _, tc := range []struct {
		name  string
		files []File
		far   bool
	}{
		{"round the route", []File{mapOf(w-1, s-1, e+1, n+1)}, false},
		{"touching the route", []File{mapOf(e, n, e+9, n+9)}, false},
		{"30 km north", []File{mapOf(w, n+0.27, e, n+1)}, false},
		{"60 km north", []File{mapOf(w, n+0.54, e, n+1)}, true},
		{"far and near", []File{mapOf(w+40, s, e+40, n), mapOf(w, s, e, n)}, false},
		{"far without places", []File{{Kind: "places"}}, false},
		{"no map data", nil, false},
	} {
		m := planned()
		m.Files = tc.files
		if got := elsewhere(m); got != tc.far {
			t.Errorf("map data %s: elsewhere is %v, want %v", tc.name, got, tc.far)
		}
		if got := strings.Contains(drawn(t, m), `id="elsewhere"`); got != tc.far {
			t.Errorf("map data %s: said is %v, want %v", tc.name, got, tc.far)
		}
	}
}

// With map data of somewhere else the map shows those, a drawing begins
// afresh there, and calling it off leaves everything as it was.
func TestDrawingElsewhere(t *testing.T) {
	m := planned()
	m.Trip.Points = orb.LineString{pa, pb}
	far := mapOf(100, 40, 101, 41)
	m = update(m, PlacesRead{File: far})
	if got := mapModel(m); got.Overall != far.Box || !got.Far {
		t.Errorf("the map shows %v, far %v; want the map data", got.Overall, got.Far)
	}
	m = update(m, DrawBegan{})
	if m.Draft == nil || len(m.Draft.Points) != 0 {
		t.Fatalf("the draft is %+v, want an empty one", m.Draft)
	}
	if off := update(m, DrawnPoint{orb.Point{100, 40}}, DrawEnded{}); !off.Trip.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("called off, the points are %v", off.Trip.Points)
	}
	m = update(m, DrawnPoint{orb.Point{100, 40}}, DrawnPoint{orb.Point{100.5, 40.5}}, DrawEnded{Keep: true})
	if got := mapModel(m); got.Far || got.Overall != [4]float64{100, 40, 100.5, 40.5} {
		t.Errorf("drawn, the map shows %v, far %v; want the route", got.Overall, got.Far)
	}
}

// A drawn route is called after the towns at its ends; a name that a person
// gave to the one before stays.
func TestDrawnName(t *testing.T) {
	towns := []draw.Town{{Name: "Aston", Point: pa}, {Name: "Beck", Point: orb.Point{2.1, 1}}, {Name: "Clough", Point: orb.Point{5, 5}}}
	for _, tc := range []struct {
		points orb.LineString
		want   string
	}{
		{orb.LineString{pa, pb}, "Aston to Beck"},
		{orb.LineString{pa, pb, pa}, "Round trip from Aston"},
		{orb.LineString{pa, pc}, "Drawn route"}, // no town near its end
		{nil, "Drawn route"},
	} {
		if got := drawnName(towns, tc.points); got != tc.want {
			t.Errorf("%v is called %q, want %q", tc.points, got, tc.want)
		}
	}
	if got := drawnName(nil, orb.LineString{pa, pb}); got != "Drawn route" {
		t.Errorf("without towns %q", got)
	}

	draws := []Msg{DrawBegan{}, DrawCleared{}, DrawnPoint{pa}, DrawnPoint{pb}, DrawEnded{Keep: true}}
	m := planned()
	m.Backdrop.Towns = towns
	if m = update(m, draws...); m.Trip.Name != "Aston to Beck" {
		t.Errorf("drawn, the trip is called %q", m.Trip.Name)
	}
	back := []Msg{DrawBegan{}, DrawnPoint{pa}, DrawEnded{Keep: true}}
	if round := update(m, back...); round.Trip.Name != "Round trip from Aston" {
		t.Errorf("drawn on, the trip is called %q", round.Trip.Name)
	}
	if named := update(update(m, Edited{"name", "Our summer"}), back...); named.Trip.Name != "Our summer" {
		t.Errorf("a trip with a name of its own is called %q", named.Trip.Name)
	}
}

// What is drawn so far outlasts a reload, where it is on the road; what was
// used or called off does not come back.
func TestDraftIsKept(t *testing.T) {
	click := orb.Point{1.001, 1.002}
	m := update(planned(), RoadsRead{job.RoadsRead{Roads: 9}}, DrawBegan{}, DrawnPoint{click}, DrawnPoint{pb})
	before := m.Marks
	m = update(m, Followed{sizeOf(m.Trip.Vehicle), []pair{{click, pb}}, []byroad.Leg{{Line: orb.LineString{pa, bend, pb}}}})
	if m.Marks == before {
		t.Error("the place on the road is not kept")
	}
	text, err := json.Marshal(marksOf(m))
	if err != nil {
		t.Fatal(err)
	}
	var kept Marks
	if err := json.Unmarshal(text, &kept); err != nil {
		t.Fatal(err)
	}
	again := update(after(kept), PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sampleTrip(), Last: true})
	if again.Draft == nil || !again.Draft.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("after a reload the draft is %+v, want the points on the road", again.Draft)
	}
	if other := update(again, TripRead{Trip: sampleTrip()}); other.Draft != nil {
		t.Error("another trip has the draft of the one before")
	}
	for _, end := range []Msg{DrawEnded{}, DrawEnded{Keep: true}} {
		ended := update(m, end)
		if got := marksOf(ended); ended.Marks == m.Marks || got.Draft != nil {
			t.Errorf("after %+v the draft %v is kept, count %d after %d", end, got.Draft, ended.Marks, m.Marks)
		}
	}
}
