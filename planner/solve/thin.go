package solve

import (
	"slices"

	"ullage/planner"
	"ullage/planner/internal/model"
)

// This file leaves out stops that no plan needs, before anything is worked out of
// them. The decisions in doc.go prove it.

// thin is p without the stops that a neighbour in the list replaces, and without
// those where nothing is to be had; p itself if there are none.
func thin(p *planner.Problem) *planner.Problem {
	for _, t := range p.Tanks {
		if t.PerKm < 0 {
			return p // the longer way may be wanted
		}
	}
	t := thinner{p, true, listed(p)}
	for i := range p.Stops {
		t.always = t.always && len(p.Stops[i].Open) == 0
	}
	if !t.any() {
		return p
	}
	kept := make([]planner.Stop, 0, len(p.Stops))
	for _, s := range p.Stops {
		if t.idle(&s) {
			continue
		}
		n := len(kept)
		for n > 0 && t.replaces(&s, &kept[n-1]) {
			n--
		}
		kept = kept[:n]
		if n == 0 || !t.replaces(&kept[n-1], &s) {
			kept = append(kept, s)
		}
	}
	q := *p
	q.Stops = kept
	return &q
}

// A thinner compares stops of a problem whose tanks driving does not restore.
type thinner struct {
	p      *planner.Problem
	always bool // all is always open: nobody waits
	listed map[string]bool
}

// listed are the stops of which some list requires one.
func listed(p *planner.Problem) map[string]bool {
	out := map[string]bool{}
	for _, list := range p.RequireOne {
		for _, id := range list {
			out[id] = true
		}
	}
	return out
}

func (t *thinner) any() bool {
	for i := range t.p.Stops {
		b := &t.p.Stops[i]
		if t.idle(b) {
			return true
		}
		if i > 0 {
			if a := &t.p.Stops[i-1]; t.replaces(a, b) || t.replaces(b, a) {
				return true
			}
		}
	}
	return false
}

func (t *thinner) idle(s *planner.Stop) bool {
	return len(s.Serves) == 0 && s.Night == nil && !s.Required && !t.listed[s.ID]
}

// replaces says that a plan that calls at b, the neighbour of a, is no worse for
// calling at a instead: the way to a ends on the way to b.
func (t *thinner) replaces(a, b *planner.Stop) bool {
	from, to := min(a.Km, b.Km), max(a.Km, b.Km)
	if a.Night != nil && t.p.Backup || b.Night != nil || b.Required || t.listed[b.ID] || a.Fee > b.Fee || a.StopMin > b.StopMin || a.DetourKm/2+to-from > b.DetourKm/2 {
		return false
	}
	if len(a.Open) > 0 && !slices.Equal(a.Open, b.Open) {
		return false
	}
	if slices.ContainsFunc(b.Serves, func(y planner.Service) bool { return !serves(a, y) }) {
		return false
	}
	return a.DetourMin/2+t.p.Drive.Minutes(from, to) <= b.DetourMin/2 && t.first(a, b)
}

// serves says that the stop has a service that is no worse, by day.
func serves(a *planner.Stop, y planner.Service) bool {
	return slices.ContainsFunc(a.Serves, func(x planner.Service) bool {
		return x.Tank == y.Tank && x.Price <= y.Price && x.Fee <= y.Fee && x.Min <= y.Min && x.Spare <= y.Spare && !x.GuestsOnly
	})
}

// first says that of two plans that cost the same the one by a is the answer, or
// that they do not.
func (t *thinner) first(a, b *planner.Stop) bool {
	saves := b.Fee - a.Fee
	if t.always {
		saves += t.p.TimeCostPerH / 60 * (b.DetourMin + b.StopMin - a.DetourMin - a.StopMin)
	}
	return a.ID < b.ID || saves > 10*model.Tie
}
