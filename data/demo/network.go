package demo

import "slices"

// This file decides which corners of the grid the roads join.

// A class is how much a road is; higher is greater. 0 is no road.
type class uint8

const (
	noRoad class = iota
	tertiary
	secondary
	primary
	trunk
	motorway
)

var classNames = [...]string{"", "tertiary", "secondary", "primary", "trunk", "motorway"}

// A network is the roads on the grid.
type network struct {
	*grid
	roads [][directs]class // by corner and direction, both ways alike
	isOn  []bool           // corner has a road
	stops []bool           // corner where a motorway may be joined
}

func newNetwork(g *grid) *network {
	n := len(g.at)
	return &network{g, make([][directs]class, n), make([]bool, n), make([]bool, n)}
}

// join builds the cheapest road of a class between two corners.
func (n *network) join(a, b int, c class) {
	n.build(n.path(search{a, n.cost(c), reuse[c], n.at[b], func(i int) bool { return i == b }}), c)
}

// connect builds a road from a corner to the cheapest point of the network.
func (n *network) connect(a int, c class) {
	n.build(n.path(search{a, n.cost(c), 0, pt{}, func(i int) bool { return i != a && n.isOn[i] && !n.onMotorway(i) }}), c)
}

func (n *network) build(path []int, c class) {
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		d := direction(a, b)
		n.roads[a][d] = max(n.roads[a][d], c)
		n.roads[b][(d+4)%directs] = max(n.roads[b][(d+4)%directs], c)
		n.isOn[a], n.isOn[b] = true, true
	}
}

func direction(a, b int) int {
	return slices.IndexFunc(offsets[:], func(o [2]int) bool { return b == a+o[0]+o[1]*gridCols })
}

// reuse is what a km on a road that is there counts as, beside a new one:
// great roads take over lesser ones, lesser ones make a network.
var reuse = [...]float64{0, 0.8, 0.8, 0.6, 0.6, 0.6}

// cost of a step for a road of class c: length, steepness, and what is there.
func (n *network) cost(c class) func(a, d, b int) float64 {
	return func(a, d, b int) float64 {
		there := n.roads[a][d]
		if there == motorway && c != motorway {
			return -1 // a motorway is not shared
		}
		l := n.at[a].dist(n.at[b])
		if there != noRoad {
			return l * reuse[c]
		}
		if d%2 == 1 { // a diagonal may not cross the other one
			side := neighbour(a, (d+1)%directs)
			if n.roads[side][(d+6)%directs] != noRoad {
				return -1
			}
		}
		slope := (n.height[a] - n.height[b]) / (l * 1000)
		bend := 1 + 500*slope*slope // a slope of 4.5 % counts double
		cost := l * bend * (n.extra[a] + n.extra[b]) / 2
		if n.isOn[b] && n.onMotorway(b) && !n.stops[b] {
			if c == motorway {
				return -1
			}
			cost += 6 // a junction with a motorway is seldom built
		}
		return cost
	}
}

func (n *network) onMotorway(i int) bool {
	return slices.Contains(n.roads[i][:], motorway)
}

// degree is how many roads leave a corner.
func (n *network) degree(i int) int {
	k := 0
	for _, c := range n.roads[i] {
		if c != noRoad {
			k++
		}
	}
	return k
}

// A chain is a road between two corners where something else begins.
type chain struct {
	corners []int
	class   class
}

// chains takes the network apart; ends are corners where a chain must end.
func (n *network) chains(ends map[int]bool) (out []chain) {
	for i := range n.at {
		if !n.isOn[i] || !ends[i] && n.goesOn(i) {
			continue
		}
		for d, c := range n.roads[i] {
			if c == noRoad {
				continue
			}
			line := n.follow(i, d, ends)
			if last := line[len(line)-1]; i < last || i == last && line[1] <= line[len(line)-2] {
				out = append(out, chain{line, c})
			}
		}
	}
	return out
}

// goesOn says that two roads of one class meet at a corner, and nothing else.
func (n *network) goesOn(i int) bool {
	if n.degree(i) != 2 {
		return false
	}
	var seen class
	for _, c := range n.roads[i] {
		if c != noRoad && seen != noRoad && c != seen {
			return false
		}
		seen = max(seen, c)
	}
	return true
}

// follow goes from a corner in a direction to where the chain ends.
func (n *network) follow(at, dir int, ends map[int]bool) []int {
	line := []int{at}
	for {
		at = neighbour(at, dir)
		line = append(line, at)
		if ends[at] || !n.goesOn(at) {
			return line
		}
		back := (dir + 4) % directs
		for e, c := range n.roads[at] {
			if c != noRoad && e != back {
				dir = e
				break
			}
		}
	}
}
