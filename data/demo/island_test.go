package demo

import (
	"math"
	"testing"
)

func TestWaysReferToNodes(t *testing.T) {
	w := &theIsland().world
	for _, y := range w.ways {
		if len(y.refs) < 2 {
			t.Errorf("way %d %v has %d nodes", y.id, y.tags, len(y.refs))
		}
		for i, id := range y.refs {
			if id < 1 || id > int64(len(w.nodes)) {
				t.Errorf("way %d refers to node %d, which is not there", y.id, id)
			}
			if i > 0 && id == y.refs[i-1] {
				t.Errorf("way %d repeats node %d", y.id, id)
			}
		}
	}
}

func TestRoadsStayOnLand(t *testing.T) {
	s := theIsland()
	for _, y := range s.world.ways {
		if y.tags["highway"] == "" {
			continue
		}
		for _, id := range y.refs {
			if p := s.at(id); !s.onLand(p) {
				t.Errorf("way %d %v: node %d at %.2f is in the water", y.id, y.tags, id, p)
			}
		}
	}
}

// Every road can be driven to from the capital, and back.
func TestRoadsAreConnected(t *testing.T) {
	s := theIsland()
	links := s.world.links()
	back := make([][]link, len(links))
	for a, ls := range links {
		for _, l := range ls {
			back[l.to] = append(back[l.to], link{int64(a), l.cost})
		}
	}
	capital := s.nodeOf[s.corner["Tamrin"]]
	for name, graph := range map[string][][]link{"from": links, "to": back} {
		seen := map[int64]bool{capital: true}
		for todo := []int64{capital}; len(todo) > 0; {
			at := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			for _, l := range graph[at] {
				if !seen[l.to] {
					seen[l.to] = true
					todo = append(todo, l.to)
				}
			}
		}
		for a, ls := range links {
			if p := s.at(max(1, int64(a))); len(ls) > 0 && s.main.contains(p) && !seen[int64(a)] {
				t.Errorf("no way %s the capital at node %d, %.1f", name, a, p)
			}
		}
	}
}

func TestServicesAreByTheRoad(t *testing.T) {
	s := theIsland()
	check := func(what tags, p pt) {
		if what["amenity"] == "" && what["tourism"] == "" && what["man_made"] == "" {
			return
		}
		best := math.Inf(1)
		for _, y := range s.world.ways {
			if y.tags["highway"] == "" || y.tags["highway"] == "motorway" {
				continue
			}
			for i := 1; i < len(y.refs); i++ {
				best = min(best, offSide(p, s.at(y.refs[i-1]), s.at(y.refs[i])))
			}
		}
		if best > 0.3 {
			t.Errorf("%v is %.2f km from a road", what, best)
		}
		if !s.onLand(p) {
			t.Errorf("%v is in the sea", what)
		}
	}
	for _, n := range s.world.nodes {
		check(n.tags, s.at(n.id))
	}
	for _, y := range s.world.ways {
		check(y.tags, s.at(y.refs[0]))
	}
}

// A coastline does not cross itself or another one.
func TestCoastsAreSimple(t *testing.T) {
	s := theIsland()
	var sides []segment
	for _, r := range s.shores {
		for i, a := range r.ring {
			sides = append(sides, segment{a, r.ring[(i+1)%len(r.ring)], 0})
		}
	}
	for i, u := range sides {
		for _, v := range sides[i+1:] {
			if u.a == v.a || u.a == v.b || u.b == v.a || u.b == v.b {
				continue
			}
			if _, _, ok := cross(u.a, u.b, v.a, v.b); ok {
				t.Errorf("coast crosses itself at %.2f", u.a)
			}
		}
	}
}

// The tour is one line over the roads, 700–1,100 km long, and passes the road
// to Sorvane Quay twice.
func TestTripFollowsTheRoads(t *testing.T) {
	route := Trip().Route
	km := 0.0
	seen := map[[2]float64]int{}
	for i, p := range route {
		seen[p]++
		if i > 0 {
			km += kmBetween(route[i-1], p)
		}
	}
	if km < 700 || km > 1100 {
		t.Errorf("the tour is %.0f km", km)
	}
	twice := 0
	for _, n := range seen {
		if n == 2 {
			twice++
		}
	}
	if twice < 20 {
		t.Errorf("%d points are passed twice, want a stretch", twice)
	}
	t.Logf("%.0f km, %d points", km, len(route))
}

// The roads hold what makes a large vehicle go another way, as pieces of roads:
// no tag of a bridge or a tunnel may spread over a whole road.
func TestHindrances(t *testing.T) {
	s := theIsland()
	for _, tc := range []struct {
		key, value      string
		count           int // 0: at least one
		leastKm, mostKm float64
	}{
		{"tunnel", "yes", 1, 1.5, 4},
		{"toll", "yes", 1, 2, 6},
		{"maxheight", "2.7", 2, 0.03, 0.1},
		{"maxwidth", "2.1", 1, 2, 5},
		{"maxweight", "3.0", 0, 0.3, 4},
		{"waterway", "river", 15, 5, 120},
		{"route", "ferry", 1, 10, 40},
		{"bridge", "yes", 0, 0.02, 6},
		{"oneway", "yes", 0, 0.01, 60},
	} {
		n := 0
		for _, y := range s.world.ways {
			if y.tags[tc.key] != tc.value {
				continue
			}
			n++
			km := 0.0
			for i := 1; i < len(y.refs); i++ {
				km += s.at(y.refs[i-1]).dist(s.at(y.refs[i]))
			}
			if km < tc.leastKm || km > tc.mostKm {
				t.Errorf("way %d %v is %.2f km long, want %v to %v", y.id, y.tags, km, tc.leastKm, tc.mostKm)
			}
		}
		if tc.count > 0 && n != tc.count || n == 0 {
			t.Errorf("%s=%s: %d ways, want %d", tc.key, tc.value, n, tc.count)
		}
	}
}

// A river that a road crosses has a bridge there.
func TestRoadsCrossRiversByBridges(t *testing.T) {
	s := theIsland()
	crossings, bridged := 0, 0
	for _, y := range s.world.ways {
		if y.tags["highway"] == "" {
			continue
		}
		for i := 1; i < len(y.refs); i++ {
			a, b := s.at(y.refs[i-1]), s.at(y.refs[i])
			if s.crossesRiver(a, b) {
				crossings++
				if y.tags["bridge"] == "yes" || y.tags["tunnel"] == "yes" {
					bridged++
				}
			}
		}
	}
	t.Logf("%d of %d crossings are bridges", bridged, crossings)
	if crossings < 20 || bridged != crossings {
		t.Errorf("%d of %d crossings are bridges", bridged, crossings)
	}
}
