package geo

import (
	"math"
	"slices"

	"github.com/paulmach/orb"
	"github.com/tidwall/rtree"
)

// A Corridor finds where a line comes near a place. It is built once per line
// and may then be used by several goroutines at once.
type Corridor struct {
	verts []vec     // the line, cut into pieces of at most pieceM
	along []float64 // distance from the start to verts[i]; piece i ends at verts[i+1]
	runs  []run
	tree  rtree.RTreeG[int32] // boxes in degrees of runs

	min, max [2]float64 // of the boxes
}

// A run is a few pieces in a row, [first, last), within a ball.
type run struct {
	first, last int
	centre      vec
	radius      float64
}

// A stretch is a pass by its nearest point: the share of a piece, and the
// square of the chord from there to the place.
type stretch struct {
	piece       int
	share, off2 float64
}

// A Pass is one stretch of the line within some radius of a place.
type Pass struct {
	AlongM float64   // from the start of the line to the nearest point of the pass
	OffM   float64   // from the nearest point to the place, over the ground
	Point  orb.Point // the nearest point, on the line
}

const (
	// A chord lies below the ground by pieceM²/8R at most: 2 cm.
	pieceM = 1000
	// Pieces per box: measured with BenchmarkCorridor, 8 to 32 differ little.
	runPieces = 16
	// Added to boxes for what a chord may bulge out of the box of its ends.
	slackM = 3
)

// NewCorridor indexes the line. Cost O(n log n) for n the vertices plus the
// kilometres of the line; about 2 ms for 4,000.
func NewCorridor(l *Line) *Corridor {
	c := &Corridor{}
	points := c.cut(l)
	for first := 0; first < len(c.verts)-1; first += runPieces {
		last := min(first+runPieces, len(c.verts)-1)
		c.insert(first, last, points[first:last+1])
	}
	c.min, c.max = c.tree.Bounds()
	return c
}

// cut fills verts and along and returns the same points in degrees. Points
// within a nanometre of the one before add nothing to any pass: they are
// dropped, since a piece without length has no direction.
func (c *Corridor) cut(l *Line) orb.LineString {
	var points orb.LineString
	add := func(p orb.Point, along float64) {
		v, _ := centred(p)
		if n := len(c.verts); n > 0 {
			if d := v.sub(c.verts[n-1]); d.dot(d) < 1e-18 {
				return
			}
		}
		points = append(points, p)
		c.verts = append(c.verts, v)
		c.along = append(c.along, along)
	}
	add(l.points[0], 0)
	for i := 1; i < len(l.points); i++ {
		side := l.along[i] - l.along[i-1]
		for n, k := math.Ceil(side/pieceM), 1.0; k < n; k++ {
			add(toward(l.points[i-1], l.points[i], side*k/n), l.along[i-1]+side*k/n)
		}
		add(l.points[i], l.along[i])
	}
	return points
}

// insert adds the run of pieces [first, last) through the points to the tree.
func (c *Corridor) insert(first, last int, points orb.LineString) {
	lo, hi := [2]float64(points[0]), [2]float64(points[0])
	lon, polar := points[0][0], false
	for _, p := range points {
		// Follow the longitude across the antimeridian: the shorter way round.
		lon += math.Remainder(p[0]-lon, 360)
		lo[0], hi[0] = min(lo[0], lon), max(hi[0], lon)
		lo[1], hi[1] = min(lo[1], p[1]), max(hi[1], p[1])
		polar = polar || math.Abs(p[1]) > 89
	}
	if turn := 360 * math.Round((lo[0]+hi[0])/2/360); turn != 0 {
		lo[0], hi[0] = lo[0]-turn, hi[0]-turn
	}
	if polar { // near a pole longitudes say little
		lo[0], hi[0] = -180, 180
		if lo[1] > 0 {
			hi[1] = 90
		} else {
			lo[1] = -90
		}
	}
	r := run{first: first, last: last, centre: lerp(c.verts[first], c.verts[last], 0.5)}
	for _, v := range c.verts[first : last+1] {
		r.radius = max(r.radius, v.sub(r.centre).norm())
	}
	c.tree.Insert(lo, hi, int32(len(c.runs)))
	c.runs = append(c.runs, r)
}

