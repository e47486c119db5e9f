package byroad

import (
	"math"
	"slices"

	"ullage/geo/road"
	"ullage/planner/fact"
)

// A remark is one thing to mind and all the places where it holds.
type remark struct {
	note road.Note // the first
	at   []fact.Value
}

// named is how many places of one remark are listed.
const named = 6

// cautions says what to mind along the course, what the vehicle may not do
// first. Things of one kind are one fact with all their positions.
func cautions(own *road.Router, c road.Course, r rule) []fact.Fact {
	var list []*remark
	add := func(n road.Note, m float64) {
		at := where(n, r.at(m+n.AlongM)/1000)
		for _, x := range list {
			if x.note.Kind == n.Kind && x.note.Bar == n.Bar && x.note.Tags == n.Tags {
				if !said(x.at, at) {
					x.at = append(x.at, at)
				}
				return
			}
		}
		list = append(list, &remark{n, []fact.Value{at}})
	}
	m := 0.0
	for _, s := range c {
		p := own.PathOf(s.Steps)
		for _, n := range own.Avoided(p) {
			add(n, m)
		}
		for _, n := range own.Notes(p) {
			add(n, m)
		}
		length, _ := own.Measure(road.Course{s})
		m += length
	}
	var out []fact.Fact
	for _, kind := range order {
		for _, x := range list {
			if x.note.Kind == kind {
				out = append(out, x.fact())
			}
		}
	}
	return out
}

// order is by what can go wrong. A trip itself says what it counts for a ferry.
var order = [...]road.NoteKind{road.Barred, road.UnclearLimit, road.TurnAtTimes, road.UnstatedHeadroom, road.GasRules, road.GasOnFerry, road.GateNote,
	road.NarrowNote, road.UnpavedNote, road.GuestsNote, road.TollNote}

// said: two things on one spot, a bridge for each direction or two roofs over a
// ramp, are read as one.
func said(list []fact.Value, at fact.Value) bool {
	return slices.ContainsFunc(list, func(v fact.Value) bool { return v.Fact.Equal(*at.Fact) })
}

// where is a position along the route, with the road's name.
func where(n road.Note, km float64) fact.Value {
	v := fact.V{"mark": fact.Mark(math.Round(10*km)/10, 1)}
	if n.Road != "" {
		v["road"] = fact.Text(n.Road)
	}
	return fact.Clause(fact.Of("road.at", v))
}

func (x *remark) fact() fact.Fact {
	places := fact.V{"places": fact.List(x.at[:min(len(x.at), named)]...)}
	if more := len(x.at) - named; more > 0 {
		places["others"] = fact.Count(more)
	}
	v := fact.V{"where": fact.Clause(fact.Of("road.where", places))}
	if x.note.Kind == road.Barred {
		v["why"] = fact.Clause(barred(x.note.Bar))
	}
	if x.note.Tags != "" {
		v["facts"] = fact.Text(x.note.Tags)
	}
	return fact.Of(cautionKinds[x.note.Kind], v)
}
