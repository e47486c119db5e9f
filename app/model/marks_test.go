package model

import (
	"reflect"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/byroad"
)

// What is drawn so far outlasts a reload, where it is on the road; what was
// used or called off does not come back.
func TestDraftIsKept(t *testing.T) {
	click := orb.Point{1.001, 1.002}
	m := then(planned(), RoadsRead{Roads: 9}, DrawBegan{}, DrawnPoint{click}, DrawnPoint{pb})
	found := Followed{SizeOf(m.Trip.Vehicle), []Pair{{click, pb}}, []byroad.Leg{{Line: orb.LineString{pa, bend, pb}}}}
	if m = then(m, found); len(todo[SaveTrip](m, found)) == 0 {
		t.Error("the place on the road is not kept")
	}
	again := then(after(PlacesRead{File: File{Kind: "places"}}), TripRead{Trip: sample.Trip(), Last: resumed(t, m)})
	if again.Draft == nil || !again.Draft.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("after a reload the draft is %+v, want the points on the road", again.Draft)
	}
	if other := then(again, TripRead{Trip: sample.Trip()}); other.Draft != nil {
		t.Error("another trip has the draft of the one before")
	}
	old := then(after(Marks{Draft: orb.LineString{pa, pb}}), TripRead{Trip: sample.Trip(), Last: &Resumed{}})
	if old.Draft == nil || !old.Draft.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("an older version's draft is %+v", old.Draft)
	}
	for _, end := range []Msg{DrawEnded{}, DrawEnded{Keep: true}} {
		if got := WorkOf(then(m, end)); len(todo[SaveTrip](m, end)) == 0 || got.Draft != nil {
			t.Errorf("after %+v the draft %v is kept, to do: %v", end, got.Draft, todo[Effect](m, end))
		}
	}
}

// Two tabs tick: what each has done and taken back counts in both.
func TestMarksMerge(t *testing.T) {
	base := Marks{Ticks: []string{"a/1", "a/2", "a/3"}, Gauges: map[string]string{"u/diesel": "quarters", "u/grey": "lamp"}}
	ours := Marks{Units: "british", Ticks: []string{"a/1", "a/2", "a/4"}, Gauges: map[string]string{"u/diesel": "litres", "u/grey": "lamp"}}
	theirs := Marks{Ticks: []string{"a/2", "a/3", "a/5"}, Gauges: map[string]string{"u/diesel": "lamp", "u/fresh": "lamp"}}
	want := Marks{Units: "british", Ticks: []string{"a/2", "a/4", "a/5"}, Gauges: map[string]string{"u/diesel": "litres", "u/fresh": "lamp"}}
	if got := MergedMarks(base, ours, theirs); !reflect.DeepEqual(got, want) {
		t.Errorf("merged %+v, want %+v", got, want)
	}
	if got := MergedMarks(base, base, base); !reflect.DeepEqual(got, base) {
		t.Errorf("nothing changed gives %+v", got)
	}
	if m := then(planned(), MarksHeard{want}); !slices.Equal(m.Ticks, want.Ticks) || m.Say.Units != "" || len(todo[Effect](m, MarksHeard{want})) != 0 {
		t.Errorf("heard: %+v", MarksOf(m))
	}
}
