package model

import (
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/byroad"
	"ullage/planner/fact"

	"ullage/app/model/sample"
	"ullage/app/say"
)

// A road that two legs go round is named once.
func TestGoneRound(t *testing.T) {
	low, narrow := sample.Tag("Low Lane"), sample.Tag("Narrow Street")
	got := GoneRound(say.Voice{}, []byroad.Leg{{Avoided: []fact.Fact{low}}, {Avoided: []fact.Fact{narrow, low}}})
	if want := []string{"Low Lane", "Narrow Street"}; !slices.Equal(got, want) {
		t.Errorf("goes round %q, want %q", got, want)
	}
}

// A leg by road of one place is there; one that says nothing moves nothing.
func TestShownAtShortLegs(t *testing.T) {
	points := orb.LineString{pa, pb, pc}
	if got := ShownAt(points, []byroad.Leg{{}, {Line: orb.LineString{bend}}}); !got.Equal(orb.LineString{pa, bend, bend}) {
		t.Errorf("shown at %v", got)
	}
}

// What is not known yet is asked once, and straight until then. Points are
// shown on the road that they meant, those of a straight leg where they are.
func TestLegs(t *testing.T) {
	click, road := orb.Point{1.01, 1.01}, byroad.Leg{Line: orb.LineString{pa, bend, pb}}
	legs := Legs(nil).With([]Pair{{click, pb}, {pb, pc}}, []byroad.Leg{road}) // the second did not come
	points := orb.LineString{click, pb, pc, pb, pc, pc}
	if got, want := legs.Unknown(points), []Pair{{pb, pc}, {pc, pb}}; !slices.Equal(got, want) {
		t.Errorf("asks for %v, want %v", got, want)
	}
	of := legs.Of(points[:3])
	if len(of) != 2 || of[0].Drawn || !of[1].Drawn {
		t.Errorf("legs are %+v, want one by road and one straight", of)
	}
	if got, want := Joined(of), (orb.LineString{pa, bend, pb, pc}); !got.Equal(want) {
		t.Errorf("joined %v, want %v", got, want)
	}
	if got, want := ShownAt(points[:3], of), (orb.LineString{pa, pb, pc}); !got.Equal(want) {
		t.Errorf("shown at %v, want %v", got, want)
	}
}
