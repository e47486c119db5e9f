package bound

import (
	"math"

	"ullage/planner/internal/model"
)

// This file computes with functions made of straight pieces, not necessarily
// continuous: +Inf before the first piece, each piece up to the next one's
// start, the last one without end.

type piece struct{ x, y, slope float64 }

type pieces []piece

// at is the value at x.
func (f pieces) at(x float64) float64 {
	k := f.find(x)
	if k < 0 {
		return math.Inf(1)
	}
	return f[k].y + f[k].slope*(x-f[k].x)
}

// find is the index of the piece that x lies on, −1 before the first.
func (f pieces) find(x float64) int {
	lo, hi := 0, len(f)
	for lo < hi {
		mid := (lo + hi) / 2
		if f[mid].x <= x {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo - 1
}

// meet is the least over x of before(−x) + after(x), of functions that never
// rise, with slack in x.
func meet(before, after pieces) float64 {
	best := math.Inf(1)
	for _, p := range before {
		best = model.Lesser(best, p.y+after.at(model.Slack-p.x))
	}
	for _, p := range after {
		best = model.Lesser(best, p.y+before.at(model.Slack-p.x))
	}
	return best
}

// put appends a piece, joining it to the last one where they are in line.
func (f pieces) put(x, y, slope float64) pieces {
	if n := len(f); n > 0 {
		l := f[n-1]
		if x <= l.x {
			f[n-1] = piece{x, y, slope}
			return f
		}
		if l.slope == slope && math.Abs(l.y+l.slope*(x-l.x)-y) <= 1e-12*(1+math.Abs(y)) {
			return f
		}
	}
	return append(f, piece{x, y, slope})
}

// lower appends the lower envelope of f and g to into.
func lower(into, f, g pieces) pieces {
	i, j := -1, -1
	x := math.Inf(1)
	if len(f) > 0 {
		x = f[0].x
	}
	if len(g) > 0 {
		x = min(x, g[0].x)
	}
	for !math.IsInf(x, 1) {
		for i+1 < len(f) && f[i+1].x <= x {
			i++
		}
		for j+1 < len(g) && g[j+1].x <= x {
			j++
		}
		end := math.Inf(1)
		if i+1 < len(f) {
			end = f[i+1].x
		}
		if j+1 < len(g) {
			end = model.Lesser(end, g[j+1].x)
		}
		switch {
		case j < 0:
			into = into.put(x, f[i].y+f[i].slope*(x-f[i].x), f[i].slope)
		case i < 0:
			into = into.put(x, g[j].y+g[j].slope*(x-g[j].x), g[j].slope)
		default:
			a, b := f[i], g[j]
			ya, yb := a.y+a.slope*(x-a.x), b.y+b.slope*(x-b.x)
			if yb < ya || yb == ya && b.slope < a.slope {
				a, b, ya, yb = b, a, yb, ya
			}
			into = into.put(x, ya, a.slope)
			if a.slope > b.slope {
				if cross := x + (yb-ya)/(a.slope-b.slope); cross < end && cross > x {
					into = into.put(cross, b.y+b.slope*(cross-b.x), b.slope)
				}
			}
		}
		x = end
	}
	return into
}

// cheapest appends to into the function min over z in [x, top] of price·z + f(z),
// for x in [from, top].
func cheapest(into, f pieces, price, from, top float64) pieces {
	first := len(into)
	best := math.Inf(1)
	end := top
	for k := f.find(top); k >= 0; k-- {
		a, slope := f[k].x, f[k].slope+price
		ya := f[k].y + price*a
		yb := ya + slope*(end-a)
		switch {
		case slope <= 0 || ya >= best:
			if slope <= 0 {
				best = model.Lesser(best, yb)
			}
			into = append(into, piece{a, best, 0})
		case yb <= best:
			into = append(into, piece{a, ya, slope})
			best = ya
		default:
			into = append(into, piece{a + (best-ya)/slope, best, 0}, piece{a, ya, slope})
			best = ya
		}
		end = a
	}
	if from < end && !math.IsInf(best, 1) {
		into = append(into, piece{from, best, 0})
	}
	for i, j := first, len(into)-1; i < j; i, j = i+1, j-1 {
		into[i], into[j] = into[j], into[i]
	}
	return into
}

// fewer is f with at most so many pieces, nowhere more than f and never less than
// what it falls to, for a function that never rises. Of two pieces in a row one is
// made, up to the point where the second ends and below both.
func (f pieces) fewer(most int) pieces {
	if len(f) <= most {
		return f
	}
	kept := f[:0]
	for k := 0; k < len(f); k++ {
		a := f[k]
		if k+2 < len(f) { // the last piece has no end
			b, end := f[k+1], f[k+2].x
			y := b.y + b.slope*(end-b.x)
			slope := model.Greater((a.y-y)/(a.x-end), (b.y-y)/(b.x-end))
			slope = model.Lesser(0, model.Greater(slope, (a.y+a.slope*(b.x-a.x)-y)/(b.x-end)))
			a, k = piece{a.x, y + slope*(a.x-end), slope}, k+1
		}
		kept = append(kept, a)
	}
	return kept.fewer(most)
}
