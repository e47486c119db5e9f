package form

import (
	"ullage/app/model"
	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Road is what the panel shows.
type Road struct {
	Say    say.Voice
	Plan   trip.Itinerary
	Report *model.Report // nil: the panel is shut
	Km     float64       // where somebody is
	Tanks  []trip.Tank
	Visits []model.Visit // here and behind
	News   []fact.Fact
	Back   bool // the last plan from the road can be taken back
	Ready  bool // the plan is one of the trip
}

// RoadOf is what the panel shows of a model.
func RoadOf(m model.Model) Road {
	out := Road{
		Say: m.Say, Plan: m.Plan, Report: m.Report, Tanks: m.Trip.Vehicle.Tanks,
		News: m.News, Back: m.Before != nil, Ready: m.HasPlan() && m.Shown == m.Wanted,
	}
	if m.Report != nil {
		out.Km, _ = m.Report.Here(m)
		out.Visits = m.Report.Visits(m)
	}
	if len(out.News) == 0 {
		out.News = learnt(m.Plan)
	}
	return out
}

// learnt says what earlier readings taught, where the page has been loaded anew since.
func learnt(it trip.Itinerary) []fact.Fact {
	var out []fact.Fact
	for _, c := range it.Counts {
		tank := fact.Tank(c.Tank, c.Name)
		switch {
		case c.Factor > 1:
			out = append(out, fact.Of("onroad.more", fact.V{"tank": tank, "share": fact.Share(c.Factor-1, 0)}))
		case c.Factor > 0 && c.Factor < 1:
			out = append(out, fact.Of("onroad.less", fact.V{"tank": tank, "share": fact.Share(1-c.Factor, 0)}))
		}
	}
	return out
}
