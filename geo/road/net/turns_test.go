package net

import (
	"testing"

	"github.com/paulmach/orb"
)

// A way in two pieces, as where it leaves the data or passes below a bridge: turns at both its ends hold.
func TestTurnsOfWayInPieces(t *testing.T) {
	p := func(x, y float64) Node { return Node{Point: orb.Point{7 + x/1000, 46 + y/1000}} }
	in := Input{
		Nodes: []Node{p(0, 0), p(1, 0), p(2, 0), p(0, 1), p(2, 1)},
		Ways: []Way{{ID: 1, Nodes: []int32{0, 1}}, {ID: 1, Nodes: []int32{1, 2}, Road: Road{Flags: Under}}, {ID: 2, Nodes: []int32{0, 3}},
			{ID: 3, Nodes: []int32{2, 4}}},
		Turns: []Turn{{From: 1, To: 2, Via: 0}, {From: 1, To: 3, Via: 2}},
	}
	n, err := Build(t.Context(), in)
	if err != nil {
		t.Fatal(err)
	}
	turns := 0
	for _, c := range n.extra {
		for _, b := range c.bans {
			if b>>1 != c.in>>1 {
				turns++
			}
		}
	}
	if turns != 2 || n.Omitted() != (Omitted{}) {
		t.Errorf("%d turns, omitted %v", turns, n.Omitted())
	}
}
