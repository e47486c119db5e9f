package demo

import (
	"maps"
	"math"
)

// emitServices puts each service of the table beside its road.
func (s *island) emitServices() {
	byName := map[string]pt{}
	for _, t := range s.towns {
		byName[t.name] = t.at
	}
	for _, v := range services {
		off := map[shape]float64{point: 0.04, area: 0.12, ring: 0.16}[v.shape]
		at := s.beside(byName[v.near].add(pt{v.dx, v.dy}), off)
		t := parseTags(v.tags)
		switch v.shape {
		case point:
			s.world.addNode(at, t)
		case area:
			s.world.addRing(plot(at, 0.05, s.rng.Float64()), t)
		case ring:
			outer := s.world.addRing(plot(at, 0.09, s.rng.Float64()), nil)
			inner := s.world.addRing(plot(at.add(pt{0.02, 0.01}), 0.025, 0), tags{"natural": "water"})
			all := maps.Clone(t)
			all["type"] = "multipolygon"
			s.world.addRelation([]member{{outer, "outer"}, {inner, "inner"}}, all)
		}
	}
}

// plot is a four-cornered ring around a point, anticlockwise.
func plot(at pt, half, turn float64) []pt {
	var out []pt
	for i := range 4 {
		a := (turn + float64(i)) * math.Pi / 2
		r := half * (1 + 0.25*float64(i%2))
		out = append(out, at.add(pt{r * math.Cos(a), r * math.Sin(a)}))
	}
	return out
}

// beside is a point on land, off the road nearest to p, on the side of p.
func (s *island) beside(p pt, offKm float64) pt {
	best, bestD := segment{}, math.Inf(1)
	const longest = 4 // km: no side of a road is longer
	for _, g := range s.roadSet {
		if math.Abs(g.a.x-p.x) > bestD+longest || math.Abs(g.a.y-p.y) > bestD+longest {
			continue
		}
		if g.class == motorway || g.class == trunk && g.a.dist(g.b) > 1 {
			continue
		}
		if d := offSide(p, g.a, g.b); d < bestD {
			best, bestD = g, d
		}
	}
	on := best.a.lerp(best.b, foot(p, best.a, best.b))
	out := best.b.sub(best.a).unit().left().mul(offKm)
	if out.x*(p.x-on.x)+out.y*(p.y-on.y) < 0 {
		out = out.mul(-1)
	}
	if at := on.add(out); s.onLand(at) {
		return at
	}
	return on.sub(out)
}
