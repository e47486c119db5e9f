package planner_test

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	. "ullage/planner"
)

// This file makes problems for tests: all data invented, the same arguments
// always give the same problem.

// made describes a problem of realistic shape and any length: fuel stations
// and overnight places every 12 km on average, water points every 30.
type made struct {
	LengthKm float64 `json:"length_km"`
	Seed     uint64  `json:"seed"`
	Backup   bool    `json:"backup,omitempty"`
	Nights   int     `json:"nights,omitempty"`  // 0: any number
	Battery  bool    `json:"battery,omitempty"` // a leisure battery as well, charged by driving and on hook-up
	Open     bool    `json:"open,omitempty"`    // fuel and water by day only, some closed on Sundays
	Stays    int     `json:"stays,omitempty"`   // this many nights or more, on a short trip with many places that allow stays as long
}

func (m made) String() string {
	return fmt.Sprintf("%vkm-%d-backup=%v-nights=%d-battery=%v-open=%v-stays=%d", m.LengthKm, m.Seed, m.Backup, m.Nights, m.Battery, m.Open, m.Stays)
}

func number(x float64) *float64 { return &x }

// round keeps decimals, so that problems read well and survive a file.
func round(x float64, decimals int) float64 {
	f := math.Pow10(decimals)
	return math.Round(x*f) / f
}

