package demo

import (
	"math"
	"math/rand/v2"
	"slices"
)

// seed fixes everything that is drawn by lot.
const seed = 20270611

// replication is the date of the data: 2026-11-01 00:00 UTC.
const replication = 1793491200

// An island is the whole country: its world of objects and what later steps
// look up in it.
type island struct {
	rng     *rand.Rand
	world   world
	main    *region   // the main island's shore
	shores  []*region // all of them
	lake    *region
	rivers  []river
	net     *network
	corner  map[string]int // of a town
	towns   []town         // with the villages, at their corners
	roads   []road
	nodeOf  map[int]int64 // corner → node
	roadSet []segment     // all that a service point may stand beside
}

// newIsland builds it, the same every time.
func newIsland() *island {
	s := &island{rng: rand.New(rand.NewPCG(seed, 1)), corner: map[string]int{}, nodeOf: map[int]int64{}}
	s.shape()
	s.plan()
	s.emitShape()
	s.emitRoads()
	s.emitIslet()
	s.emitStreets()
	s.emitPlaces()
	s.emitServices()
	return s
}

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
		best := -1
		for _, j := range made[:k] {
			if d := s.net.at[i].dist(s.net.at[j]); d > 6 && d < 18 && (best < 0 || d < s.net.at[i].dist(s.net.at[best])) {
				best = j
			}
		}
		if best >= 0 {
			s.net.join(i, best, tertiary)
		}
	}
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
		s.world.addNode(t.at.add(pt{0.05, 0.04}), tags{"place": kinds[t.rank], "name": t.name, "population": itoa(n / 10 * 10)})
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

// onLand says whether a point lies on any island and not in the lake.
func (s *island) onLand(p pt) bool {
	return !s.lake.contains(p) && slices.ContainsFunc(s.shores, func(r *region) bool { return r.contains(p) })
}

// toSea is how far along a straight line the sea begins and ends, in shares.
func (s *island) toSea(a, b pt) (from, to float64) {
	const steps = 400
	from, to = math.NaN(), 0
	for i := range steps {
		f := float64(i) / steps
		if !s.main.contains(a.lerp(b, f)) {
			if math.IsNaN(from) {
				from = f
			}
			to = f
		}
	}
	return from, to
}
