package plantest

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"ullage/planner"
)

// This file makes problems for tests: all data invented, the same arguments
// always give the same problem.

// Made describes a problem of realistic shape and any length: fuel stations
// and overnight places every 12 km on average, water points every 30.
type Made struct {
	LengthKm float64 `json:"length_km"`
	Seed     uint64  `json:"seed"`
	Backup   bool    `json:"backup,omitempty"`
	Nights   int     `json:"nights,omitempty"`  // 0: any number
	Battery  bool    `json:"battery,omitempty"` // a leisure battery as well, charged by driving and on hook-up
	Open     bool    `json:"open,omitempty"`    // fuel and water by day only, some closed on Sundays
	Dense    int     `json:"dense,omitempty"`   // so many times as many stops on the same road; 0: once
	Stays    int     `json:"stays,omitempty"`   // this many nights or more, on a short trip with many places that allow stays as long
}

func (m Made) String() string {
	return fmt.Sprintf("%vkm-%d-backup=%v-nights=%d-battery=%v-open=%v-stays=%d-dense=%d", m.LengthKm, m.Seed, m.Backup, m.Nights, m.Battery, m.Open, m.Stays, m.Dense)
}

func (m Made) Problem() *planner.Problem {
	g := rand.New(rand.NewPCG(m.Seed, 7))
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: m.LengthKm, TimeCostPerH: 12, Backup: m.Backup,
		Drive: planner.Drive{MaxKmPerDay: 260, MaxMinPerDay: 420, DepartMin: 570, Pace: []planner.Pace{{ToKm: m.LengthKm, MinPerKm: 1}}},
		Tanks: []planner.Tank{
			{ID: "diesel", Kind: planner.Supply, Capacity: 90, Reserve: 9, Start: 90, PerKm: 0.11, End: &planner.End{AtLeast: Number(85), RefillPrice: Number(2.2)}},
			{ID: "def", Kind: planner.Supply, Capacity: 20, Reserve: 2, Start: 12, PerKm: 0.0105},
			{ID: "lpg", Kind: planner.Supply, Capacity: 36, Reserve: 4, Start: 36},
			{ID: "fresh", Kind: planner.Supply, Capacity: 100, Reserve: 10, Start: 100},
			{ID: "grey", Kind: planner.Waste, Capacity: 90, Reserve: 5, End: &planner.End{AtMost: Number(30)}},
			{ID: "cassette", Kind: planner.Waste, Capacity: 18, Reserve: 1, End: &planner.End{AtMost: Number(8)}},
		},
	}
	if m.Nights > 0 {
		p.Nights = &planner.Range{Min: m.Nights, Max: m.Nights}
	}
	km := m.LengthKm * float64(max(1, m.Dense))
	for i := range int(km / 12) {
		p.Stops = append(p.Stops, madeFuel(g, m.LengthKm, i), madeOvernight(g, m.LengthKm, i))
	}
	for i := range int(km / 30) {
		p.Stops = append(p.Stops, madeWater(g, m.LengthKm, i))
	}
	if m.Stays > 0 {
		withStays(p, g, m.Stays)
	}
	SortByKm(p.Stops)
	if m.Battery {
		withBattery(p)
	}
	if m.Open {
		withHours(p, rand.New(rand.NewPCG(m.Seed, 17)))
	}
	if m.Backup {
		spareToNext(p)
	}
	return p
}

func madeStop(g *rand.Rand, id string, length, detour, stopMin float64) planner.Stop {
	d := Round(detour*g.Float64(), 2)
	return planner.Stop{ID: id, Km: Round(length*g.Float64(), 2), DetourKm: d, DetourMin: Round(1.5*d, 2), StopMin: stopMin}
}

func madeFuel(g *rand.Rand, length float64, i int) planner.Stop {
	s := madeStop(g, fmt.Sprintf("f%d", i), length, 4, 3)
	s.Serves = []planner.Service{{Tank: "diesel", Price: Round(1.35+0.45*g.Float64(), 3), Min: 6}}
	if g.Float64() < 0.2 {
		s.Serves = append(s.Serves, planner.Service{Tank: "lpg", Price: Round(0.8+0.3*g.Float64(), 3), Min: 8})
	}
	if g.Float64() < 0.3 {
		s.Serves = append(s.Serves, planner.Service{Tank: "def", Price: 0.9, Min: 5})
	}
	return s
}

