package model

import (
	"github.com/paulmach/orb"

	"ullage/app/field"
	"ullage/planner/trip"
)

// This file is about what is half done: letters typed, a drawing with its steps, a
// report from the road, and what a plan from there can be taken back to. All of it is
// there again on the next visit.

// Work is what is half done, as it is kept.
type Work struct {
	Format  string            `json:"format"`
	Editing bool              `json:"editing,omitempty"`
	Typed   map[string]string `json:"typed,omitempty"`
	Draft   *KeptDraft        `json:"draft,omitempty"`
	Report  *KeptReport       `json:"report,omitempty"`
}

// WorkFormat is the value of its format member.
const WorkFormat = "ullage-work-1"

// A KeptDraft is a drawing: its steps share their points, for each step has nearly all
// of those before it.
type KeptDraft struct {
	Points orb.LineString `json:"points"`
	Steps  [][]int        `json:"steps"` // numbers of points, from 0
	Now    int            `json:"now"`   // the step that is shown
	Chosen int            `json:"chosen,omitempty"`
}

// A KeptBefore is what a plan from the road can be taken back to.
type KeptBefore struct {
	Trip   trip.Trip      `json:"trip"`
	Route  orb.LineString `json:"route"` // which a trip's own JSON leaves out
	Report KeptReport     `json:"report"`
	Ticks  []string       `json:"ticks,omitempty"`
	Origin Origin         `json:"origin"`
}

// Resumed is what belongs to the trip of the last visit.
type Resumed struct {
	Origin KeptOrigin
	Work   Work
	Before *KeptBefore
}

// WorkOf is what is half done in a model.
func WorkOf(m Model) Work {
	w := Work{Format: WorkFormat, Editing: m.Editing, Typed: m.Typed}
	if m.Draft != nil {
		w.Draft = m.Draft.kept(ShownAt(m.Draft.Points, m.Legs.Of(m.Draft.Points)))
	}
	if r := m.Report; r != nil {
		k := r.kept()
		w.Report = &k
	} else {
		w.Report = m.Resumes
	}
	return w
}

// Nothing tells whether nothing is half done.
func (w Work) Nothing() bool {
	return !w.Editing && len(w.Typed) == 0 && w.Draft == nil && w.Report == nil
}

// BeforeOf is what a plan from the road can be taken back to.
func BeforeOf(b Before) KeptBefore {
	return KeptBefore{b.Trip, b.Trip.Route, b.Report.kept(), b.Ticks, b.Origin}
}

// mostSteps of a drawing are kept, to either side.
const mostSteps = 100

// kept is a drawing as it is kept; its points are those on the road.
func (d Draft) kept(points orb.LineString) *KeptDraft {
	k := &KeptDraft{Chosen: d.Chosen}
	number := map[orb.Point]int{}
	step := func(points orb.LineString) {
		s := make([]int, len(points))
		for i, p := range points {
			n, known := number[p]
			if !known {
				n = len(k.Points)
				number[p], k.Points = n, append(k.Points, p)
			}
			s[i] = n
		}
		k.Steps = append(k.Steps, s)
	}
	for _, s := range d.Before[max(len(d.Before)-mostSteps, 0):] {
		step(s)
	}
	k.Now = len(k.Steps)
	step(points)
	for i := len(d.After) - 1; i >= max(len(d.After)-mostSteps, 0); i-- { // the next one is the last
		step(d.After[i])
	}
	return k
}

// draft is the drawing that was kept; nil if it is none.
func (k *KeptDraft) draft() *Draft {
	if k == nil || k.Now < 0 || k.Now >= len(k.Steps) {
		return nil
	}
	steps := make([]orb.LineString, len(k.Steps))
	for i, s := range k.Steps {
		for _, n := range s {
			if n < 0 || n >= len(k.Points) {
				return nil
			}
			steps[i] = append(steps[i], k.Points[n])
		}
	}
	d := Draft{Before: steps[:k.Now], Points: steps[k.Now]}
	for i := len(steps) - 1; i > k.Now; i-- { // the next one is the last
		d.After = append(d.After, steps[i])
	}
	return d.choose(k.Chosen - 1)
}

func (r Report) kept() KeptReport { return KeptReport{r.Said, r.At, r.Clock, r.Closed} }

// resume takes up what was half done on the last visit.
func (m Model) resume(r Resumed) Model {
	m = m.origin(r.Origin)
	m.Editing, m.Typed, m.Resumes = r.Work.Editing, r.Work.Typed, r.Work.Report
	if d := r.Work.Draft.draft(); d != nil {
		m.Draft = d
	}
	for _, f := range field.Of(m.Trip, m.Fleet, m.Say) { // what is wrong with a text is said again
		if text, typed := m.Typed[f.Key]; typed {
			_, wrong := f.Set(m.Trip, text)
			m.Form = m.wrong(f.Key, wrong)
		}
	}
	if b := r.Before; b != nil {
		b.Trip.Route = b.Route
		m.Before = &Before{b.Trip, b.Report.report(), b.Ticks, b.Origin}
	}
	return m
}
