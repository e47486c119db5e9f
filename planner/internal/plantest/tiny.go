package plantest

import (
	"fmt"
	"math/rand/v2"

	"ullage/planner"
)

// Tiny is a random problem of 3 to 8 stops in which everything that the model
// knows turns up sooner or later, small enough for [Brute].
func Tiny(seed uint64) *planner.Problem {
	g := TinyMaker{rand.New(rand.NewPCG(seed, 11))}
	length := float64(100 + 10*g.IntN(40))
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: length, TimeCostPerH: float64(6 * g.IntN(4)), Backup: g.chance(0.3),
		Drive: planner.Drive{MaxKmPerDay: float64(150 + 10*g.IntN(25)), MaxMinPerDay: float64(240 + 20*g.IntN(20)), DepartMin: float64(420 + 30*g.IntN(8)), Pace: g.pace(length)},
	}
	if g.chance(0.2) {
		p.Drive.MaxMinPerDay = 3000 // a day on the road that is longer than a day
	}
	p.Tanks = g.tanks()
	stops := 3 + g.IntN(6)
	for i := range stops {
		p.Stops = append(p.Stops, g.Stop(fmt.Sprintf("s%d", i), p, min(0.5, 9/float64(stops*len(p.Tanks)))))
	}
	SortByKm(p.Stops)
	if g.chance(0.3) {
		p.Nights = &planner.Range{Min: g.IntN(3)}
		p.Nights.Max = p.Nights.Min + g.IntN(2)
	}
	if g.chance(0.5) {
		g.live(p)
	}
	return p
}

// live adds what travelling people want.
func (g TinyMaker) live(p *planner.Problem) {
	if g.chance(0.4) {
		p.Drive.MoveKm = float64(10 * (1 + g.IntN(12)))
	}
	if g.chance(0.2) {
		p.Drive.RestDays = []int{1 + g.IntN(2)}
	}
	if g.chance(0.3) {
		p.Drive.EndByMin = min(p.Drive.DepartMin+float64(60+20*g.IntN(20)), 1439)
	}
	for range g.IntN(3) {
		list := []string{"nowhere", p.Stops[g.IntN(len(p.Stops))].ID, p.Stops[g.IntN(len(p.Stops))].ID}
		p.RequireOne = append(p.RequireOne, list[g.IntN(2):])
	}
	if g.chance(0.4) {
		g.weigh(p)
	}
	for i := range p.Stops {
		if n := p.Stops[i].Night; n != nil {
			g.stay(p, n)
		}
	}
}

// weigh limits the mass of what is in waste tanks and one supply tank without prices.
func (g TinyMaker) weigh(p *planner.Problem) {
	p.Mass = &planner.Mass{Per: map[string]float64{}}
	at := 0.0
	for i, t := range p.Tanks {
		if t.Kind == planner.Waste || t.ID == "water" {
			p.Mass.Per[t.ID] = g.between(0.5, 1.5)
			p.Mass.Most += p.Mass.Per[t.ID] * t.Capacity * g.between(0.2, 0.7)
			at += p.Mass.Per[t.ID] * p.Tanks[i].Start
		}
	}
	if g.chance(0.9) {
		p.Mass.Most = max(p.Mass.Most, at)
	}
	for _, s := range p.Stops {
		for j := range s.Serves {
			if p.Mass.Per[s.Serves[j].Tank] > 0 {
				s.Serves[j].Price = 0
			}
		}
	}
}

// stay has hours to check in, settling in, and nights that differ.
func (g TinyMaker) stay(p *planner.Problem, n *planner.Night) {
	if g.chance(0.5) {
		from := float64(30 * g.IntN(44))
		n.CheckIn = &[2]float64{from, min(from+float64(30*(1+g.IntN(20))), 1440)}
	}
	if g.chance(0.5) {
		n.Min = float64(10 * g.IntN(5))
	}
	for _, t := range p.Tanks {
		if g.chance(0.4) && n.Use[t.ID] != 0 {
			if n.Use[t.ID] > 0 && g.chance(0.4) {
				n.Use[t.ID] *= 4 // more than the tank holds
			}
			if n.ByNight == nil {
				n.ByNight = map[string][]float64{}
			}
			n.ByNight[t.ID] = g.share(n.Use[t.ID], n.Nights)
		}
	}
}

