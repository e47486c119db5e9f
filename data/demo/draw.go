package demo

import (
	"math"
	"slices"
)

// A hindrance is put on the road of some classes that is nearest to a position, over some km.
type hindrance struct {
	at      pt
	classes []class
	km      float64
	tags    tags
}

var hindrances = []hindrance{
	{pt{-66, -33}, []class{secondary, tertiary}, 0.05, tags{"maxheight": "2.7", "covered": "yes"}},
	{pt{28, -46}, []class{tertiary, secondary}, 0.06, tags{"maxheight": "2.7"}},
	{pt{-64, 8}, []class{secondary, tertiary}, 4, tags{"maxwidth": "2.1", "narrow": "yes", "maxspeed": "30"}},
	{pt{60, 20}, []class{secondary, tertiary}, 3, tags{"maxweight": "3.0"}},
}

// emitRoads draws the network and writes it.
func (s *island) emitRoads() {
	ends := map[int]bool{}
	for _, i := range s.corner {
		ends[i] = true
	}
	s.roads = s.net.draw(ends)
	s.bore()
	for k := range s.roads {
		r := &s.roads[k]
		r.addBridges(s.rivers)
		r.slowThrough(s.towns)
	}
	for _, h := range hindrances {
		s.hinder(h)
	}
	for _, r := range s.roads {
		for _, i := range []int{r.start, r.end} {
			if s.nodeOf[i] == 0 {
				s.nodeOf[i] = s.world.addNode(s.net.at[i], nil)
			}
		}
		if r.class == motorway {
			there, back := carriageways(r)
			for _, one := range []road{there, back} {
				s.world.emit(one, s.nodeOf[one.start], s.nodeOf[one.end], baseTags(motorway, "V1"))
				s.remember(one)
			}
			continue
		}
		s.world.emit(r, s.nodeOf[r.start], s.nodeOf[r.end], baseTags(r.class, ""))
		s.remember(r)
	}
	s.emitTollBridge()
}

// bore puts a straight tunnel under the highest part of the highest trunk road.
func (s *island) bore() {
	best, bestAt, bestH := -1, 0.0, 0.0
	for k, r := range s.roads {
		if r.class != trunk {
			continue
		}
		run := 0.0
		for i := 1; i < len(r.line); i++ {
			run += r.line[i].dist(r.line[i-1])
			if h := heightAt(r.line[i]); h > bestH {
				best, bestAt, bestH = k, run, h
			}
		}
	}
	r := &s.roads[best]
	total := length(r.line)
	from, to := max(0.2, bestAt-1.4), min(total-0.2, bestAt+1.4)
	head, tail := between(r.line, 0, from), between(r.line, to, total)
	r.line = slices.Concat(head, tail)
	from = length(head)
	to = from + head[len(head)-1].dist(tail[0])
	r.spans = append(r.spans, span{from, to, tags{"tunnel": "yes", "layer": "-1", "maxheight": "4.2", "name": "Evrano Tunnel"}})
}

// hinder adds the tags to a stretch of the road.
func (s *island) hinder(h hindrance) {
	best, bestAt, bestD := -1, 0.0, math.Inf(1)
	for k, r := range s.roads {
		if !slices.Contains(h.classes, r.class) {
			continue
		}
		run := 0.0
		for i := 1; i < len(r.line); i++ {
			a, b := r.line[i-1], r.line[i]
			if d := offSide(h.at, a, b); d < bestD {
				best, bestAt, bestD = k, run+foot(h.at, a, b)*a.dist(b), d
			}
			run += a.dist(b)
		}
	}
	r := &s.roads[best]
	total := length(r.line)
	from := max(0.02, min(total-0.02-h.km, bestAt-h.km/2))
	r.spans = append(r.spans, span{from, min(total-0.02, from+h.km), h.tags})
}

// emitTollBridge spans the inlet: no node lies in the sea.
func (s *island) emitTollBridge() {
	a, b := s.corner["bridge west"], s.corner["bridge east"]
	p, q := s.net.at[a], s.net.at[b]
	from, to := s.toSea(p, q)
	land := 0.06 / p.dist(q)
	line := []pt{p, p.lerp(q, from-land), p.lerp(q, to+land), q}
	r := road{class: primary, line: line, spans: []span{{
		p.dist(line[1]), p.dist(line[2]),
		tags{"bridge": "yes", "layer": "1", "toll": "yes", "charge": "6 EUR", "name": "Ruvel Bridge", "maxspeed": "70"},
	}}}
	s.world.emit(r, s.nodeOf[a], s.nodeOf[b], baseTags(primary, ""))
}
