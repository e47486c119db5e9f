package order

// This file finds the least cut between the first and the last states of a cell, by Dinic's maximum flow with capacity one each
// way (E. A. Dinic, Soviet Math. Doklady 11, 1970).

// fixedShare of a cell is on either side for certain. Schild and Sommer use 0.25; a little more is faster.
const fixedShare = 0.3

// A dissection is the scratch memory of the order.
type dissection struct {
	g    Graph
	back []uint32 // slot in g.head → the slot of the same edge from the other end
	at   []Place
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

func newDissection(g Graph, at []Place) *dissection {
	states := len(at)
	d := &dissection{g: g, back: make([]uint32, len(g.Head)), at: at,
		list: make([]uint32, states), cell: make([]uint32, states), side: make([]uint8, states), best: make([]uint8, states),
		level: make([]int32, states), next: make([]uint32, states), flow: make([]int8, len(g.Head)), keys: make([]int64, states)}
	for s := range at {
		d.list[s] = uint32(s)
	}
	// Neighbours are ascending, so the way back is found by walking along.
	fill := make([]uint32, states)
	copy(fill, g.First[:states])
	for s := range at {
		for i := g.First[s]; i < g.First[s+1]; i++ {
			t := g.Head[i]
			d.back[i] = fill[t]
			fill[t]++
		}
	}
	return d
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
		clear(d.flow[d.g.First[s]:d.g.First[s+1]])
	}
	total := 0
	for d.reach(cell, fixed) {
		for _, s := range cell {
			d.next[s] = d.g.First[s]
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
		for e := d.g.First[s]; e < d.g.First[s+1]; e++ {
			t := d.g.Head[e]
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
		if e == d.g.First[s+1] {
			if len(d.path) == 0 {
				return false
			}
			last := d.path[len(d.path)-1]
			d.path = d.path[:len(d.path)-1]
			s = d.g.Head[d.back[last]]
			d.next[s]++
			continue
		}
		t := d.g.Head[e]
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
		for e := d.g.First[s]; e < d.g.First[s+1]; e++ {
			if t := d.g.Head[e]; d.cell[t] == d.id && (d.level[t] >= 0) != in {
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
