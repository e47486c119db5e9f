package model

import (
	"slices"

	"ullage/app/field"
	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// This file goes on from where somebody is.

type (
	// WentOn: plan from here. WentBack takes that back.
	WentOn   struct{}
	WentBack struct{}
)

// A Visit is a stop here or behind, and whether it was called at.
type Visit struct {
	Call trip.Call
	Made bool
}

// Visits are the stops here and behind. What is said of one counts; else the
// ticks, if any stop is ticked off; else all are made that the clock leaves time for.
func (r Report) Visits(m Model) []Visit {
	km, ok := r.Here(m)
	passed, err := onward.Behind(m.Trip, m.Plan, km, trip.Moment(r.Said[RoadTime]))
	if !ok || err != nil {
		return nil
	}
	ticks := slices.ContainsFunc(Calls(m.Plan), m.Ticked)
	var out []Visit
	for _, p := range passed {
		v := Visit{p.Call, p.Over}
		if ticks {
			v.Made = m.Ticked(p.Call)
		}
		if said := r.Said[RoadMade+p.Call.Stop]; said != "" {
			v.Made = said == "true"
		}
		out = append(out, v)
	}
	return out
}

// now is what was said, as the planner takes it, or what is wrong with it.
func (r Report) now(m Model) (onward.Now, fact.Fact) {
	n := onward.Now{At: r.At, Time: trip.Moment(r.Said[RoadTime]), Closed: r.Closed, Gauges: map[string]onward.Shown{}, Called: map[string]bool{}}
	for _, v := range r.Visits(m) {
		n.Called[v.Call.Stop] = v.Made
	}
	if r.At == nil {
		km, ok := r.Here(m)
		if !ok {
			return n, fact.Of("onroad.want_place", fact.V{"length": fact.Km(m.Plan.LengthKm, -1)})
		}
		km += m.Trip.DoneKm
		n.Km = &km
	}
	for _, k := range m.Trip.Vehicle.Tanks {
		shown, wrong := r.gauge(k, m.Say)
		if !wrong.Nothing() {
			return n, fact.Of("onroad.want_gauge", fact.V{"tank": fact.Tank(k.ID, k.Name), "what": fact.Clause(wrong)})
		}
		if shown != nil {
			n.Gauges[k.ID] = *shown
		}
	}
	return n, fact.Fact{}
}

// gauge is what a tank's gauge was said to show; nil: nothing was.
func (r Report) gauge(k trip.Tank, v say.Voice) (*onward.Shown, fact.Fact) {
	kind, text := r.Said[RoadKind+k.ID], r.Said[RoadValue+k.ID]
	if kind == "" || text == "" {
		return nil, fact.Fact{}
	}
	unit, most := v.Unit("%"), 100.0
	if kind == life.LitreGauge {
		unit, most = v.Unit(k.Unit), k.Capacity
	}
	value, wrong := field.Shown(text, unit, 0, most)
	return &onward.Shown{Kind: kind, Value: value}, wrong
}

// The rest of the trip is made out of what was said; what the gauges taught is
// told in a line each.
func (WentOn) update(m Model) Model {
	if m.Report == nil {
		return m
	}
	now, wrong := m.Report.now(m)
	var o onward.Rest
	if wrong.Nothing() {
		var err error
		if o, err = onward.From(m.Trip, m.Plan, now); err != nil {
			wrong = roadTrouble(err)
		}
	}
	if !wrong.Nothing() {
		r := *m.Report
		r.Wrong = wrong
		m.Report = &r
		return m
	}
	m.Before, m.News = &Before{m.Trip, *m.Report, m.Ticks, m.Origin}, nil
	m = m.untick(StopTicks) // what is behind is history now
	for _, l := range o.Lessons {
		m.News = append(m.News, l.Says...)
	}
	m.News = append(m.News, o.Notes...)
	m.Trip, m.Report, m.Typed, m.Wrong, m.Cursor = o.Trip, nil, nil, nil, 0
	m.Origin = Origin{} // it is of the whole route
	return m.do(ShowRoad{}).ask()
}

func (WentBack) update(m Model) Model {
	if m.Before == nil {
		return m
	}
	b := *m.Before
	m.Trip, m.Report, m.Origin, m.Ticks = b.Trip, &b.Report, b.Origin, b.Ticks
	m.Before, m.News = nil, nil
	return m.do(SaveMarks{}).ask()
}
