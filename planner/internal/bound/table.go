package bound

import (
	"slices"

	"ullage/planner/internal/model"
)

// This file keeps tables with very many classes of one tank. A tank that
// driving restores needs them, for a little charge here and there adds up, and
// every one of them is rounded up. But what it costs to go on has only a few
// steps along such a scale: kept is where it changes.

// A packing is how tables are packed.
type packing struct {
	stride, n int // of the scale with many classes
	rooms     [2][]float64
	turn      int // which room is next
	runs      store[run]
	starts    store[int32]
}

// A run of classes has one cost, up to the next run.
type run struct {
	class int
	cost  float64
}

// room is for the next table before it is packed: the one after it is still wanted.
func (p *packing) room(n int) []float64 {
	p.turn = 1 - p.turn
	return scratch(&p.rooms[p.turn], n)
}

// pack replaces the costs of a table by runs, by other classes and row.
func (p *packing) pack(t *nightTable) {
	if t.packing != nil {
		return
	}
	rows := len(t.reach)
	block := p.stride * rows // other classes below the scale, and rows
	cells := len(t.cost) / p.n
	starts := p.starts.take(cells + 1)
	clear(starts)
	for cell := 0; cell < cells; cell += block {
		costs := t.cost[cell*p.n : (cell+block)*p.n]
		counts := starts[cell+1 : cell+1+block]
		for k := range counts {
			counts[k] = 1
		}
		for c := block; c < len(costs); c += block {
			now, before := costs[c:c+block], costs[c-block:c]
			for k, x := range now {
				if x != before[k] {
					counts[k]++
				}
			}
		}
	}
	for k := 1; k < len(starts); k++ {
		starts[k] += starts[k-1]
	}
	runs := p.runs.take(int(starts[cells]))
	for cell := 0; cell < cells; cell += block {
		costs := t.cost[cell*p.n : (cell+block)*p.n]
		next := starts[cell : cell+block] // moved along, and put back below
		for k, x := range costs[:block] {
			runs[next[k]] = run{0, x}
			next[k]++
		}
		for c := block; c < len(costs); c += block {
			now, before := costs[c:c+block], costs[c-block:c]
			for k, x := range now {
				if x != before[k] {
					runs[next[k]] = run{c / block, x}
					next[k]++
				}
			}
		}
	}
	copy(starts[1:], starts[:cells])
	starts[0] = 0
	t.packing, t.starts, t.runs, t.cost = p, starts, runs, nil
}

// done packs a table that is there and done with, if tables are packed.
func (p *packing) done(t *nightTable) {
	if p != nil && t != nil {
		p.pack(t)
	}
}

// at is the cost in a class and row.
func (t *nightTable) at(class, row int) float64 {
	if t.packing == nil {
		return t.cost[class*len(t.reach)+row]
	}
	return t.unpacked(class, row)
}

func (t *nightTable) unpacked(class, row int) float64 {
	p := t.packing
	c := class / p.stride % p.n
	cell := (class/(p.stride*p.n)*p.stride+class%p.stride)*len(t.reach) + row
	runs := t.runs[t.starts[cell]:t.starts[cell+1]]
	lo, hi := 0, len(runs)
	for lo < hi {
		mid := (lo + hi) / 2
		if runs[mid].class <= c {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return runs[lo-1].cost
}

type nightTable struct {
	reach   []float64 // km along the route, half detour included
	reachAt []float64 // minutes likewise; the least of this and all later rows
	rowAt   []float64 // minutes likewise, of this row
	cost    []float64 // class by class, in each all rows

	packing *packing // nil: not packed
	starts  []int32
	runs    []run
}

// find is the last row in reach, −1 if none is.
func (t *nightTable) find(km, at float64) int {
	lo, hi := 0, len(t.reach)
	for lo < hi {
		mid := (lo + hi) / 2
		if t.reach[mid] <= km+model.Slack && t.reachAt[mid] <= at+model.Slack {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo - 1
}

// best gives every row the best of those before it.
func (t *nightTable) best() {
	n := len(t.reach)
	for from := 0; from < len(t.cost); from += n {
		row := t.cost[from : from+n]
		for r := 1; r < n; r++ {
			row[r] = model.Lesser(row[r], row[r-1])
		}
	}
}

// settle finds, by row, the least minutes of it and all later ones.
func (t *nightTable) settle() {
	n := len(t.reach)
	t.reachAt = slices.Clone(t.rowAt)
	for r := n - 2; r >= 0; r-- {
		t.reachAt[r] = model.Lesser(t.reachAt[r], t.reachAt[r+1])
	}
}
