package demo

import (
	"math"
	"math/rand/v2"
)

// This file draws the coasts: a hand-made outline, roughened by midpoint
// displacement (Fournier, Fussell, Carpenter, "Computer rendering of stochastic
// models", CACM 25(6), 1982).

// outline is the main island, anticlockwise: land lies left of a coastline in
// OpenStreetMap.
var outline = []pt{
	{-129, 4}, {-121, -8}, {-108, -15}, {-101, -27}, {-91, -35}, {-79, -40}, {-70, -47}, {-58, -46}, {-49, -40}, // south-west
	{-42, -31}, {-38, -21}, {-32, -18}, {-27, -22}, {-25, -33}, {-19, -45}, {-8, -52}, {6, -57}, {21, -57}, // the capital's bay
	{32, -54}, {41, -58}, {46, -65}, {49, -71}, {55, -74}, {60, -70}, {61, -63}, {57, -56}, {62, -48}, {76, -45}, {92, -43}, // the southern peninsula
	{107, -33}, {114, -22}, {124, -14}, {131, 1}, {125, 11}, {123, 21}, {112, 28}, {108, 39}, {94, 42}, {85, 50}, {73, 61}, {57, 65}, // east
	{43, 62}, {35, 55}, {28.5, 45}, {24.5, 34}, {21, 23}, {18.5, 23}, {20.5, 35}, {24.5, 46}, {26, 56}, {16, 58}, // the long inlet
	{4, 56}, {-12, 61}, {-27, 63}, {-41, 57}, {-52, 58}, {-65, 52}, {-80, 49}, {-92, 40}, // north
	{-101, 42}, {-112, 50}, {-122, 46}, {-121, 37}, {-111, 32}, {-103, 25}, {-106, 17}, {-118, 14}, // the north-western peninsula
}

// islets lie off the coast: middle and radius. The first has a ferry.
var islets = []struct {
	at     pt
	radius float64
}{
	{pt{-92, -55}, 7}, {pt{103, 55}, 5}, {pt{-137, 24}, 2.6}, {pt{72, -72}, 2.2}, {pt{-44, -52}, 1.8}, {pt{13, 66}, 2}, {pt{17, 68.5}, 1.1}, {pt{134, 18}, 1.5}, {pt{-100, 52}, 1.6},
}

// roughen returns the closed ring with every side broken until it is shorter
// than stepKm, each break pushed sideways by up to rough × its length: more on
// rocky shores, less where there are beaches.
func roughen(rng *rand.Rand, ring []pt, rough, stepKm float64) []pt {
	var out []pt
	var split func(a, b pt)
	split = func(a, b pt) {
		d := a.dist(b)
		if d < stepKm {
			out = append(out, a)
			return
		}
		push := (rng.Float64() + rng.Float64() - 1) * rough * d * (1 + 0.55*noise(a.x/31, a.y/31, 5))
		m := a.lerp(b, 0.5+0.16*(rng.Float64()-0.5)).add(b.sub(a).unit().left().mul(push))
		split(a, m)
		split(m, b)
	}
	for i, a := range ring {
		split(a, ring[(i+1)%len(ring)])
	}
	return untangle(out)
}

// untangle cuts the small loops out of a line in which a side crosses one of
// the next hundred.
func untangle(line []pt) []pt {
	var out []pt
	for i := 0; i < len(line); i++ {
		out = append(out, line[i])
		for j := min(i+100, len(line)-2); i+1 < len(line) && j > i+1; j-- {
			if f, _, ok := cross(line[i], line[i+1], line[j], line[j+1]); ok {
				out, i = append(out, line[i].lerp(line[i+1], f)), j
				break
			}
		}
	}
	return out
}

// blob is a round but uneven ring about a middle, anticlockwise.
func blob(rng *rand.Rand, at pt, rx, ry, turn float64) []pt {
	const corners, between = 7, 4
	var far [corners]float64
	for i := range far {
		far[i] = 0.75 + 0.45*rng.Float64()
	}
	var ring []pt
	for i := range corners * between {
		a := 2 * math.Pi * float64(i) / (corners * between)
		t := ease(float64(i%between) / between)
		f := far[i/between] + (far[(i/between+1)%corners]-far[i/between])*t
		x, y := rx*f*math.Cos(a), ry*f*math.Sin(a)
		ring = append(ring, pt{at.x + x*math.Cos(turn) - y*math.Sin(turn), at.y + x*math.Sin(turn) + y*math.Cos(turn)})
	}
	return ring
}

// A region answers quickly whether a point lies in a ring, and how far from
// its edge. Corners must lie closer together than a cell.
type region struct {
	ring  []pt
	rows  map[int][]int    // sides by row of 1 km
	cells map[[2]int][]int // corners by cell of 2 km
}

func newRegion(ring []pt) *region {
	r := &region{ring, map[int][]int{}, map[[2]int][]int{}}
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		for y := int(math.Floor(min(a.y, b.y))); y <= int(math.Floor(max(a.y, b.y))); y++ {
			r.rows[y] = append(r.rows[y], i)
		}
		c := cellOf(a)
		r.cells[c] = append(r.cells[c], i)
	}
	return r
}

func cellOf(p pt) [2]int { return [2]int{int(math.Floor(p.x / 2)), int(math.Floor(p.y / 2))} }

// contains counts the sides that a ray to the east crosses.
func (r *region) contains(p pt) bool {
	in := false
	for _, i := range r.rows[int(math.Floor(p.y))] {
		a, b := r.ring[i], r.ring[(i+1)%len(r.ring)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

// edgeKm is the distance to the nearest corner, at most 2 km.
func (r *region) edgeKm(p pt) float64 {
	best, c := 2.0, cellOf(p)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, i := range r.cells[[2]int{c[0] + dx, c[1] + dy}] {
				best = min(best, p.dist(r.ring[i]))
			}
		}
	}
	return best
}

// nearest is the index of the corner closest to p; O(corners).
func (r *region) nearest(p pt) int {
	best := 0
	for i, q := range r.ring {
		if p.dist(q) < p.dist(r.ring[best]) {
			best = i
		}
	}
	return best
}
