package reason

import (
	"cmp"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/solve"
)

// This file goes as far as an impossible trip can go: what a plan would be if
// limits gave way, as little as it takes.

// NearestFormat is the value of [Nearest.Format]. It is no format of a plan:
// what reads plans refuses it.
const NearestFormat = "ullage-nearest-1"

// A Nearest is the trip that breaks least of a problem without a plan. It is
// not valid and never a [planner.Plan]: tanks are below their reserve or empty, days
// too long, nights too few. [audit.Check] refuses its visits.
//
// Least is measured as the sum of what each broken limit is missed by, as a
// share of it: of a tank's capacity, of the day's kilometres or minutes; a
// night too many or too few, closed doors, a required stop left out, or no
// backup count as 1. Where one limit can give way alone, it is the least of
// those. Otherwise several give way, and none of them could give way less
// (down to 0.1 units, 1 km, 1 minute, 1 night) with the others as they are.
type Nearest struct {
	Format string           `json:"format"`
	Breach float64          `json:"breach"` // > 0, the measure
	Broken []planner.Reason `json:"broken"` // each limit: where, by how much
	Cost   float64          `json:"cost"`
	Visits []planner.Visit  `json:"visits"` // levels as they would be: also below 0 or above capacity
	End    planner.PlanEnd  `json:"end"`
}

// nearest makes limits give way; nil if no way is found, or not in time.
func (e *explainer) nearest(p *planner.Problem, alone []loosened) *Nearest {
	if e.ctx.Err() != nil {
		return nil // what breaks less may not have been tried
	}
	var broken []loosened
	if len(alone) > 0 {
		broken = []loosened{slices.MinFunc(alone, func(a, b loosened) int { return cmp.Compare(a.breach(), b.breach()) })}
	} else {
		all := limits(p)
		broken = e.together(p, all)
		slices.Reverse(all) // which one gives way first decides who is left to: the other order may break less
		if other := e.together(p, all); other != nil && breach(other) < breach(broken) {
			broken = other
		}
	}
	if broken == nil {
		return nil
	}
	q := loose(p, broken)
	plan, ok := solve.Any(e.ctx, q)
	if better, err := solve.Solve(e.ctx, q, e.opt); err == nil && better.End != nil {
		plan, ok = better, true
	}
	if !ok || e.ctx.Err() != nil {
		return nil
	}
	return asNearest(p, broken, plan)
}

// together lets all limits give way by all they can, then holds one after the
// other as far as the rest allows; nil if no way is found.
func (e *explainer) together(p *planner.Problem, all []change) []loosened {
	given := make([]loosened, 0, len(all))
	for _, l := range all {
		given = append(given, loosened{l, l.most})
	}
	if !e.possible(loose(p, given)) {
		return nil
	}
	for i := range given {
		l := &given[i]
		l.x = 0
		if rest := loose(p, given); !e.possible(rest) {
			x, ok := e.smallest(rest, l.change)
			if !ok {
				return nil // time is up
			}
			l.x = x
		}
	}
	return slices.DeleteFunc(given, func(l loosened) bool { return l.x == 0 })
}

// loose is p with all of that given way.
func loose(p *planner.Problem, given []loosened) *planner.Problem {
	q := p.Clone()
	for _, l := range given {
		if l.x > 0 {
			l.apply(q, l.x)
		}
	}
	return q
}

func (l loosened) breach() float64 { return l.x / cmp.Or(l.scale, 1) }

func breach(given []loosened) float64 {
	if given == nil {
		return math.Inf(1)
	}
	sum := 0.0
	for _, l := range given {
		sum += l.breach()
	}
	return sum
}

// asNearest says a plan of the loosened problem in the levels of p, and what it breaks.
func asNearest(p *planner.Problem, broken []loosened, plan planner.Plan) *Nearest {
	n := &Nearest{Format: NearestFormat, Breach: breach(broken), Cost: plan.Cost, Visits: plan.Visits, End: *plan.End}
	for _, l := range broken {
		r := planner.Reason{Kind: l.kind, Limit: l.limit, ToKm: p.LengthKm, Missing: l.x}
		if l.step == 0 {
			r.Missing = 0
		}
		if l.tank != "" && l.larger {
			i := slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == l.tank })
			n.lower(p.Tanks[i], l.x)
			if from, to, missing := n.worst(p, p.Tanks[i]); missing > planner.Tolerance { // else the spare of a stop is missed
				r.FromKm, r.ToKm, r.Missing = from, to, missing
			}
		}
		n.Broken = append(n.Broken, r)
	}
	return n
}

// lower takes back what a supply tank was made larger by and started with.
func (n *Nearest) lower(t planner.Tank, x float64) {
	if t.Kind != planner.Supply {
		return
	}
	for _, v := range n.Visits {
		v.Arrive.Levels[t.ID] -= x
		v.Leave.Levels[t.ID] -= x
	}
	n.End.Levels[t.ID] -= x
}

// worst is the stretch that ends where a tank is missed by most, and by how much.
func (n *Nearest) worst(p *planner.Problem, t planner.Tank) (from, to, missing float64) {
	at := 0.0
	look := func(km, level, keep float64) {
		if m := keep - t.Swap(level); m > missing {
			from, to, missing = at, km, m
		}
	}
	for _, v := range n.Visits {
		look(v.Arrive.Km, v.Arrive.Levels[t.ID], t.Reserve)
		look(v.Leave.Km, v.Leave.Levels[t.ID], t.Reserve)
		if slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == t.ID }) {
			at = v.Leave.Km
		}
	}
	look(p.LengthKm, n.End.Levels[t.ID], t.EndHeadroom())
	return from, to, missing
}
