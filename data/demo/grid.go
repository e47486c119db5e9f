package demo

import (
	"container/heap"
	"math"
	"math/rand/v2"
	"slices"
)

// This file finds the ways of roads and rivers over the land: paths on a grid
// whose corners are jittered, so that nothing runs straight along it.

const (
	gridKm   = 1.4
	gridCols = 190
	gridRows = 102
	directs  = 8
)

// offsets are the eight neighbours; direction d and d^4 … (d+4)%8 are opposite.
var offsets = [directs][2]int{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}}

// A grid holds the corners at which roads may bend.
type grid struct {
	at     []pt
	height []float64
	land   []bool    // fit for a road
	extra  []float64 // factor of cost, ≥ 1: near the coast or beside a river
	marks  []mark    // what searches leave behind
	round  int32     // of searches so far
}

// A mark is what one search knows of a corner; older rounds count as unseen.
type mark struct {
	round  int32
	closed bool
	cost   float32
	prev   int32
}

func index(col, row int) int { return row*gridCols + col }

// newGrid covers the main island; blocked says where no road can be.
func newGrid(rng *rand.Rand, shore *region, blocked func(pt) bool) *grid {
	n := gridCols * gridRows
	g := &grid{at: make([]pt, n), height: make([]float64, n), land: make([]bool, n), extra: make([]float64, n), marks: make([]mark, n)}
	for row := range gridRows {
		for col := range gridCols {
			i := index(col, row)
			p := pt{(float64(col)-gridCols/2+0.5)*gridKm + 0.8*gridKm*(rng.Float64()-0.5), (float64(row)-gridRows/2+0.5)*gridKm + 0.8*gridKm*(rng.Float64()-0.5)}
			g.at[i], g.extra[i] = p, 1
			if !shore.contains(p) || blocked(p) {
				continue
			}
			if d := shore.edgeKm(p); d > 0.8 {
				g.land[i], g.height[i] = true, heightAt(p)
				if d < 1.6 {
					g.extra[i] = 1.3
				}
			}
		}
	}
	return g
}

// neighbour is the corner next to i in direction d, or −1.
func neighbour(i, d int) int {
	col, row := i%gridCols+offsets[d][0], i/gridCols+offsets[d][1]
	if col < 0 || row < 0 || col >= gridCols || row >= gridRows {
		return -1
	}
	return index(col, row)
}

// nearest is the corner closest to p among those that fit.
func (g *grid) nearest(p pt, fits func(i int) bool) int {
	best, bestD := -1, math.Inf(1)
	for i, q := range g.at {
		if d := p.dist(q); d < bestD && fits(i) {
			best, bestD = i, d
		}
	}
	return best
}

// around is the corner closest to p of those in the grid squares about it:
// quicker than nearest.
func (g *grid) around(p pt) int {
	col, row := int(p.x/gridKm+gridCols/2-0.5), int(p.y/gridKm+gridRows/2-0.5)
	best := index(max(0, min(gridCols-1, col)), max(0, min(gridRows-1, row)))
	for dc := -1; dc <= 2; dc++ {
		for dr := -1; dr <= 2; dr++ {
			c, r := col+dc, row+dr
			if c < 0 || r < 0 || c >= gridCols || r >= gridRows {
				continue
			}
			if i := index(c, r); g.at[i].dist(p) < g.at[best].dist(p) {
				best = i
			}
		}
	}
	return best
}

// A search is one path to find: cost of a step (negative: not allowed), the
// least cost of a km, and where it ends.
type search struct {
	from  int
	step  func(from, dir, to int) float64
	perKm float64 // for the estimate of what is left; with no goal 0
	goal  pt
	done  func(i int) bool
}

// path is A* (Hart, Nilsson, Raphael 1968) over the grid; nil if there is none.
func (g *grid) path(s search) []int {
	g.round++
	g.marks[s.from] = mark{round: g.round, prev: -1}
	q := &queue{{s.from, 0}}
	for q.Len() > 0 {
		at := heap.Pop(q).(item).at
		m := &g.marks[at]
		if m.closed {
			continue
		}
		m.closed = true
		if s.done(at) {
			return g.unwind(at)
		}
		for d := range directs {
			to := neighbour(at, d)
			if to < 0 || !g.land[to] {
				continue
			}
			next := &g.marks[to]
			seen := next.round == g.round
			if seen && next.closed {
				continue
			}
			c := s.step(at, d, to)
			if c < 0 {
				continue
			}
			if c += float64(m.cost); !seen || float32(c) < next.cost {
				*next = mark{round: g.round, cost: float32(c), prev: int32(at)}
				heap.Push(q, item{to, c + s.perKm*g.at[to].dist(s.goal)})
			}
		}
	}
	return nil
}

// unwind is the path of the last search to a corner.
func (g *grid) unwind(at int) []int {
	var out []int
	for i := int32(at); i >= 0; i = g.marks[i].prev {
		out = append(out, int(i))
	}
	slices.Reverse(out)
	return out
}

type item struct {
	at   int
	cost float64
}

type queue []item

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	return q[i].cost < q[j].cost || q[i].cost == q[j].cost && q[i].at < q[j].at
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(item)) }
func (q *queue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}
