package demo

// emitIslet gives the largest islet a village, a road across and the ferry to
// Torlane Quay.
func (s *island) emitIslet() {
	shore, middle := s.shores[1], islets[0].at
	torlane := s.net.at[s.corner["Torlane Quay"]]

	inside := func(r *region, from, toward pt) pt { // 200 m behind the shore nearest to a point
		p := r.ring[r.nearest(toward)]
		return p.add(from.sub(p).unit().mul(0.2))
	}
	pier := inside(s.main, torlane, torlane.lerp(middle, 0.25))
	landing := inside(shore, middle, torlane)
	end := inside(shore, middle, middle.add(pt{-6, -3}))

	pierNode, landingNode := s.world.addNode(pier, nil), s.world.addNode(landing, nil)
	village := s.world.addNode(middle, nil)
	s.islandRoad([]pt{torlane, pier}, s.nodeOf[s.corner["Torlane Quay"]], pierNode)
	s.islandRoad([]pt{landing, landing.lerp(middle, 0.4).add(pt{0.5, -0.3}), middle}, landingNode, village)
	s.islandRoad([]pt{middle, middle.lerp(end, 0.6).add(pt{-0.2, 0.6}), end}, village, s.world.addNode(end, nil))
	s.towns = append(s.towns, town{"Tilsan Quay", middle, 3})

	course := curve([]pt{pier, pier.lerp(landing, 0.5).add(pt{1.5, -1}), landing}, 2)
	refs := append([]int64{pierNode}, s.world.addNodes(course[1:len(course)-1])...)
	s.world.addWay(append(refs, landingNode), tags{
		"route": "ferry", "name": "Torlane Quay – Tilsan Quay", "motor_vehicle": "yes", "duration": "00:45", "fee": "yes", "operator": "Domrel Ferries",
	})
}

func (s *island) islandRoad(line []pt, from, to int64) {
	r := road{class: tertiary, line: thin(wind(curve(line, 0.12), 0.08, 0.2), 0.006)}
	s.world.emit(r, from, to, baseTags(tertiary, ""))
	s.remember(r)
}