// share splits a sum into so many parts.
func (g TinyMaker) share(sum float64, parts int) []float64 {
	out, left := make([]float64, parts), sum
	for i := range parts - 1 {
		out[i] = left * g.Float64()
		left -= out[i]
	}
	out[parts-1] = left
	return out
}

type TinyMaker struct{ *rand.Rand }

func (g TinyMaker) chance(share float64) bool { return g.Float64() < share }

// between is a number with two decimals.
func (g TinyMaker) between(lo, hi float64) float64 { return Round(lo+(hi-lo)*g.Float64(), 2) }

func (g TinyMaker) pace(length float64) []planner.Pace {
	var out []planner.Pace
	for at := Round(length*g.Float64(), 1); g.chance(0.4) && at > 0 && at < length && len(out) == 0; {
		out = append(out, planner.Pace{ToKm: at, MinPerKm: g.between(0.5, 2)})
	}
	return append(out, planner.Pace{ToKm: length, MinPerKm: g.between(0.6, 1.4)})
}

func (g TinyMaker) tanks() []planner.Tank {
	fuel := planner.Tank{ID: "fuel", Kind: planner.Supply, Capacity: g.between(15, 40), Reserve: 2, PerKm: 0.1}
	fuel.Start = g.between(5, fuel.Capacity)
	if g.chance(0.5) {
		fuel.End = &planner.End{AtLeast: Number(g.between(0, fuel.Capacity))}
		if g.chance(0.6) {
			fuel.End.RefillPrice = Number(g.between(0.5, 3))
		}
	}
	water := planner.Tank{ID: "water", Kind: planner.Supply, Capacity: g.between(60, 120), Reserve: 5}
	water.Start = g.between(40, water.Capacity)
	waste := planner.Tank{ID: "waste", Kind: planner.Waste, Capacity: g.between(50, 100), Reserve: g.between(0, 5), PerKm: []float64{0, 0.02}[g.IntN(2)]}
	waste.Start = g.between(0, 30)
	if g.chance(0.4) {
		waste.End = &planner.End{AtMost: Number(g.between(0, min(60, waste.Capacity)))}
	}
	battery := planner.Tank{ID: "battery", Kind: planner.Supply, Capacity: g.between(60, 120), Reserve: g.between(0, 20), PerKm: -g.between(0, 0.4)}
	battery.Start = g.between(0, battery.Capacity)
	if g.chance(0.3) {
		battery.End = &planner.End{AtLeast: Number(g.between(0, battery.Capacity))}
		if g.chance(0.5) {
			battery.End.RefillPrice = Number(g.between(0, 0.5))
		}
	}
	all := []planner.Tank{fuel, water, waste, battery}
	g.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all[:1+g.IntN(len(all))]
}

// Stop serves each tank with the given chance.
func (g TinyMaker) Stop(id string, p *planner.Problem, serves float64) planner.Stop {
	s := planner.Stop{ID: id, Km: g.between(0, p.LengthKm), StopMin: float64(g.IntN(6)), Fee: float64(g.IntN(4)), Required: g.chance(0.06)}
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
	s.Serves = []planner.Service{}
	for _, t := range p.Tanks {
		if g.chance(serves) {
			s.Serves = append(s.Serves, g.service(t, s))
		}
	}
	return s
}

func (g TinyMaker) service(t planner.Tank, at planner.Stop) planner.Service {
	x := planner.Service{Tank: t.ID, Min: float64(g.IntN(15)), Fee: float64(g.IntN(3)), GuestsOnly: at.Night != nil && g.chance(0.3)}
	if t.Kind == planner.Supply && g.chance(0.8) {
		x.Price = g.between(0.1, 2)
	}
	if g.chance(0.5) {
		x.Spare = g.between(0, t.Capacity/2)
	}
	return x
}

func (g TinyMaker) night(p *planner.Problem) *planner.Night {
	n := &planner.Night{Fee: float64(g.IntN(30)), Nights: 1, Use: map[string]float64{}}
	if g.chance(0.2) {
		n.Nights = 2
	}
	for _, t := range p.Tanks {
		switch {
		case t.PerKm < 0 && g.chance(0.5):
			n.Use[t.ID] = -g.between(0, 80) // hook-up
		case t.PerKm <= 0 || t.Kind == planner.Waste || g.chance(0.2):
			n.Use[t.ID] = g.between(0, 45) * float64(n.Nights)
		}
	}
	return n
}

// windows are one to three, over the first days.
func (g TinyMaker) windows() [][2]float64 {
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
