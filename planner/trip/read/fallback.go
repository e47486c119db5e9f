package read

import (
	"errors"
	"slices"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/fact"
)

// Kinds of what becomes of the trip if a place is closed.
const (
	fallbackPlace   fact.Kind = "fallback.place"
	fallbackLeft    fact.Kind = "fallback.left"
	fallbackRoom    fact.Kind = "fallback.room"
	fallbackNight   fact.Kind = "fallback.night"
	fallbackWait    fact.Kind = "fallback.wait"
	fallbackLongDay fact.Kind = "fallback.long_day"

	noWayOn     fact.Kind = "call.no_way_on"
	closedTank  fact.Kind = "closed.tank"
	closedEnd   fact.Kind = "closed.end"
	closedNight fact.Kind = "closed.night"
	closedRest  fact.Kind = "closed.rest"
)

func byStop(closures []backup.Closure) map[string]*backup.Closure {
	out := map[string]*backup.Closure{}
	for i := range closures {
		out[closures[i].Stop] = &closures[i]
	}
	return out
}

// A detour is the way on round a closed place: who helps instead, with what.
type detour struct {
	closed *backup.Closure
	places []string                // stops in their order
	does   map[string][]fact.Value // by stop: what for
	wait   []fact.Value            // what is not looked for again on that way
}

// missed is something that was to be done at the closed place.
func (d *detour) missed(what string, name fact.Value, there func(planner.Moment) fact.Value) {
	id, ok := d.closed.Fallback[what]
	if !ok {
		d.wait = append(d.wait, name)
		return
	}
	if d.does[id] == nil {
		d.places = append(d.places, id)
	}
	i := slices.IndexFunc(d.closed.Plan.Visits, func(v planner.Visit) bool { return v.Stop == id })
	d.does[id] = append(d.does[id], there(d.closed.Plan.Visits[i].Arrive))
}

// fallback says where to go instead if the place of a visit is closed, as the
// way on was driven: with how much left, or when for the night. What is not
// looked for again on that way can wait.
func (b reader) fallback(s *planner.Stop, v planner.Visit, closed *backup.Closure) []fact.Fact {
	d := detour{closed: closed, does: map[string][]fact.Value{}}
	for _, t := range b.Problem.Tanks {
		if slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == t.ID }) {
			d.missed(t.ID, b.called(t.ID), func(arrive planner.Moment) fact.Value { return b.left(t, arrive.Levels[t.ID]) })
		}
	}
	if v.Night {
		d.missed(planner.NightFallback, fact.Term("fallback.the_night"), func(arrive planner.Moment) fact.Value {
			return fact.Clause(fact.Of(fallbackNight, fact.V{"clock": fact.Clock(arrive.Min)}))
		})
	}
	var out []fact.Fact
	for _, id := range d.places {
		i := slices.IndexFunc(b.Around, func(x planner.Stop) bool { return x.ID == id })
		km := max(b.Axis.Route(b.Around[i].Km)-b.Axis.Route(s.Km), 0)
		out = append(out, fact.Of(fallbackPlace, fact.V{"name": b.Calls[id].Place.Called(), "km": fact.Km(km, 0), "what": fact.List(d.does[id]...)}))
	}
	if len(d.wait) > 0 {
		out = append(out, fact.Of(fallbackWait, fact.V{"what": fact.List(d.wait...)}))
	}
	if closed.LongDay {
		out = append(out, fact.Of(fallbackLongDay, nil))
	}
	return out
}

// left is a tank with what is in hand on arrival at a fallback.
func (b reader) left(t planner.Tank, level float64) fact.Value {
	kind := fallbackLeft
	if t.Kind == planner.Waste {
		kind, level = fallbackRoom, t.Capacity-level
	}
	return fact.Clause(fact.Of(kind, fact.V{"tank": b.called(t.ID), "left": fact.Quantity(level, t.Unit, 0)}))
}

// noWayOn warns of a place that the trip stands or falls with.
func (b reader) noWayOn(closed *backup.Closure) fact.Fact {
	why := fact.Of(closedRest, nil)
	var broken *planner.Broken
	if errors.As(closed.Err, &broken) {
		tank := fact.V{"tank": b.called(broken.Tank)}
		switch broken.Rule {
		case planner.RuleReserve:
			why = fact.Of(closedTank, tank)
		case planner.RuleEnd:
			why = fact.Of(closedEnd, tank)
		case planner.RuleDayKm, planner.RuleDayMin:
			why = fact.Of(closedNight, nil)
		}
	}
	return fact.Of(noWayOn, fact.V{"why": fact.Clause(why)})
}