func madeWater(g *rand.Rand, length float64, i int) planner.Stop {
	s := madeStop(g, fmt.Sprintf("w%d", i), length, 6, 3)
	s.Serves = []planner.Service{{Tank: "fresh", Min: 12}}
	if g.Float64() < 0.85 {
		s.Serves = append(s.Serves, planner.Service{Tank: "grey", Min: 6})
	}
	if g.Float64() < 0.85 {
		s.Serves = append(s.Serves, planner.Service{Tank: "cassette", Min: 8})
	}
	s.Fee = []float64{0, 0, 2, 4}[g.IntN(4)]
	return s
}

func madeOvernight(g *rand.Rand, length float64, i int) planner.Stop {
	s := madeStop(g, fmt.Sprintf("n%d", i), length, 8, 2)
	full := g.Float64() < 0.6
	night := &planner.Night{Fee: []float64{0, 0, 5, 8, 12}[g.IntN(5)], Nights: 1, Use: map[string]float64{"lpg": 5.5, "fresh": 45, "grey": 38, "cassette": 8}}
	if full {
		s.Serves = []planner.Service{{Tank: "fresh", Min: 10}, {Tank: "grey", Min: 6}, {Tank: "cassette", Min: 8}}
		night.Fee = float64(15 + g.IntN(24))
		if g.Float64() < 0.7 { // hook-up: hardly any gas for heat and cold
			night.Use["lpg"] = 0.6
		}
	} else if g.Float64() < 0.4 {
		s.Serves = []planner.Service{{Tank: "fresh", Min: 10}}
	}
	s.Night = night
	return s
}

// withStays makes a short trip of long stays: a place for the night every 5 km
// at least, each for as many nights in a row as are asked for.
func withStays(p *planner.Problem, g *rand.Rand, nights int) {
	p.Drive.MaxKmPerDay = 60
	p.Nights = &planner.Range{Min: nights, Max: 999}
	p.Tanks[2].End = &planner.End{AtLeast: Number(18), RefillPrice: Number(1.1)} // LPG, that hardly ever binds
	for i := len(p.Stops); i < int(p.LengthKm/3); i++ {
		p.Stops = append(p.Stops, madeOvernight(g, p.LengthKm, i))
	}
	for _, s := range slices.Clone(p.Stops) {
		for n := 2; s.Night != nil && n <= nights; n++ {
			long := s
			long.ID = fmt.Sprintf("%s×%d", s.ID, n)
			long.Night = &planner.Night{Fee: s.Night.Fee * float64(n), Nights: n, Use: map[string]float64{}}
			for tank, u := range s.Night.Use {
				long.Night.Use[tank] = Round(u*float64(n), 6)
			}
			p.Stops = append(p.Stops, long)
		}
	}
}

// withBattery adds a leisure battery: an hour on the road gives about 15 Ah, a
// night takes 65, or fills it on hook-up.
func withBattery(p *planner.Problem) {
	p.Tanks = append(p.Tanks, planner.Tank{ID: "battery", Kind: planner.Supply, Capacity: 95, Reserve: 20, Start: 95, PerKm: -0.25})
	for _, s := range p.Stops {
		if s.Night == nil {
			continue
		}
		n := float64(s.Night.Nights)
		s.Night.Use["battery"] = 65 * n
		if s.Night.Use["lpg"] < n {
			s.Night.Use["battery"] = -95 * n
		}
	}
}

// withHours opens what is not for the night from 7:00 to 20:00, a third of it
// not on day four, for as long as any trip may take.
func withHours(p *planner.Problem, g *rand.Rand) {
	days := 3 + int(p.LengthKm/50)
	for i, s := range p.Stops {
		if s.Night != nil || g.Float64() < 0.3 {
			continue
		}
		closed := -1
		if g.Float64() < 0.33 {
			closed = 3
		}
		for day := range days {
			if day%7 != closed {
				p.Stops[i].Open = append(p.Stops[i].Open, [2]float64{1440*float64(day) + 420, 1440*float64(day) + 1200})
			}
		}
	}
}

// spareToNext sets the spare of every service to what the way to the next
// other stop that offers it uses, detours included.
func spareToNext(p *planner.Problem) {
	for i, s := range p.Stops {
		for j, x := range s.Serves {
			for _, t := range p.Stops[i+1:] {
				if slices.ContainsFunc(t.Serves, func(y planner.Service) bool { return y.Tank == x.Tank }) {
					km := t.Km - s.Km + s.DetourKm/2 + t.DetourKm/2
					s.Serves[j].Spare = Round(p.Tanks[BruteTank(p, x.Tank)].PerKm*km, 3)
					break
				}
			}
		}
	}
}
