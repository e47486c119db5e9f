package demo

import (
	"strconv"
)

// This file lays the country out: land and water, roads, villages, names.

// shape draws land and water.
func (s *island) shape() {
	s.main = newRegion(roughen(s.rng, outline, 0.38, 0.5))
	s.shores = []*region{s.main}
	for _, i := range islets {
		ring := roughen(s.rng, blob(s.rng, i.at, i.radius, i.radius*0.7, i.at.x), 0.4, 0.35)
		s.shores = append(s.shores, newRegion(ring))
	}
	s.lake = newRegion(roughen(s.rng, blob(s.rng, pt{-11, 5}, 5.6, 2, 0.5), 0.22, 0.3))
	s.rivers = drawRivers(s.main, s.lake)
}

// plan lays out roads and villages on the grid.
func (s *island) plan() {
	g := newGrid(s.rng, s.main, func(p pt) bool { return s.lake.contains(p) || s.lake.edgeKm(p) < 1.1 })
	for _, v := range s.rivers { // a road crosses a river but does not run in it
		for _, p := range v.line {
			if i := g.around(p); p.dist(g.at[i]) < 0.7 {
				g.extra[i] = max(g.extra[i], 2)
			}
		}
	}
	s.net = newNetwork(g)
	for _, t := range towns {
		i := g.nearest(t.at, func(i int) bool { return g.land[i] })
		s.corner[t.name] = i
		if t.rank == 0 {
			s.net.stops[i] = true
		}
	}
	s.net.stops[s.corner["Nolbe Bridge"]] = true
	for _, h := range highways {
		for i := 1; i < len(h.via); i++ {
			s.net.join(s.corner[h.via[i-1]], s.corner[h.via[i]], h.class)
		}
	}
	for _, t := range towns {
		s.towns = append(s.towns, town{t.name, g.at[s.corner[t.name]], t.rank})
	}
	s.settleVillages()
}

const (
	villages     = 125
	villageGapKm = 5.6
)

// settleVillages drops villages on low ground, each with a road to the network,
// and joins some to their neighbours.
func (s *island) settleVillages() {
	names := &namer{s.rng, map[string]bool{}}
	for _, t := range towns {
		names.used[t.name] = true
	}
	var made []int
	for tries := 0; tries < 6000 && len(made) < villages; tries++ {
		i := s.rng.IntN(len(s.net.at))
		if !s.net.land[i] || s.net.height[i] > 650 || s.net.onMotorway(i) || s.crowded(s.net.at[i]) {
			continue
		}
		made = append(made, i)
		s.towns = append(s.towns, town{names.village(), s.net.at[i], 3})
		if !s.net.isOn[i] {
			s.net.connect(i, tertiary)
		}
	}
	for k, i := range made {
		if k%3 == 0 {
			continue
		}
		if best := s.neighbour(i, made[:k]); best >= 0 {
			s.net.join(i, best, tertiary)
		}
	}
}

// neighbour is the nearest of some villages that is neither next door nor far; -1 if none is.
func (s *island) neighbour(i int, of []int) int {
	best, bestD := -1, 18.0
	for _, j := range of {
		if d := s.net.at[i].dist(s.net.at[j]); d > 6 && d < bestD {
			best, bestD = j, d
		}
	}
	return best
}

func (s *island) crowded(p pt) bool {
	for _, t := range s.towns {
		if t.rank > 0 && p.dist(t.at) < villageGapKm {
			return true
		}
	}
	return false
}

// emitShape writes coasts, lake and rivers.
func (s *island) emitShape() {
	for i, r := range s.shores {
		t := tags{"natural": "coastline"}
		if i < len(isletNames)+1 && i > 0 {
			t["name"] = isletNames[i-1]
		}
		s.world.addRing(r.ring, t)
	}
	s.world.addRing(s.lake.ring, tags{"natural": "water", "water": "lake", "name": "Evrano Lake"})
	for _, v := range s.rivers {
		s.world.addWay(s.world.addNodes(v.line), tags{"waterway": "river", "name": v.name})
	}
}

var isletNames = []string{"Tilsan Island", "Nandor Island"}

// emitPlaces writes the settlements and what the mountains are called.
func (s *island) emitPlaces() {
	kinds := [...]string{"", "city", "town", "village"}
	people := [...]int{0, 90000, 9000, 600}
	for _, t := range s.towns {
		if t.rank == 0 {
			continue
		}
		n := people[t.rank]/2 + s.rng.IntN(people[t.rank])
		s.world.addNode(t.at.add(pt{0.05, 0.04}), tags{"place": kinds[t.rank], "name": t.name, "population": strconv.Itoa(n / 10 * 10)})
	}
	for _, l := range landmarks {
		s.world.addNode(l.at, parseTags(l.tags))
	}
}

// landmarks have names but serve nobody.
var landmarks = []struct {
	at   pt
	tags string
}{
	{pt{-30, 30}, "natural=peak; name=Nolbe Peak; ele=2050"},
	{pt{-58, 22}, "natural=peak; name=Fendal Peak; ele=1750"},
	{pt{-2, 18}, "natural=peak; name=Evrano Peak; ele=1700"},
	{pt{-84, 12}, "natural=peak; name=Lindrel Peak; ele=1300"},
	{pt{68, 14}, "natural=peak; name=Nerava Peak; ele=1850"},
	{pt{40, 9}, "natural=peak; name=Ilmane Peak; ele=1500"},
	{pt{60, -30}, "natural=peak; name=Jondel Peak; ele=900"},
	{pt{-34, -32}, "natural=bay; name=Tamrin Bay"},
	{pt{24, 41}, "natural=bay; name=Dalmer Bay"},
	{pt{-128.5, 4}, "natural=cape; name=Tarsil Cape"},
	{pt{130, 1}, "natural=cape; name=Altrel Cape"},
	{pt{55, -73}, "natural=cape; name=Pandrel Cape"},
}
