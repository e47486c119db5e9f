package model

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/say"
)

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
		if got := (say.Voice{}).Fact(drawnName(towns, tc.points)); got != tc.want {
			t.Errorf("%v is called %q, want %q", tc.points, got, tc.want)
		}
	}
	if got := (say.Voice{}).Fact(drawnName(nil, orb.LineString{pa, pb})); got != "Drawn route" {
		t.Errorf("without towns %q", got)
	}

	draws := []Msg{DrawBegan{}, DrawCleared{}, DrawnPoint{pa}, DrawnPoint{pb}, DrawEnded{Keep: true}}
	m := planned()
	m.Backdrop.Towns = towns
	if m = then(m, draws...); m.Trip.Name != "Aston to Beck" {
		t.Errorf("drawn, the trip is called %q", m.Trip.Name)
	}
	back := []Msg{DrawBegan{}, DrawnPoint{pa}, DrawEnded{Keep: true}}
	if round := then(m, back...); round.Trip.Name != "Round trip from Aston" {
		t.Errorf("drawn on, the trip is called %q", round.Trip.Name)
	}
	if named := then(then(m, Edited{"name", "Our summer"}), back...); named.Trip.Name != "Our summer" {
		t.Errorf("a trip with a name of its own is called %q", named.Trip.Name)
	}
}

// A town gives its name within 20 km: 0.18 degrees of latitude, more of
// longitude away from the equator, across the date line too.
func TestNearestTown(t *testing.T) {
	towns := []draw.Town{{Name: "Beck", Point: orb.Point{10, 60}}, {Name: "Aston", Point: orb.Point{10, 60.1}}, {Name: "Farside", Point: orb.Point{-179.9, 0}}}
	for _, tc := range []struct {
		p    orb.Point
		want string
	}{
		{orb.Point{10, 60.07}, "Aston"}, {orb.Point{10, 60.03}, "Beck"}, {orb.Point{10, 59.83}, "Beck"}, {orb.Point{10, 59.8}, ""},
		{orb.Point{10.34, 60}, "Beck"}, {orb.Point{10.4, 60}, ""}, {orb.Point{179.95, 0}, "Farside"}, {orb.Point{179.7, 0}, ""},
	} {
		if got := townAt(towns, tc.p); got != tc.want {
			t.Errorf("at %v the town is %q, want %q", tc.p, got, tc.want)
		}
	}
}

// The whole map is the route, or the map data where no corridor of 50 km reaches
// from one to the other.
func TestOverall(t *testing.T) {
	places := []File{
		{Kind: "places", Count: 1, Box: [4]float64{20, 40, 21, 41}}, {Kind: "places", Count: 1, Box: [4]float64{19, 40.5, 20.5, 42}},
		{Kind: "places", Box: [4]float64{0, 0, 50, 50}}, {Kind: "route", Count: 9, Box: [4]float64{0, 0, 50, 50}}, // nothing in them
	}
	box := [4]float64{19, 40, 21, 42}
	for _, tc := range []struct {
		name  string
		route orb.LineString
		files []File
		want  [4]float64
		away  bool
	}{
		{"within", orb.LineString{{20, 40}, {20.2, 41}}, places, [4]float64{20, 40, 20.2, 41}, false},
		{"just north", orb.LineString{{20, 42.4}, {20, 43}}, places, [4]float64{20, 42.4, 20, 43}, false},
		{"far north", orb.LineString{{20, 42.6}, {20, 43}}, places, box, true},
		{"just south", orb.LineString{{20, 39}, {20, 39.6}}, places, [4]float64{20, 39, 20, 39.6}, false},
		{"far south", orb.LineString{{20, 39}, {20, 39.4}}, places, box, true},
		{"just east", orb.LineString{{21.6, 41}, {22, 41}}, places, [4]float64{21.6, 41, 22, 41}, false}, // 0.5 degrees over cos 42°: 0.67
		{"far east", orb.LineString{{21.8, 41}, {22, 41}}, places, box, true},
		{"just west", orb.LineString{{18, 41}, {18.4, 41}}, places, [4]float64{18, 41, 18.4, 41}, false},
		{"far west", orb.LineString{{18, 41}, {18.2, 41}}, places, box, true},
		{"no route yet", nil, places, box, false},
		{"no map data", orb.LineString{{1, 2}, {3, 4}}, places[2:], [4]float64{1, 2, 3, 4}, false},
	} {
		m := New(nil)
		m.Trip.Route, m.Files = tc.route, tc.files
		if got, ok := m.Overall(); !ok || got != tc.want || m.Elsewhere() != tc.away {
			t.Errorf("%s: shows %v, elsewhere %v; want %v, %v", tc.name, got, m.Elsewhere(), tc.want, tc.away)
		}
	}
	if got, ok := New(nil).Overall(); ok {
		t.Errorf("nothing is all of %v", got)
	}
	if !Attributed([]File{{Sample: true, OSM: true}, {OSM: true}}) || Attributed([]File{{Sample: true, OSM: true}, {}}) {
		t.Error("who made open data is named for the invented island, or not for the world")
	}
}

// A drawing goes on with the trip's points, but not where the map is elsewhere.
func TestDrawingBegins(t *testing.T) {
	m := planned()
	m.Trip.Points = m.Trip.Route
	if got := then(m, DrawBegan{}).Draft.Points; len(got) != len(m.Trip.Route) {
		t.Errorf("goes on with %v", got)
	}
	m.Files = []File{{Kind: "places", Count: 1, Box: [4]float64{100, 0, 101, 1}}}
	if got := then(m, DrawBegan{}).Draft.Points; len(got) != 0 {
		t.Errorf("begins elsewhere with %v", got)
	}
}