// Passes returns every separate pass of the line within radiusM of p, in
// ascending AlongM.
//
// A pass is a maximal stretch of the line that stays within the radius,
// reported at its nearest point (the first of equals). A road driven out and
// back counts twice if the turn lies outside the radius; a hairpin within it
// is one pass. Nothing is within reach of a point or radius that is NaN or out
// of range, or of a radius below 0.
//
// Accuracy: OffM is within 5 cm of the geodesic up to 100 km, within 1 % of
// the excess of arc over chord beyond. Cost O(log n + pieces within reach).
func (c *Corridor) Passes(p orb.Point, radiusM float64) []Pass {
	if !valid(p) || !(radiusM >= 0) {
		return nil
	}
	// 1. The runs of pieces that may come near, in the order of the line.
	reach := c.reach(p, radiusM)
	if len(reach) == 0 {
		return nil
	}
	place, radius := centred(p)
	stretches := c.stretches(reach, place, groundToChord(radiusM, radius)) // 2. Those within the radius.
	if len(stretches) == 0 {
		return nil
	}

	// 3. Back to degrees and to distances over the ground.
	passes := make([]Pass, len(stretches))
	for k, s := range stretches {
		passes[k] = Pass{
			AlongM: c.along[s.piece] + s.share*(c.along[s.piece+1]-c.along[s.piece]),
			OffM:   chordToGround(math.Sqrt(s.off2), radius),
			Point:  geodetic(lerp(c.verts[s.piece], c.verts[s.piece+1], s.share)),
		}
	}
	return passes
}

// stretches are the pieces within a chord of a place, as far as they hang together: pieces are parts of one if the vertex
// between them is within it too. near are the runs that may come near, in the order of the line.
func (c *Corridor) stretches(near []int32, place vec, chord float64) (list []stretch) {
	chord2 := chord * chord
	join := -1 // the piece that would carry on the last pass
	for _, k := range near {
		r := &c.runs[k]
		off := place.sub(r.centre).norm()
		if off-r.radius > chord {
			continue
		}
		// A run that lies all within the radius and nowhere nearer carries on.
		if last := len(list) - 1; r.first == join && off+r.radius < chord && off-r.radius > math.Sqrt(list[last].off2) {
			join = r.last
			continue
		}
		for i := r.first; i < r.last; i++ {
			t, off2 := nearest(place, c.verts[i], c.verts[i+1])
			if off2 > chord2 {
				continue
			}
			if last := len(list) - 1; i != join {
				list = append(list, stretch{i, t, off2})
			} else if off2 < list[last].off2 {
				list[last] = stretch{i, t, off2}
			}
			if end := place.sub(c.verts[i+1]); end.dot(end) <= chord2 {
				join = i + 1
			}
		}
	}
	return list
}

// reach returns the runs whose boxes come within radiusM of p, in ascending
// order.
func (c *Corridor) reach(p orb.Point, radiusM float64) []int32 {
	const degree = 180 / math.Pi
	// At most this angle: both radii of curvature are leastRadius or more. The
	// half per cent is for radii so large that arcs from chords are coarse.
	angle := (radiusM*1.005 + slackM) / leastRadius
	lat := angle * degree
	if p[1]+lat < c.min[1] || p[1]-lat > c.max[1] {
		return nil
	}
	var found []int32
	collect := func(_, _ [2]float64, k int32) bool { found = append(found, k); return true }
	if math.Abs(p[1])+lat >= 89.9 {
		c.tree.Search([2]float64{-540, p[1] - lat}, [2]float64{540, p[1] + lat}, collect)
	} else {
		// The largest difference of longitude within a circle on a sphere.
		lon := math.Asin(math.Min(1, math.Sin(angle)/math.Cos(p[1]/degree))) * degree
		// Boxes lie around [-180, 180] and may stick out: look once per turn.
		at := math.Remainder(p[0], 360)
		for _, x := range [...]float64{at, at - 360, at + 360} {
			if x+lon >= c.min[0] && x-lon <= c.max[0] {
				c.tree.Search([2]float64{x - lon, p[1] - lat}, [2]float64{x + lon, p[1] + lat}, collect)
			}
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// nearest returns the share of the way from a to b, two different points, at
// which the chord comes nearest to p, and the square of how near.
func nearest(p, a, b vec) (t, off2 float64) {
	ab, ap, bp := b.sub(a), p.sub(a), p.sub(b)
	t = ap.dot(ab) / ab.dot(ab)
	switch {
	case t <= 0:
		return 0, ap.dot(ap)
	case t >= 1:
		return 1, bp.dot(bp)
	}
	d := p.sub(lerp(a, b, t))
	return t, min(d.dot(d), ap.dot(ap), bp.dot(bp)) // rounding: no farther than an end
}
