package planner

import "math"

// This file leaves out what no plan within the limit of a sweep does.

// leaveOut finds the services that such a plan can take, and lost of those left out.
func (w *sweep) leaveOut() {
	if w.branches == nil {
		w.branches = make([]uint32, len(w.m.stops))
	}
	for i := range w.m.stops {
		w.branches[i] = w.m.stops[i].branches
	}
	if math.IsInf(w.limit, 1) || len(w.pool) == 0 {
		return
	}
	if w.extra == nil {
		for _, b := range w.b.tanks {
			w.extra = append(w.extra, b.extra(w.m))
		}
	}
	root := w.open()
	for k, b := range w.b.tanks {
		for i, x := range w.extra[k] {
			if root+x-doubt <= w.limit {
				continue
			}
			for j, y := range w.m.stops[i].serves {
				if y.tank == b.tank && w.branches[i]&(1<<j) != 0 {
					w.branches[i] &^= 1 << j
					w.lost = min(w.lost, root+x-doubt)
				}
			}
		}
	}
}

// idle says that no plan within the limit visits the stop.
func (w *sweep) idle(i int) bool {
	s := &w.m.stops[i]
	return w.branches[i]|s.settled == 0 && !s.night && !s.required && !w.m.wander
}
