package model

import (
	"encoding/json"
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
	if m = then(m, found); len(todo[SaveMarks](m, found)) == 0 {
		t.Error("the place on the road is not kept")
	}
	text, err := json.Marshal(MarksOf(m))
	if err != nil {
		t.Fatal(err)
	}
	var kept Marks
	if err := json.Unmarshal(text, &kept); err != nil {
		t.Fatal(err)
	}
	again := then(after(kept), PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: sample.Trip(), Last: true})
	if again.Draft == nil || !again.Draft.Points.Equal(orb.LineString{pa, pb}) {
		t.Errorf("after a reload the draft is %+v, want the points on the road", again.Draft)
	}
	if other := then(again, TripRead{Trip: sample.Trip()}); other.Draft != nil {
		t.Error("another trip has the draft of the one before")
	}
	for _, end := range []Msg{DrawEnded{}, DrawEnded{Keep: true}} {
		if got := MarksOf(then(m, end)); len(todo[SaveMarks](m, end)) == 0 || got.Draft != nil {
			t.Errorf("after %+v the draft %v is kept, to do: %v", end, got.Draft, todo[Effect](m, end))
		}
	}
}
