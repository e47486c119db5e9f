package planner

// This file proves the plain cases of a problem without a plan, so that nobody
// waits for a search to say so.

import (
	"math"
	"slices"

	"ullage/planner/fact"
)

// Shortfall lists limits that no plan can keep, whatever it does: each is a
// proof by itself. None listed proves nothing. The problem must be valid.
//
//   - A tank between two places that restore it (or the start, or the end):
//     driving and the nights that must fall between take more than it holds.
//   - A stretch without a place for the night that is longer than a day.
//   - More nights than are offered, or more days than nights allow.
//   - Tanks that are too heavy to set off with.
//
// Everything else is taken at its kindest: detours cost nothing, every place
// fills up to the brim, the cheapest nights fall in the stretch. Tanks that
// driving restores are left out. O(stops·log stops · tanks).
func Shortfall(p *Problem) []Reason {
	var out []Reason
	for _, t := range p.Tanks {
		if r := tankShort(p, t); r.Missing > surely {
			out = append(out, r)
		}
	}
	return append(append(out, nightsShort(p)...), heavyStart(p)...)
}

// heavyStart: the tanks are too heavy before anything can be done about it.
func heavyStart(p *Problem) []Reason {
	if p.Mass == nil {
		return nil
	}
	over := p.Mass.Of(p.Tanks, func(i int) float64 { return p.Tanks[i].Start }) - p.Mass.Most
	if over <= surely {
		return nil
	}
	return []Reason{{Kind: ReasonMass, Limit: "mass", Missing: over}}
}

// surely is more than tolerances can add up to in one stretch.
const surely = 10 * Tolerance

// tankShort is the stretch on which the tank is most short.
func tankShort(p *Problem, t Tank) Reason {
	worst := Reason{Kind: ReasonTank, Limit: t.ID}
	if t.PerKm < 0 {
		return worst
	}
	wished, offered := 0, p.NightsOffered()
	if p.Nights != nil {
		wished = p.Nights.Min
	}
	var stays []Night // in the stretch: what the wish asks for and all others do not offer, they must
	from, have := 0.0, t.Swap(t.Start)
	check := func(to, keep float64) {
		missing := keep + t.PerKm*(to-from) + leastUse(t.ID, stays, staysWithin(p, from, to), wished-(offered-nightsOf(stays))) - have
		if missing > worst.Missing {
			worst.FromKm, worst.ToKm, worst.Missing = from, to, missing
		}
	}
	for _, s := range p.Stops {
		switch {
		case s.restores(t.ID):
			check(s.Km, t.Reserve)
			from, have, stays = s.Km, t.Capacity, nil
		case s.Night != nil && s.Km > from:
			stays = append(stays, *s.Night)
		}
	}
	check(p.LengthKm, t.EndHeadroom())
	return worst
}

// restores is true if the tank can gain at the stop.
func (s Stop) restores(tank string) bool {
	return s.Night != nil && s.Night.Use[tank] < 0 ||
		slices.ContainsFunc(s.Serves, func(x Service) bool { return x.Tank == tank })
}

// staysWithin is how many stays fall between two positions at least: with n
// of them, n + 1 days cover the stretch, the first and last maybe in part.
func staysWithin(p *Problem, from, to float64) int {
	d := p.Drive
	days := max((to-from)/(d.MaxKmPerDay+Tolerance), d.Minutes(from, to)/(d.MaxMinPerDay+Tolerance))
	return max(0, int(math.Ceil(days-1e-9))-1)
}

func nightsOf(stays []Night) int {
	n := 0
	for _, s := range stays {
		n += s.Nights
	}
	return n
}

// leastUse of a tank by some of the stays: at least count of them, and nights
// nights; of the last stay, only the part that is needed.
func leastUse(tank string, stays []Night, count, nights int) float64 {
	whole, single := make([]float64, 0, len(stays)), make([]float64, 0, len(stays))
	for _, n := range stays {
		whole = append(whole, n.Use[tank])
		for range n.Nights {
			single = append(single, n.Use[tank]/float64(n.Nights))
		}
	}
	return max(sumOfLeast(whole, count), sumOfLeast(single, nights))
}

func sumOfLeast(list []float64, n int) (sum float64) {
	slices.Sort(list)
	for _, x := range list[:max(0, min(n, len(list)))] {
		sum += x
	}
	return sum
}

// nightsShort finds days that no night ends in time, and nights that cannot be had.
func nightsShort(p *Problem) []Reason {
	d := p.Drive
	km, minutes := Reason{Kind: ReasonDayKm, Limit: "km"}, Reason{Kind: ReasonDayMin, Limit: "min"}
	from := 0.0
	check := func(to float64) {
		keep := func(worst *Reason, missing float64) {
			if missing > max(worst.Missing, surely) {
				worst.FromKm, worst.ToKm, worst.Missing = from, to, missing
			}
		}
		keep(&km, to-from-d.MaxKmPerDay)
		keep(&minutes, d.Minutes(from, to)-d.MaxMinPerDay)
	}
	for _, s := range p.Stops {
		if s.Night != nil {
			check(s.Km)
			from = s.Km
		}
	}
	check(p.LengthKm)
	out := slices.DeleteFunc([]Reason{km, minutes}, func(r Reason) bool { return r.Missing == 0 })
	nights := func(kind fact.Kind, missing int) {
		if missing > 0 {
			out = append(out, Reason{Kind: kind, Limit: "nights", ToKm: p.LengthKm, Missing: float64(missing)})
		}
	}
	if p.Nights != nil {
		nights(ReasonNightsLess, p.Nights.Min-p.NightsOffered())
		nights(ReasonNightsMore, staysWithin(p, 0, p.LengthKm)-p.Nights.Max)
	}
	return out
}
