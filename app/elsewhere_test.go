package page

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/mapview"
	"ullage/app/model"
	"ullage/app/model/sample"
)

// mapOf is map data with places in a box.
func mapOf(w, s, e, n float64) model.File {
	return model.File{Name: "m.osm.pbf", Kind: "places", Count: 3, Box: [4]float64{w, s, e, n}}
}

func TestElsewhere(t *testing.T) {
	route := sample.Trip().Route.Bound()
	w, s, e, n := route.Min[0], route.Min[1], route.Max[0], route.Max[1]
	for _, tc := range []struct {
		name  string
		files []model.File
		far   bool
	}{
		{"round the route", []model.File{mapOf(w-1, s-1, e+1, n+1)}, false},
		{"touching the route", []model.File{mapOf(e, n, e+9, n+9)}, false},
		{"30 km north", []model.File{mapOf(w, n+0.27, e, n+1)}, false},
		{"60 km north", []model.File{mapOf(w, n+0.54, e, n+1)}, true},
		{"far and near", []model.File{mapOf(w+40, s, e+40, n), mapOf(w, s, e, n)}, false},
		{"far without places", []model.File{{Kind: "places"}}, false},
		{"no map data", nil, false},
	} {
		m := planned()
		m.Files = tc.files
		if got := m.Elsewhere(); got != tc.far {
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
	m = then(m, model.PlacesRead{File: far})
	if got := mapview.Of(m); got.Overall != far.Box || !got.Far {
		t.Errorf("the map shows %v, far %v; want the map data", got.Overall, got.Far)
	}
	m = then(m, model.DrawBegan{})
	if m.Draft == nil || len(m.Draft.Points) != 0 {
		t.Fatalf("the draft is %+v, want an empty one", m.Draft)
	}
	if off := then(m, model.DrawnPoint{Point: orb.Point{100, 40}}, model.DrawEnded{}); !off.Trip.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("called off, the points are %v", off.Trip.Points)
	}
	m = then(m, model.DrawnPoint{Point: orb.Point{100, 40}}, model.DrawnPoint{Point: orb.Point{100.5, 40.5}}, model.DrawEnded{Keep: true})
	if got := mapview.Of(m); got.Far || got.Overall != [4]float64{100, 40, 100.5, 40.5} {
		t.Errorf("drawn, the map shows %v, far %v; want the route", got.Overall, got.Far)
	}
}
