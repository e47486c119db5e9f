package solve

import (
	"math"

	"ullage/planner/internal/bound"
)

// This file leaves out what no plan within the limit of a sweep does.

// leaveOut finds the services that such a plan can take, and lost of those left out.
func (w *sweep) leaveOut() {
	if w.branches == nil {
		w.branches = make([]uint32, len(w.m.Stops))
	}
	for i := range w.m.Stops {
		w.branches[i] = w.m.Stops[i].Branches
	}
	if math.IsInf(w.limit, 1) || len(w.pool) == 0 {
		return
	}
	if w.extra == nil {
		extra := make([][]float64, 0, len(w.b.Tanks))
		for _, b := range w.b.Tanks {
			x := b.Extra(w.m, w.stopped)
			if x == nil {
				return
			}
			extra = append(extra, x)
		}
		w.extra = extra
	}
	root := w.open()
	for k, b := range w.b.Tanks {
		for i, x := range w.extra[k] {
			if root+x-bound.Doubt <= w.limit {
				continue
			}
			for j, y := range w.m.Stops[i].Serves {
				if y.Tank == b.Tank && w.branches[i]&(1<<j) != 0 {
					w.branches[i] &^= 1 << j
					w.lost = min(w.lost, root+x-bound.Doubt)
				}
			}
		}
	}
}

// idle says that no plan within the limit visits the stop.
func (w *sweep) idle(i int) bool {
	s := &w.m.Stops[i]
	return w.branches[i]|s.Settled == 0 && !s.Night && !s.Required && s.Lists == 0 && !w.m.Wander
}
