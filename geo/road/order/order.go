package order

import (
	"context"
	"math"
)

// This file orders states by nested dissection: a few states that part the rest in two come last, and so on within the parts.

// smallCell is the number of states below which the order no longer matters much.
const smallCell = 3

// nestedOrder returns the rank of each state. at gives their positions.
func Nested(ctx context.Context, g Graph, at []Place) ([]uint32, error) {
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

// split orders list[lo:hi] into one part [lo,a), another [a,b), and what lies between them [b,hi).
func (d *dissection) split(lo, hi int) (a, b int) {
	cell := d.list[lo:hi]
	d.id++
	for _, s := range cell {
		d.cell[s] = d.id
	}
	fixed := max(1, int(fixedShare*float64(len(cell))))
	least, balance, nearSource := math.MaxInt, 0, false
	for direction := range 4 {
		d.sortEnds(cell, direction, fixed)
		if !d.maxFlow(cell, fixed, least) {
			continue
		}
		between, near, smaller := d.cut(cell)
		if between < least || between == least && smaller > balance {
			least, balance, nearSource = between, smaller, near
			for _, s := range cell {
				d.best[s] = 0
				if d.level[s] >= 0 {
					d.best[s] = 1
				}
			}
		}
	}
	// Part by part; what lies between is taken from the side where it is less.
	var parts [3][]uint32
	for _, s := range cell {
		k := 1 - int(d.best[s])
		if (d.best[s] == 1) == nearSource && d.crosses(s) {
			k = 2
		}
		parts[k] = append(parts[k], s)
	}
	at := lo
	for _, p := range parts {
		at += copy(d.list[at:], p)
	}
	return lo + len(parts[0]), lo + len(parts[0]) + len(parts[1])
}

// crosses says that a neighbour in the cell is on the other side of the best cut.
func (d *dissection) crosses(s uint32) bool {
	for i := d.g.First[s]; i < d.g.First[s+1]; i++ {
		if t := d.g.Head[i]; d.cell[t] == d.id && d.best[t] != d.best[s] {
			return true
		}
	}
	return false
}

// sortEnds moves the first states in a direction to the front of the cell and the last to its end.
func (d *dissection) sortEnds(cell []uint32, direction, fixed int) {
	for _, s := range cell {
		x, y := int64(d.at[s].X), int64(d.at[s].Y)
		// The state breaks ties, so that equal positions have one order.
		d.keys[s] = [...]int64{x, y, x + y, x - y}[direction]<<30 ^ int64(s)
	}
	d.quickSelect(cell, fixed)
	d.quickSelect(cell[fixed:], len(cell)-2*fixed)
}

// quickSelect puts the k states with the least keys first.
func (d *dissection) quickSelect(cell []uint32, k int) {
	lo, hi := 0, len(cell)-1
	for lo < hi {
		pivot := d.keys[cell[(lo+hi)/2]]
		i, j := lo, hi
		for i <= j {
			for d.keys[cell[i]] < pivot {
				i++
			}
			for d.keys[cell[j]] > pivot {
				j--
			}
			if i <= j {
				cell[i], cell[j] = cell[j], cell[i]
				i++
				j--
			}
		}
		switch {
		case k-1 <= j:
			hi = j
		case k-1 >= i:
			lo = i
		default:
			return
		}
	}
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

func (d *dissection) degree(s uint32) uint32 { return d.g.First[s+1] - d.g.First[s] }
