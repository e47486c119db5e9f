package bound

import "ullage/planner/internal/model"

// This file solves nights, and the tanks that only nights use, together and
// backwards. Left out are detours in the day's kilometres, minutes at stops,
// windows and the other tanks; headroom is rounded up to a few classes. So the
// result is never too much.
//
// What remains is a small table after each stop: by the next night reached
// (or the end), nights so far and classes of headroom, the least cost to go.
// Rows ascend by how far the day must reach, and each holds the best of the
// rows before it, so that a look-up is one binary search. In memory the rows lie
// side by side, class by class: what is done to a class is done to all rows.

type Nights struct {
	m      *model.Model
	Tanks  []int
	worth  []float64 // by tank of the problem
	scales []scale   // by tank of tanks
	moving []int     // scales that move with the road
	stride []int     // by tank of tanks
	priced int       // of tanks: the one whose layers are weighed, −1 if none
	wage   float64   // what a night more is worth, if nights are not counted
	counts int       // nights so far are told apart below this number; 1: not at all
	enough bool      // the last of them stands for any more as well
	Coarse bool      // the classes are fewer than they should be
	size   int       // classes in all
	after  []*nightTable
	raw    *nightTable   // of the table made last, where nights lie apart: each row by itself
	raws   [2][]float64  // what it lies in, by turns
	dawns  []*nightTable // by stop, after a night there, where nights lie apart; nil: none is offered

	rowed int // rows of one table at most

	via, own, old, wide []float64             // scratch
	store               *store[float64]       // what the tables lie in
	room                func(n int) []float64 // for the next table
}

// A Place is where a partial plan stands on the route, as the tables see it.
type Place struct {
	Reach   float64 // km along the route within the day's limit
	ReachAt float64 // minutes likewise
	Stop    int32   // visited last; −1: none
	Nights  int32   // so far
	Row     int32   // in the tables: see [Nights.Row]
}

// Due is the wage of the nights that are still wanted, or, if it is negative,
// of those still allowed: cost ≥ … + wage·(least − nights) for a wage from 0 on,
// and likewise with most for one below.
func (b *Nights) Due(nights int) float64 {
	switch {
	case b.wage > 0:
		return b.wage * float64(b.m.Least-nights)
	case b.wage < 0:
		return b.wage * float64(b.m.Most-nights)
	}
	return 0
}

// knows says whether the stop is any of this bound's business.
func (b *Nights) knows(i int) bool {
	s := &b.m.Stops[i]
	known := s.Night || s.Required
	for _, tank := range b.Tanks {
		known = known || s.Service(tank) != nil
	}
	return known
}

// counted is where in the rows these nights so far are.
func (b *Nights) counted(nights int) int {
	if b.counts == 1 {
		return 0
	}
	return min(nights, b.counts-1) * (b.size / b.counts)
}
