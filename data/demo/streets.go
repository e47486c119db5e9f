package demo

import "math"

// emitStreets grows residential streets off the roads in each settlement: a
// few streets with others branching off.
func (s *island) emitStreets() {
	stubs := [...]int{0, 26, 9, 4}
	var roadNodes []int64
	var ats []pt
	for i, on := range s.onRoad() {
		if id := int64(i + 1); on {
			roadNodes, ats = append(roadNodes, id), append(ats, s.at(id))
		}
	}
	for _, t := range s.towns {
		if t.rank == 0 {
			continue
		}
		var near []int64
		within := townKm(t.rank) * 0.9
		for i, id := range roadNodes {
			if math.Abs(ats[i].x-t.at.x) < within && ats[i].dist(t.at) < within {
				near = append(near, id)
			}
		}
		for k := range min(stubs[t.rank], 2*len(near)) {
			id := near[k%len(near)]
			turn := 2 * math.Pi * s.rng.Float64()
			s.street(id, turn, 0.2+0.35*s.rng.Float64(), 3-t.rank+k%2)
		}
	}
}

// street writes one street and those that branch off it, unless it would leave
// the land.
func (s *island) street(from int64, turn, km float64, branches int) {
	start := s.at(from)
	dir := pt{math.Cos(turn), math.Sin(turn)}
	mid := start.add(dir.mul(km / 2)).add(dir.left().mul(0.03))
	end := start.add(dir.mul(km))
	if !s.onLand(mid) || !s.onLand(end) {
		return
	}
	if s.crossesRiver(start, mid) || s.crossesRiver(mid, end) {
		return
	}
	refs := append([]int64{from}, s.world.addNodes([]pt{mid, end})...)
	s.world.addWay(refs, tags{"highway": "residential", "maxspeed": "30"})
	s.roadSet = append(s.roadSet, segment{start, mid, tertiary}, segment{mid, end, tertiary})
	if branches > 0 {
		s.street(refs[1], turn+math.Pi/2, km*0.75, branches-1)
		s.street(refs[2], turn-math.Pi/2, km*0.6, branches-1)
	}
}

// onRoad says of each node so far whether a road other than a motorway, a
// bridge or a tunnel uses it.
func (s *island) onRoad() []bool {
	on := make([]bool, len(s.world.nodes))
	for _, w := range s.world.ways {
		switch w.tags["highway"] {
		case "", "motorway":
			continue
		}
		if w.tags["bridge"] != "" || w.tags["tunnel"] != "" {
			continue
		}
		for _, id := range w.refs {
			on[id-1] = true
		}
	}
	return on
}

// at is where a node lies, in km.
func (s *island) at(id int64) pt {
	p := s.world.point(id)
	return pt{(p[0] - middleLon) * kmPerLon, (p[1] - middleLat) * kmPerLat}
}
