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
