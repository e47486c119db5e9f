package build

import (
	"fmt"
	"math"
	"slices"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// wayKm is km on the route and on land: a way that is left at a pier counts there.
func (b *gathering) wayKm(w trip.Way) float64 {
	km := min(max(w.At(), 0), b.Axis.LengthKm)
	if f, sea := b.Axis.AtSea(km); sea && w.LeaveKm < (f.FromKm+f.ToKm)/2 {
		return f.FromKm
	} else if sea {
		return f.ToKm
	}
	return km
}

// byRoad puts true ways in place of estimates. A pass from where no road
// leads to the place is dropped, unless the route is off the roads there. A
// place that the vehicle cannot get to stays a candidate with the reason.
func (b *gathering) byRoad() error {
	if b.Roads == nil {
		return nil
	}
	var asked []*trip.Place
	number, passes := map[string]int{}, map[string][]int{} // place → index in asked; its candidates
	for _, s := range b.Around {
		known := b.Calls[s.ID]
		id := known.Place.ID
		if _, seen := number[id]; !seen {
			number[id] = len(asked)
			asked = append(asked, known.Place)
		}
		if p := passes[id]; len(p) == 0 || p[len(p)-1] != known.Candidate {
			passes[id] = append(p, known.Candidate)
		}
	}
	ways, err := b.Roads.Ways(asked)
	if err != nil {
		return fmt.Errorf("trip: ways to places: %w", err)
	}
	of := make([][]trip.Way, len(asked))
	for _, w := range ways {
		of[w.Place] = append(of[w.Place], w)
	}
	best, dropped := map[int]trip.Way{}, map[int]bool{} // by candidate
	for id, n := range number {
		b.choose(of[n], passes[id], best, dropped)
	}
	b.rewrite(best, dropped)
	return nil
}

// choose gives each pass the shortest of the ways that are nearest to it.
func (b *gathering) choose(ways []trip.Way, passes []int, best map[int]trip.Way, dropped map[int]bool) {
	if len(ways) == 0 {
		return // the roads do not know the place: estimates stay
	}
	if i := slices.IndexFunc(ways, func(w trip.Way) bool { return !w.Closed.Nothing() }); i >= 0 {
		b.bar(passes, &ways[i].Closed)
		return
	}
	for _, w := range ways {
		at, off := -1, math.Inf(1)
		for _, c := range passes {
			if d := math.Abs(b.Candidates[c].Km - w.At()); d < off {
				at, off = c, d
			}
		}
		if old, ok := best[at]; !ok || w.Min < old.Min || w.Min == old.Min && w.Km < old.Km {
			best[at] = w
		}
	}
	for _, c := range passes {
		if _, ok := best[c]; !ok && !b.isOff(b.Candidates[c].Km) {
			dropped[c] = true
		}
	}
}

// bar leaves out the passes of a place that the vehicle cannot get to.
func (b *gathering) bar(passes []int, why *fact.Fact) {
	for _, c := range passes {
		if !b.isOff(b.Candidates[c].Km) {
			b.Candidates[c].Excluded = why
		}
	}
}

// rewrite takes ways into stops and candidates and leaves out what was
// dropped or cannot be reached.
func (b *gathering) rewrite(best map[int]trip.Way, dropped map[int]bool) {
	at := make([]int, len(b.Candidates))
	var kept []trip.Candidate
	for i, c := range b.Candidates {
		if w, ok := best[i]; ok {
			c.Km, c.ByRoad = b.wayKm(w), true
		}
		at[i] = len(kept)
		if !dropped[i] {
			kept = append(kept, c)
		}
	}
	var out []planner.Stop
	for _, s := range b.Around {
		known := b.Calls[s.ID]
		c := known.Candidate
		if dropped[c] || b.Candidates[c].Excluded != nil {
			delete(b.Calls, s.ID)
			continue
		}
		if w, ok := best[c]; ok {
			s.Km, s.DetourKm, s.DetourMin = b.Axis.Driven(b.wayKm(w)), max(w.Km, 0), max(w.Min, 0)
			known.Entry = &w.Entry
		}
		known.Candidate = at[c]
		b.Calls[s.ID] = known
		out = append(out, s)
	}
	b.Candidates, b.Around = kept, out
}
