package reason

import (
	"context"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/solve"
)

// This file has what a hirer can change about a problem, to be tried singly and in
// pairs by whoever knows more about the trip than the numbers tell.

// A Lever is one thing that a hirer can change about a problem, by some amount.
type Lever struct {
	Kind fact.Kind // of the [planner.Change] that it makes
	Tank string    // "": of none
	by   change
}

// Levers are all that a hirer can change about a problem: what is in each tank
// at the start, what it must hold at the end, how much of it is used, the day, the
// nights.
func Levers(p *planner.Problem) []Lever {
	var out []Lever
	for _, limit := range limits(p) {
		for _, c := range hirerChanges(p, limit) {
			l := Lever{c.kind, c.tank, c}
			again := slices.ContainsFunc(out, func(o Lever) bool { return o.Kind == l.Kind && o.Tank == l.Tank })
			if c.most > 0 && !again && !(c.kind == planner.ChangeNightsMore && c.tank != "") { // it is one of the trip
				out = append(out, l)
			}
		}
	}
	return out
}

// Same is the lever of another problem of the same trip; ok is false where it has none.
func (l Lever) Same(p *planner.Problem) (Lever, bool) {
	for _, other := range Levers(p) {
		if other.Kind == l.Kind && other.Tank == l.Tank {
			return other, true
		}
	}
	return Lever{}, false
}

// A Trial finds out what changes to a problem come to. opt.MaxLabels bounds each of the
// problems that it solves.
type Trial struct{ e *explainer }

// NewTrial until ctx ends.
func NewTrial(ctx context.Context, opt solve.Options) Trial { return Trial{newExplainer(ctx, opt)} }

// Err is what went wrong, not that there was no plan; nil: nothing.
func (t Trial) Err() error { return t.e.err }

// Solves says whether a plan of the problem is found.
func (t Trial) Solves(p *planner.Problem) bool { return t.e.possible(p) }

// Plan is the best plan that is found; ok is false where there is none.
func (t Trial) Plan(p *planner.Problem) (plan planner.Plan, ok bool) {
	if len(planner.Shortfall(p)) > 0 {
		return planner.Plan{}, false
	}
	return t.e.plan(p)
}

// Least is the smallest change by a lever that allows a plan; ok is false where none
// is found.
func (t Trial) Least(p *planner.Problem, l Lever) (c planner.Change, ok bool) {
	x, ok := t.e.smallest(p, l.by)
	if !ok {
		return planner.Change{}, false
	}
	return t.e.told(changed(p, l.by, x), l.by, x)
}

// Both are changes by two levers that allow a plan together: the second as small
// as it can be with all of the first, then the first as small as that allows.
func (t Trial) Both(p *planner.Problem, one, two Lever) (out [2]planner.Change, ok bool) {
	second, ok := t.e.smallest(changed(p, one.by, one.by.most), two.by)
	if !ok {
		return out, false
	}
	q := changed(p, two.by, second)
	first, ok := t.e.smallest(q, one.by)
	if !ok {
		return out, false
	}
	whole := changed(q, one.by, first)
	if out[0], ok = t.e.told(whole, one.by, first); !ok {
		return out, false
	}
	out[1], ok = t.e.told(whole, two.by, second)
	return out, ok
}
