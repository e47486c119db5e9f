package answer

import (
	"maps"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/reason"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

const (
	cureThen       fact.Kind = "cure.then"         // {what}, and what it then costs
	cureThenAtMost fact.Kind = "cure.then_at_most" // where that is not proven
)

// costs says of what was done that the trip then costs so much.
func (b asker) costs(what fact.Value, then planner.Change) fact.Fact {
	kind := cureThen
	if !then.Proven {
		kind = cureThenAtMost
	}
	return fact.Of(kind, fact.V{"what": what, "sum": fact.Money(then.Cost, b.Trip.Currency)})
}

// changeTo is a plan as what a change comes to.
func changeTo(p planner.Plan) planner.Change {
	return planner.Change{Cost: p.Cost, Proven: p.Status == planner.Optimal}
}

// A relief is one thing that may give a trip a plan: a remedy of the trip, or a
// lever of its numbers.
type relief struct {
	remedy *remedy
	lever  *reason.Lever
}

// leverFields are the fields of the form that a lever moves; those of a tank are followed by it.
var leverFields = map[fact.Kind]string{
	planner.ChangeDayKm: "max_km", planner.ChangeDayMin: "max_h", planner.ChangeNightsLess: "min_nights", planner.ChangeNightsMore: "max_nights",
	planner.ChangeStartMore: "level:", planner.ChangeStartLess: "level:",
}

// field of the form that a relief changes; "" for none.
func (r relief) field() string {
	if r.remedy != nil {
		return r.remedy.field
	}
	field := leverFields[r.lever.Kind]
	if strings.HasSuffix(field, ":") {
		field += r.lever.Tank
	}
	return field
}

// apart says whether two reliefs do not change the same thing.
func (r relief) apart(o relief) bool { return r.field() == "" || r.field() != o.field() }

// reliefs are all that there are for a trip.
func (b asker) reliefs() []relief {
	var out []relief
	for _, r := range b.remedies() {
		if t := b.Trip; r.apply(&t) {
			out = append(out, relief{remedy: &r})
		}
	}
	for _, l := range reason.Levers(b.Problem) {
		out = append(out, relief{lever: &l})
	}
	return out
}

// alone is what a relief comes to by itself; nothing if it gives no plan.
func (b asker) alone(trial reason.Trial, r relief) fact.Fact {
	if r.lever != nil {
		if c, ok := trial.Least(b.Problem, *r.lever); ok {
			return c.Fact(b.Problem, b.Trip.Currency)
		}
		return fact.Fact{}
	}
	return b.remedied(trial, r.remedy)
}

// remedied is what some remedies come to together.
func (b asker) remedied(trial reason.Trial, all ...*remedy) fact.Fact {
	p, ok := b.changed(all...)
	if !ok {
		return fact.Fact{}
	}
	plan, ok := b.planned(trial, p)
	if !ok {
		return fact.Fact{}
	}
	what := fact.Each(all, func(r *remedy) fact.Value { return fact.Clause(r.says) })
	return b.costs(what, changeTo(plan))
}

// planned is the plan of a problem that gives up some of what trips are asked: one
// that gives up nothing, if there is one.
func (b asker) planned(trial reason.Trial, p *planner.Problem) (planner.Plan, bool) {
	if whole := b.unease(p); whole != nil {
		if plan, ok := trial.Plan(whole); ok {
			return plan, true
		}
	}
	return trial.Plan(p)
}

// unease is a problem with nothing given up; nil if it is that.
func (b asker) unease(p *planner.Problem) *planner.Problem {
	if b.Ease == (build.Ease{}) {
		return nil
	}
	none := b.Built.Eased(build.Ease{}).Problem.Drive
	q := *p
	q.Drive.MoveKm, q.Drive.EndByMin = none.MoveKm, none.EndByMin
	return &q
}

// changed is the problem of the trip with remedies.
func (b asker) changed(all ...*remedy) (*planner.Problem, bool) {
	t := b.Trip
	for _, r := range all {
		if !r.apply(&t) {
			return nil, false
		}
	}
	tried, err := b.again(t)
	if err != nil {
		return nil, false
	}
	return tried.Problem, true
}

// both is what two reliefs come to together; nothing if they give no plan.
func (b asker) both(trial reason.Trial, one, two relief) fact.Fact {
	switch {
	case one.remedy != nil && two.remedy != nil:
		return b.remedied(trial, one.remedy, two.remedy)
	case one.remedy != nil:
		return b.mixed(trial, one.remedy, two.lever)
	case two.remedy != nil:
		return b.mixed(trial, two.remedy, one.lever)
	}
	c, ok := trial.Both(b.Problem, *one.lever, *two.lever)
	if !ok {
		return fact.Fact{}
	}
	return b.list(c[1], b.act(c[0]), b.act(c[1]))
}

// mixed is a remedy and as little by a lever as that leaves to do.
func (b asker) mixed(trial reason.Trial, r *remedy, l *reason.Lever) fact.Fact {
	p, ok := b.changed(r)
	if !ok {
		return fact.Fact{}
	}
	same, ok := l.Same(p)
	if !ok {
		return fact.Fact{}
	}
	c, ok := trial.Least(p, same)
	if !ok {
		return fact.Fact{}
	}
	return b.list(c, fact.Clause(r.says), b.act(c))
}

// act is what is done by a change, as a clause.
func (b asker) act(c planner.Change) fact.Value {
	return c.Fact(b.Problem, b.Trip.Currency).Values["do"]
}

// list says acts together with what the trip costs after the last change.
func (b asker) list(c planner.Change, acts ...fact.Value) fact.Fact {
	return b.costs(fact.List(acts...), c)
}

// staysLess says whether a change is only to stay elsewhere, less, or on the road
// longer: that is no cure for what the map data lack.
func staysLess(c planner.Change) bool {
	return slices.Contains([]fact.Kind{planner.ChangeNightsLess, planner.ChangeNightsMore, planner.ChangeDayKm, planner.ChangeDayMin}, c.Kind)
}

// blames is the reason of a wish that is in the way; ok is false if the relief drops none.
func (b asker) blames(r relief, cure fact.Fact) (out trip.Reason, ok bool) {
	if r.remedy == nil || r.remedy.wish == "" {
		return trip.Reason{}, false
	}
	v := maps.Clone(r.remedy.says.Values)
	if v == nil {
		v = fact.V{}
	}
	from, to := b.longestWithoutNight()
	v["from"], v["to"] = fact.Mark(from, 0), fact.Mark(to, 0)
	why := planner.Reason{Kind: r.remedy.wish, Limit: r.remedy.field, FromKm: from, ToKm: to}
	return trip.Reason{Cause: trip.CauseWish, Reason: why, Says: fact.Of(r.remedy.wish, v), Cures: []fact.Fact{cure}}, true
}

// longestWithoutNight is the longest stretch of the route beside which no place for the
// night is as the wishes want it.
func (b asker) longestWithoutNight() (from, to float64) {
	at := 0.0
	look := func(km float64) {
		if km-at > to-from {
			from, to = at, km
		}
		at = km
	}
	for _, c := range b.Candidates {
		if c.Night && c.Excluded == nil {
			look(c.Km)
		}
	}
	look(b.Axis.LengthKm)
	return from, to
}
