package answer

import (
	"context"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
)

// Kinds of what was tried in vain.
const (
	triedAll  fact.Kind = "tried.all"  // {n} changes singly, and all in pairs: none helps
	triedSome fact.Kind = "tried.some" // {n} singly, and {pairs} pairs of them; others were not
	triedCut  fact.Kind = "tried.cut"  // time ran out: others were not
)

const (
	// enoughCures: pairs are not looked for where so many are known, and so many pairs are enough. Own choice.
	enoughCures = 3
	// mostPairs bounds the pairs that are tried: each is a problem to be built and solved.
	mostPairs = 200
)

// A trying tries reliefs of a trip without a plan, and tells of each that helps.
type trying struct {
	asker
	ctx     context.Context
	trial   reason.Trial
	touched []string
	found   []fact.Fact
	tell    func(found []fact.Fact)
	vain    []relief // tried alone, without a plan
	done    []relief
	paired  int  // pairs tried
	left    bool // there are pairs that were not
}

// keep is a cure that was found.
func (t *trying) keep(cure fact.Fact) bool {
	if cure.Nothing() || fact.Contains(t.found, cure) {
		return false
	}
	t.found = append(t.found, cure)
	t.tell(t.found)
	return true
}

// one tries one relief by itself, if it was not; the cure is nothing if it is none.
func (t *trying) one(r relief) (cure fact.Fact) {
	if t.ctx.Err() != nil || slices.ContainsFunc(t.done, func(o relief) bool { return o.same(r) }) {
		return fact.Fact{}
	}
	cure = t.alone(t.trial, r)
	if t.ctx.Err() != nil {
		return fact.Fact{}
	}
	t.done = append(t.done, r)
	if cure.Nothing() {
		t.vain = append(t.vain, r)
	}
	return cure
}

// same says whether two reliefs are one.
func (r relief) same(o relief) bool {
	if r.remedy != nil && o.remedy != nil {
		return r.remedy.says.Equal(o.remedy.says)
	}
	return r.lever != nil && o.lever != nil && r.lever.Kind == o.lever.Kind && r.lever.Tank == o.lever.Tank
}

// pairs tries two reliefs together, of those that did not help alone: those
// with a field that was just touched first.
func (t *trying) pairs() {
	found := 0
	list := slices.DeleteFunc(slices.Clone(t.vain), func(r relief) bool { return r.lever != nil && r.lever.Kind == planner.ChangeUseLess }) // habits are how
	for _, touched := range []bool{true, false} {
		for i, a := range list {
			for _, b := range list[i+1:] {
				if !a.apart(b) || touched != (t.isTouched(a) || t.isTouched(b)) {
					continue
				}
				if t.ctx.Err() != nil || t.paired == mostPairs || found == enoughCures {
					t.left = true
					return
				}
				t.paired++
				if t.keep(t.both(t.trial, a, b)) {
					found++
				}
			}
		}
	}
}

func (t *trying) isTouched(r relief) bool { return slices.Contains(t.touched, r.field()) }

// tried says what was tried in vain, or not tried for want of time; nothing where
// enough is known.
func (t *trying) tried(cures int) fact.Fact {
	switch {
	case t.ctx.Err() != nil:
		return fact.Of(triedCut, nil)
	case cures > 0:
		return fact.Fact{}
	case !t.left:
		return fact.Of(triedAll, fact.V{"n": fact.Count(len(t.done))})
	}
	return fact.Of(triedSome, fact.V{"n": fact.Count(len(t.done)), "pairs": fact.Count(t.paired)})
}
