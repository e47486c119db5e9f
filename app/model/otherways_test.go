package model

import (
	"reflect"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/byroad"
)

// Other ways are looked for of the leg that is spoken of. What comes back counts
// for this leg and this vehicle alone; one that is taken is a point more.
func TestOtherWays(t *testing.T) {
	m := drawn(orb.LineString{pa, pb, pc})
	if got := todo[FindOthers](m, WaysAsked{}); len(got) != 1 || got[0].Pair != (Pair{pb, pc}) {
		t.Errorf("looks for %v", got)
	}
	m = then(m, DrawnChoice{1}, WaysAsked{})
	first, second := byroad.Leg{Line: orb.LineString{pa, bend}}, byroad.Leg{Line: orb.LineString{bend, pb}}
	size := SizeOf(m.Trip.Vehicle)
	found := WaysFound{size, Pair{pa, pb}, []byroad.Leg{first, second, first, second}, true}
	for _, tc := range []struct {
		name  string
		msg   WaysFound
		known bool
	}{
		{"these", found, true},
		{"of another leg", WaysFound{size, Pair{pb, pc}, found.Legs, true}, false},
		{"for another vehicle", WaysFound{Size{}, found.Pair, found.Legs, true}, false},
	} {
		if got := then(m, tc.msg).Draft.Ways; got == nil || got.Known != tc.known || tc.known != (len(got.List) == 2) || got.Leg != 0 {
			t.Errorf("%s: %+v", tc.name, got)
		}
	}
	if got := then(m, WaysFound{Vehicle: size, Pair: found.Pair}).Draft.Ways; got != nil {
		t.Errorf("the question was not answered, and there are %+v", got)
	}
	m = then(m, found)
	if w := m.Draft.Ways; !reflect.DeepEqual(w.List[1], [2]byroad.Leg{first, second}) {
		t.Errorf("the second way is %v", w.List[1])
	}
	for _, i := range []int{-1, 2} {
		if got := then(m, WayTaken{i}).Draft.Points; len(got) != 3 {
			t.Errorf("way %d of two: %v", i, got)
		}
	}
	got := then(m, WayTaken{1})
	if !got.Draft.Points.Equal(orb.LineString{pa, bend, pb, pc}) || got.Draft.Ways != nil {
		t.Errorf("a way taken gives %v, and offers %v", got.Draft.Points, got.Draft.Ways)
	}
	if unknown := got.Legs.Unknown(got.Draft.Points); len(unknown) != 1 || unknown[0] != (Pair{pb, pc}) {
		t.Errorf("of a way taken, %v is to be found again", unknown)
	}
}

// What comes too early or too late is for nobody.
func TestOtherWaysOfNothing(t *testing.T) {
	late := []Msg{WaysAsked{}, WaysFound{OK: true}, WayTaken{0}}
	for name, m := range map[string]Model{"no drawing": planned(), "one point": drawn(orb.LineString{pa}), "not asked": drawn(orb.LineString{pa, pb})} {
		for _, msg := range late {
			if _, asks := msg.(WaysAsked); asks && name == "not asked" {
				continue
			}
			if got := then(m, msg); !reflect.DeepEqual(got, m) || len(todo[FindOthers](m, msg)) > 0 {
				t.Errorf("%s: %T changes the drawing to %+v", name, msg, got.Draft)
			}
		}
	}
}