func (m made) problem() *Problem {
	g := rand.New(rand.NewPCG(m.Seed, 7))
	p := &Problem{
		Format: ProblemFormat, LengthKm: m.LengthKm, TimeCostPerH: 12, Backup: m.Backup,
		Drive: Drive{MaxKmPerDay: 260, MaxMinPerDay: 420, DepartMin: 570, Pace: []Pace{{ToKm: m.LengthKm, MinPerKm: 1}}},
		Tanks: []Tank{
			{ID: "diesel", Kind: Supply, Capacity: 90, Reserve: 9, Start: 90, PerKm: 0.11, End: &End{AtLeast: number(85), RefillPrice: number(2.2)}},
			{ID: "def", Kind: Supply, Capacity: 20, Reserve: 2, Start: 12, PerKm: 0.0105},
			{ID: "lpg", Kind: Supply, Capacity: 36, Reserve: 4, Start: 36},
			{ID: "fresh", Kind: Supply, Capacity: 100, Reserve: 10, Start: 100},
			{ID: "grey", Kind: Waste, Capacity: 90, Reserve: 5, End: &End{AtMost: number(30)}},
			{ID: "cassette", Kind: Waste, Capacity: 18, Reserve: 1, End: &End{AtMost: number(8)}},
		},
	}
	if m.Nights > 0 {
		p.Nights = &Range{m.Nights, m.Nights}
	}
	for i := range int(m.LengthKm / 12) {
		p.Stops = append(p.Stops, madeFuel(g, m.LengthKm, i), madeOvernight(g, m.LengthKm, i))
	}
	for i := range int(m.LengthKm / 30) {
		p.Stops = append(p.Stops, madeWater(g, m.LengthKm, i))
	}
	if m.Stays > 0 {
		withStays(p, g, m.Stays)
	}
	sortByKm(p.Stops)
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

func sortByKm(stops []Stop) {
	slices.SortStableFunc(stops, func(a, b Stop) int { return cmp.Compare(a.Km, b.Km) })
}

func madeStop(g *rand.Rand, id string, length, detour, stopMin float64) Stop {
	d := round(detour*g.Float64(), 2)
	return Stop{ID: id, Km: round(length*g.Float64(), 2), DetourKm: d, DetourMin: round(1.5*d, 2), StopMin: stopMin}
}

func madeFuel(g *rand.Rand, length float64, i int) Stop {
	s := madeStop(g, fmt.Sprintf("f%d", i), length, 4, 3)
	s.Serves = []Service{{Tank: "diesel", Price: round(1.35+0.45*g.Float64(), 3), Min: 6}}
	if g.Float64() < 0.2 {
		s.Serves = append(s.Serves, Service{Tank: "lpg", Price: round(0.8+0.3*g.Float64(), 3), Min: 8})
	}
	if g.Float64() < 0.3 {
		s.Serves = append(s.Serves, Service{Tank: "def", Price: 0.9, Min: 5})
	}
	return s
}

func madeWater(g *rand.Rand, length float64, i int) Stop {
	s := madeStop(g, fmt.Sprintf("w%d", i), length, 6, 3)
	s.Serves = []Service{{Tank: "fresh", Min: 12}}
	if g.Float64() < 0.85 {
		s.Serves = append(s.Serves, Service{Tank: "grey", Min: 6})
	}
	if g.Float64() < 0.85 {
		s.Serves = append(s.Serves, Service{Tank: "cassette", Min: 8})
	}
	s.Fee = []float64{0, 0, 2, 4}[g.IntN(4)]
	return s
}

func madeOvernight(g *rand.Rand, length float64, i int) Stop {
	s := madeStop(g, fmt.Sprintf("n%d", i), length, 8, 2)
	full := g.Float64() < 0.6
	night := &Night{Fee: []float64{0, 0, 5, 8, 12}[g.IntN(5)], Nights: 1, Use: map[string]float64{"lpg": 5.5, "fresh": 45, "grey": 38, "cassette": 8}}
	if full {
		s.Serves = []Service{{Tank: "fresh", Min: 10}, {Tank: "grey", Min: 6}, {Tank: "cassette", Min: 8}}
		night.Fee = float64(15 + g.IntN(24))
		if g.Float64() < 0.7 { // hook-up: hardly any gas for heat and cold
			night.Use["lpg"] = 0.6
		}
	} else if g.Float64() < 0.4 {
		s.Serves = []Service{{Tank: "fresh", Min: 10}}
	}
	s.Night = night
	return s
}

// withStays makes a short trip of long stays: a place for the night every 5 km
// at least, each for as many nights in a row as are asked for.
func withStays(p *Problem, g *rand.Rand, nights int) {
	p.Drive.MaxKmPerDay = 60
	p.Nights = &Range{nights, 999}
	p.Tanks[2].End = &End{AtLeast: number(18), RefillPrice: number(1.1)} // LPG, that hardly ever binds
	for i := len(p.Stops); i < int(p.LengthKm/3); i++ {
		p.Stops = append(p.Stops, madeOvernight(g, p.LengthKm, i))
	}
	for _, s := range slices.Clone(p.Stops) {
		for n := 2; s.Night != nil && n <= nights; n++ {
			long := s
			long.ID = fmt.Sprintf("%s×%d", s.ID, n)
			long.Night = &Night{Fee: s.Night.Fee * float64(n), Nights: n, Use: map[string]float64{}}
			for tank, u := range s.Night.Use {
				long.Night.Use[tank] = round(u*float64(n), 6)
			}
			p.Stops = append(p.Stops, long)
		}
	}
}

// withBattery adds a leisure battery: an hour on the road gives about 15 Ah, a
// night takes 65, or fills it on hook-up.
func withBattery(p *Problem) {
	p.Tanks = append(p.Tanks, Tank{ID: "battery", Kind: Supply, Capacity: 95, Reserve: 20, Start: 95, PerKm: -0.25})
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
func withHours(p *Problem, g *rand.Rand) {
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
func spareToNext(p *Problem) {
	for i, s := range p.Stops {
		for j, x := range s.Serves {
			for _, t := range p.Stops[i+1:] {
				if slices.ContainsFunc(t.Serves, func(y Service) bool { return y.Tank == x.Tank }) {
					km := t.Km - s.Km + s.DetourKm/2 + t.DetourKm/2
					s.Serves[j].Spare = round(p.Tanks[bruteTank(p, x.Tank)].PerKm*km, 3)
					break
				}
			}
		}
	}
}

// tiny is a random problem of 3 to 8 stops in which everything that the model
// knows turns up sooner or later, small enough for [brute].
func tiny(seed uint64) *Problem {
	g := tinyMaker{rand.New(rand.NewPCG(seed, 11))}
	length := float64(100 + 10*g.IntN(40))
	p := &Problem{
		Format: ProblemFormat, LengthKm: length, TimeCostPerH: float64(6 * g.IntN(4)), Backup: g.chance(0.3),
		Drive: Drive{MaxKmPerDay: float64(150 + 10*g.IntN(25)), MaxMinPerDay: float64(240 + 20*g.IntN(20)), DepartMin: float64(420 + 30*g.IntN(8)), Pace: g.pace(length)},
	}
	if g.chance(0.2) {
		p.Drive.MaxMinPerDay = 3000 // a day on the road that is longer than a day
	}
	p.Tanks = g.tanks()
	stops := 3 + g.IntN(6)
	for i := range stops {
		p.Stops = append(p.Stops, g.stop(fmt.Sprintf("s%d", i), p, min(0.5, 9/float64(stops*len(p.Tanks)))))
	}
	sortByKm(p.Stops)
	if g.chance(0.3) {
		p.Nights = &Range{Min: g.IntN(3)}
		p.Nights.Max = p.Nights.Min + g.IntN(2)
	}
	return p
}

type tinyMaker struct{ *rand.Rand }

func (g tinyMaker) chance(share float64) bool { return g.Float64() < share }

// between is a number with two decimals.
func (g tinyMaker) between(lo, hi float64) float64 { return round(lo+(hi-lo)*g.Float64(), 2) }

func (g tinyMaker) pace(length float64) []Pace {
	var out []Pace
	for at := round(length*g.Float64(), 1); g.chance(0.4) && at > 0 && at < length && len(out) == 0; {
		out = append(out, Pace{ToKm: at, MinPerKm: g.between(0.5, 2)})
	}
	return append(out, Pace{ToKm: length, MinPerKm: g.between(0.6, 1.4)})
}

func (g tinyMaker) tanks() []Tank {
	fuel := Tank{ID: "fuel", Kind: Supply, Capacity: g.between(15, 40), Reserve: 2, PerKm: 0.1}
	fuel.Start = g.between(5, fuel.Capacity)
	if g.chance(0.5) {
		fuel.End = &End{AtLeast: number(g.between(0, fuel.Capacity))}
		if g.chance(0.6) {
			fuel.End.RefillPrice = number(g.between(0.5, 3))
		}
	}
	water := Tank{ID: "water", Kind: Supply, Capacity: g.between(60, 120), Reserve: 5}
	water.Start = g.between(40, water.Capacity)
	waste := Tank{ID: "waste", Kind: Waste, Capacity: g.between(50, 100), Reserve: g.between(0, 5), PerKm: []float64{0, 0.02}[g.IntN(2)]}
	waste.Start = g.between(0, 30)
	if g.chance(0.4) {
		waste.End = &End{AtMost: number(g.between(0, min(60, waste.Capacity)))}
	}
	battery := Tank{ID: "battery", Kind: Supply, Capacity: g.between(60, 120), Reserve: g.between(0, 20), PerKm: -g.between(0, 0.4)}
	battery.Start = g.between(0, battery.Capacity)
	if g.chance(0.3) {
		battery.End = &End{AtLeast: number(g.between(0, battery.Capacity))}
		if g.chance(0.5) {
			battery.End.RefillPrice = number(g.between(0, 0.5))
		}
	}
	all := []Tank{fuel, water, waste, battery}
	g.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:1+g.IntN(len(all))]
}

// stop serves each tank with the given chance.
func (g tinyMaker) stop(id string, p *Problem, serves float64) Stop {
	s := Stop{ID: id, Km: g.between(0, p.LengthKm), StopMin: float64(g.IntN(6)), Fee: float64(g.IntN(4)), Required: g.chance(0.06)}
	if n := len(p.Stops); n > 0 && g.chance(0.2) {
		s.Km = p.Stops[n-1].Km
	}
	if g.chance(0.8) {
		s.DetourKm = g.between(0, 8)
		s.DetourMin = g.between(0, 12)
	}
	if g.chance(0.6) {
		s.Night = g.night(p)
	}
	if g.chance(0.25) {
		s.Open = g.windows()
	}
	s.Serves = []Service{}
	for _, t := range p.Tanks {
		if g.chance(serves) {
			s.Serves = append(s.Serves, g.service(t, s.Night != nil))
		}
	}
	return s
}

func (g tinyMaker) service(t Tank, hasNight bool) Service {
	x := Service{Tank: t.ID, Min: float64(g.IntN(15)), Fee: float64(g.IntN(3)), GuestsOnly: hasNight && g.chance(0.3)}
	if t.Kind == Supply && g.chance(0.8) {
		x.Price = g.between(0.1, 2)
	}
	if g.chance(0.5) {
		x.Spare = g.between(0, t.Capacity/2)
	}
	return x
}

func (g tinyMaker) night(p *Problem) *Night {
	n := &Night{Fee: float64(g.IntN(30)), Nights: 1, Use: map[string]float64{}}
	if g.chance(0.2) {
		n.Nights = 2
	}
	for _, t := range p.Tanks {
		switch {
		case t.PerKm < 0 && g.chance(0.5):
			n.Use[t.ID] = -g.between(0, 80) // hook-up
		case t.PerKm <= 0 || t.Kind == Waste || g.chance(0.2):
			n.Use[t.ID] = g.between(0, 45) * float64(n.Nights)
		}
	}
	return n
}

// windows are one to three, over the first days.
func (g tinyMaker) windows() [][2]float64 {
	var out [][2]float64
	at := 0.0
	for range 1 + g.IntN(3) {
		from := at + 30*float64(g.IntN(40))
		to := from + 30*float64(1+g.IntN(20))
		out = append(out, [2]float64{from, to})
		at = to
	}
	return out
}
