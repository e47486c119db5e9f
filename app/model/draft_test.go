package model

import (
	"testing"

	"github.com/paulmach/orb"
)

// drawn is a drawing of points, after more messages.
func drawn(points orb.LineString, msgs ...Msg) Model {
	m := then(planned(), DrawBegan{}, DrawCleared{})
	for _, p := range points {
		m = then(m, DrawnPoint{p})
	}
	return then(m, msgs...)
}

// Only what is there can be chosen, and only what is chosen is taken out.
func TestChosenPoint(t *testing.T) {
	for _, tc := range []struct {
		index, chosen, left int
	}{
		{-1, 0, 3}, {0, 1, 2}, {2, 3, 2}, {3, 0, 3},
	} {
		m := drawn(orb.LineString{pa, pb, pc}, DrawnChoice{tc.index})
		if m.Draft.Chosen != tc.chosen {
			t.Errorf("index %d chooses point %d, want %d", tc.index, m.Draft.Chosen, tc.chosen)
		}
		m = then(m, DrawnRemove{})
		if got := m.Draft.Points; len(got) != tc.left || tc.chosen == 1 && got[0] != pb || tc.chosen == 3 && got[1] != pb {
			t.Errorf("index %d is chosen and removed: %v", tc.index, got)
		}
	}
}

// A point is set or moved on the line, and nowhere else.
func TestPointsOutsideTheLine(t *testing.T) {
	for _, tc := range []struct {
		msg  Msg
		want orb.LineString
	}{
		{DrawnInsert{0, pc}, orb.LineString{pc, pa, pb}},
		{DrawnInsert{2, pc}, orb.LineString{pa, pb, pc}},
		{DrawnInsert{-1, pc}, orb.LineString{pa, pb}},
		{DrawnInsert{3, pc}, orb.LineString{pa, pb}},
		{DrawnMove{0, pc}, orb.LineString{pc, pb}},
		{DrawnMove{1, pc}, orb.LineString{pa, pc}},
		{DrawnMove{-1, pc}, orb.LineString{pa, pb}},
		{DrawnMove{2, pc}, orb.LineString{pa, pb}},
	} {
		if got := drawn(orb.LineString{pa, pb}, tc.msg).Draft.Points; !got.Equal(tc.want) {
			t.Errorf("%T%+v gives %v, want %v", tc.msg, tc.msg, got, tc.want)
		}
	}
}

// Steps are taken back and made again in their order, until another is made.
func TestUndoAndRedo(t *testing.T) {
	m := drawn(orb.LineString{pa, pb, pc})
	for _, tc := range []struct {
		name string
		msgs []Msg
		want int // points
	}{
		{"nothing to make again", []Msg{DrawRedone{}}, 3},
		{"two back", []Msg{DrawUndone{}, DrawUndone{}}, 1},
		{"and one again", []Msg{DrawUndone{}, DrawUndone{}, DrawRedone{}}, 2},
		{"and both", []Msg{DrawUndone{}, DrawUndone{}, DrawRedone{}, DrawRedone{}}, 3},
		{"and back once more", []Msg{DrawUndone{}, DrawUndone{}, DrawRedone{}, DrawRedone{}, DrawUndone{}}, 2},
		{"another step", []Msg{DrawUndone{}, DrawnPoint{bend}, DrawRedone{}}, 3},
	} {
		if got := then(m, tc.msgs...).Draft.Points; len(got) != tc.want {
			t.Errorf("%s: %v, want %d points", tc.name, got, tc.want)
		}
	}
	if got := (Draft{}).undo(); len(got.Points) != 0 || len(got.After) != 0 {
		t.Errorf("nothing taken back is %+v", got)
	}
}

// The leg that is spoken of leads to the chosen point, or else to the last.
func TestSpokenLeg(t *testing.T) {
	for _, tc := range []struct{ points, chosen, want int }{
		{0, 0, -1}, {1, 0, -1}, {1, 1, -1}, {2, 0, 0}, {3, 0, 1}, {3, 1, 0}, {3, 2, 0}, {3, 3, 1},
	} {
		d := Draft{Points: orb.LineString{pa, pb, pc}[:tc.points], Chosen: tc.chosen}
		if got := d.Leg(); got != tc.want {
			t.Errorf("of %d points, %d chosen: leg %d, want %d", tc.points, tc.chosen, got, tc.want)
		}
	}
}

// The map's scale says which road a click means; it is asked while one draws.
func TestScale(t *testing.T) {
	if m := drawn(nil, DrawnScale{12}); m.Scale != 12 {
		t.Errorf("the scale is %v", m.Scale)
	}
	if m := then(planned(), DrawnScale{12}); m.Scale != 0 {
		t.Errorf("nothing is drawn, and the scale is %v", m.Scale)
	}
}
