package road

import (
	"context"
)

// This file orders states by nested dissection: a few states that part the rest in two come last, and so on within the parts.

// A graph lists neighbours: those of s are head[first[s]:first[s+1]].
type graph struct{ first, head []uint32 }

// smallCell is the number of states below which the order no longer matters much.
const smallCell = 3

// nestedOrder returns the rank of each state. at gives their positions.
func nestedOrder(ctx context.Context, g graph, at []spot) ([]uint32, error) {
	d := newDissection(g, at)
	rank := make([]uint32, len(at))
	type task struct {
		lo, hi int
	}
	// The states between lo and hi of d.list get the ranks lo to hi-1.
	stack := []task{{0, len(at)}}
	for len(stack) > 0 {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		t := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if t.hi-t.lo <= smallCell {
			d.finish(t.lo, t.hi)
			continue
		}
		a, b := d.split(t.lo, t.hi) // [lo,a) one part, [a,b) the other, [b,hi) between
		stack = append(stack, task{t.lo, a}, task{a, b})
	}
	for r, s := range d.list {
		rank[s] = uint32(r)
	}
	return rank, nil
}

// finish orders a small cell: few neighbours first.
func (d *dissection) finish(lo, hi int) {
	cell := d.list[lo:hi]
	for i := range cell {
		for k := i; k > 0 && d.degree(cell[k]) < d.degree(cell[k-1]); k-- {
			cell[k], cell[k-1] = cell[k-1], cell[k]
		}
	}
}

func (d *dissection) degree(s uint32) uint32 { return d.g.first[s+1] - d.g.first[s] }
