package model

import (
	"math"
	"slices"

	"ullage/app/draw"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file asks for plans and takes the answers.

// ask wants a plan of the trip as it is now. Without places or a trip there is
// nothing to plan yet.
func (m Model) ask() Model { return m.askFor(AskPlan{}) }

// askTyped wants a plan of what a person is typing into a field.
func (m Model) askTyped(field string) Model { return m.askFor(AskPlan{Typed: true, Field: field}) }

// Touched lists what was just changed.
func (a AskPlan) Touched() []string {
	if a.Field == "" {
		return nil
	}
	return []string{a.Field}
}

func (m Model) askFor(plan AskPlan) Model {
	m = m.do(SaveTrip{})
	if !m.HasTrip() || len(m.Trip.Route) < 2 {
		return m
	}
	if m.mapMissing() {
		return m.mapless()
	}
	m.Wanted++
	m.Phase = Planning
	plan.No = m.Wanted
	return m.do(plan)
}

// mapless says that a plan would be one without places: nothing stands in for a map.
func (m Model) mapless() Model {
	if m.mapMissing() {
		m.Phase, m.Failure = Failed, fact.Of("status.no_map", fact.V{"file": fact.Text(m.Missing[0].Name)})
	}
	return m
}

// mapMissing tells whether there are no places because their map is gone.
func (m Model) mapMissing() bool {
	return len(m.Missing) > 0 && !slices.ContainsFunc(m.Files, func(f File) bool { return f.Kind == "places" })
}

type (
	// Afresh: plan without regard to the plan in use.
	Afresh struct{}
	// Avoided: plan without this place, or with it again.
	Avoided struct{ Place string }
	// Answered: a plan or a better one. Last says that no better one follows;
	// the same one may come again with more to say about it.
	Answered struct {
		No   int
		Plan trip.Itinerary
		Last bool
	}
	// PlanFailed: no answer, and why.
	PlanFailed struct {
		No  int
		Why fact.Value
	}
	// Broke: something of the program itself did.
	Broke struct{ Why string }
)

func (Afresh) update(m Model) Model {
	m.Trip.Keep = nil
	return m.ask()
}

func (msg Avoided) update(m Model) Model {
	if i := slices.Index(m.Trip.Avoid, msg.Place); i >= 0 {
		m.Trip.Avoid = slices.Delete(slices.Clone(m.Trip.Avoid), i, i+1)
	} else {
		m.Trip.Avoid = append(slices.Clip(m.Trip.Avoid), msg.Place)
	}
	return m.askFor(AskPlan{Field: "avoid"})
}

// An answer is shown unless a newer plan is asked for.
func (msg Answered) update(m Model) Model {
	if msg.No != m.Wanted {
		return m
	}
	switch msg.Plan.Status {
	case planner.Infeasible:
		m.Phase = Refused
	case planner.Optimal, planner.Feasible:
		m.Phase = Ready
		if !msg.Last {
			m.Phase = Planning
		} else if stops := msg.Plan.Stops(); m.Roads.State != RoadsComing && !slices.Equal(stops, m.Trip.Keep) {
			m.Trip.Keep = stops // the plan in use from now on: not one by estimates, if a better one is on its way
			m = m.do(SaveTrip{})
		}
	default:
		m.Phase, m.Failure = Failed, fact.Of("status.undecided", nil)
	}
	m.Plan, m.Shown, m.Axis = msg.Plan, msg.No, draw.NewAxis(msg.Plan)
	m.Cursor = math.Min(math.Max(m.Cursor, m.Axis.Start().Min), m.Axis.End().Min)
	return m.resumeReport()
}

func (msg PlanFailed) update(m Model) Model {
	if msg.No == m.Wanted {
		m.Phase, m.Failure = Failed, fact.Of("status.failed", fact.V{"why": msg.Why})
	}
	return m
}

func (msg Broke) update(m Model) Model {
	m.Phase, m.Failure = Failed, broken(msg.Why)
	return m
}

// Gap is how much a better plan could save at most.
func (p Planned) Gap() float64 { return math.Max(p.Plan.Cost-p.Plan.Bound, 0) }

// resumeReport goes on with a report from the road, now that there is a plan for it.
func (m Model) resumeReport() Model {
	if m.Resumes != nil && m.HasPlan() {
		if m.Report == nil {
			r := m.Resumes.report()
			m.Report = &r
		}
		m.Resumes = nil
	}
	return m
}
