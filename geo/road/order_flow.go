package road

import "math"

// This file finds the few states that part a cell in two: the least cut between its first and its last states in one of four
// directions (Schild and Sommer 2015), by Dinic's maximum flow with capacity one each way (E. A. Dinic, Soviet Math. Doklady
// 11, 1970).

// fixedShare of a cell is on either side for certain. Schild and Sommer use 0.25; a little more is faster.
const fixedShare = 0.3

// A dissection is the scratch memory of the order.
type dissection struct {
	g    graph
	back []uint32 // slot in g.head → the slot of the same edge from the other end
	x, y []int32  // by state, on the same scale
	list []uint32 // the order so far
	cell []uint32 // by state: number of the cell that it is in
	id   uint32   // of the current cell

	side  []uint8 // by state: source, sink or 0
	best  []uint8 // by state: 1 if on the source's side of the best cut
	level []int32
	next  []uint32 // by state: slot to try next
	flow  []int8   // by slot: 1 if it carries flow away from its state, -1 if toward it
	queue []uint32
	path  []uint32
	keys  []int64
}

const (
	source = 1
	sink   = 2
)

func newDissection(g graph, at []spot) *dissection {
	states := len(at)
	d := &dissection{g: g, back: make([]uint32, len(g.head)), x: make([]int32, states), y: make([]int32, states),
		list: make([]uint32, states), cell: make([]uint32, states), side: make([]uint8, states), best: make([]uint8, states),
		level: make([]int32, states), next: make([]uint32, states), flow: make([]int8, len(g.head)), keys: make([]int64, states)}
	sum := 0.0
	for _, p := range at {
		sum += float64(p.lat) / 1e7
	}
	squeeze := math.Cos(sum / float64(max(1, states)) * math.Pi / 180)
	for s, p := range at {
		d.list[s] = uint32(s)
		d.x[s], d.y[s] = int32(float64(p.lon)/2*squeeze), p.lat/2
	}
	// Neighbours are ascending, so the way back is found by walking along.
	fill := make([]uint32, states)
	copy(fill, g.first[:states])
	for s := range at {
		for i := g.first[s]; i < g.first[s+1]; i++ {
			t := g.head[i]
			d.back[i] = fill[t]
			fill[t]++
		}
	}
	return d
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
	for i := d.g.first[s]; i < d.g.first[s+1]; i++ {
		if t := d.g.head[i]; d.cell[t] == d.id && d.best[t] != d.best[s] {
			return true
		}
	}
	return false
}

// sortEnds moves the first states in a direction to the front of the cell and the last to its end.
func (d *dissection) sortEnds(cell []uint32, direction, fixed int) {
	for _, s := range cell {
		x, y := int64(d.x[s]), int64(d.y[s])
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

// maxFlow fills d.level with the reach of the sources when no more flow is possible; false if the flow reaches limit.
func (d *dissection) maxFlow(cell []uint32, fixed, limit int) bool {
	for i, s := range cell {
		d.side[s] = 0
		if i < fixed {
			d.side[s] = source
		} else if i >= len(cell)-fixed {
			d.side[s] = sink
		}
		clear(d.flow[d.g.first[s]:d.g.first[s+1]])
	}
	total := 0
	for d.reach(cell, fixed) {
		for _, s := range cell {
			d.next[s] = d.g.first[s]
		}
		for _, s := range cell[:fixed] {
			for d.augment(s) {
				if total++; total >= limit {
					return false
				}
			}
		}
	}
	return true
}

// reach numbers the states by their distance from the sources, -1 if not reached, and says whether a sink is.
func (d *dissection) reach(cell []uint32, fixed int) (hit bool) {
	for i, s := range cell {
		d.level[s] = -1
		if i < fixed {
			d.level[s] = 0
		}
	}
	d.queue = append(d.queue[:0], cell[:fixed]...)
	for i := 0; i < len(d.queue); i++ {
		s := d.queue[i]
		for e := d.g.first[s]; e < d.g.first[s+1]; e++ {
			t := d.g.head[e]
			if d.cell[t] != d.id || d.level[t] >= 0 || d.flow[e] == 1 {
				continue
			}
			d.level[t] = d.level[s] + 1
			if d.side[t] == sink {
				hit = true
				continue
			}
			d.queue = append(d.queue, t)
		}
	}
	return hit
}

// augment sends one unit from a source along ascending levels.
func (d *dissection) augment(s uint32) bool {
	d.path = d.path[:0]
	for {
		e := d.next[s]
		if e == d.g.first[s+1] {
			if len(d.path) == 0 {
				return false
			}
			last := d.path[len(d.path)-1]
			d.path = d.path[:len(d.path)-1]
			s = d.g.head[d.back[last]]
			d.next[s]++
			continue
		}
		t := d.g.head[e]
		if d.cell[t] != d.id || d.flow[e] == 1 || d.level[t] != d.level[s]+1 {
			d.next[s]++
			continue
		}
		d.path = append(d.path, e)
		if d.side[t] == sink {
			for _, e := range d.path {
				d.flow[e]++
				d.flow[d.back[e]]--
			}
			return true
		}
		s = t
	}
}

// cut counts the states beside the cut on the side where they are fewer, and the states of the smaller part.
func (d *dissection) cut(cell []uint32) (between int, nearSource bool, smaller int) {
	count := [2]int{} // beside the cut: far side, near side
	near := 0
	for _, s := range cell {
		in := d.level[s] >= 0
		if in {
			near++
		}
		for e := d.g.first[s]; e < d.g.first[s+1]; e++ {
			if t := d.g.head[e]; d.cell[t] == d.id && (d.level[t] >= 0) != in {
				if in {
					count[1]++
				} else {
					count[0]++
				}
				break
			}
		}
	}
	smaller = min(near, len(cell)-near)
	if count[1] <= count[0] {
		return count[1], true, smaller
	}
	return count[0], false, smaller
}
