package model

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/paulmach/orb"

	"ullage/app/field"
	"ullage/planner/fact"
)

// This file is what somebody on the road says: where, when, what the gauges
// show and what is closed.

// Keys of the controls; those of gauges and places end with an id.
const (
	RoadPrefix = "road:"
	RoadWhere  = "road:where" // number of a stop
	RoadKm     = "road:km"
	RoadTime   = "road:time"
	RoadMade   = "road:made:" // id of a stop
	RoadKind   = "road:kind:"
	RoadValue  = "road:value:"
	RoadClosed = "road:closed:"
	RoadOther  = "road:other"
)

// NowLayout is that of an input of local time, and of [onward.Now].
const NowLayout = "2006-01-02T15:04"

type (
	// ReportToggled opens or shuts the panel of the road; Now is this machine's time.
	ReportToggled struct{ Now string }
	// ReportPointed: here, on the map, nearest to this kilometre.
	ReportPointed struct {
		Point orb.Point
		Km    float64
	}
)

func (msg ReportToggled) update(m Model) Model {
	if m.Report != nil || !m.HasPlan() {
		m.Report = nil
		return m.do(SaveTrip{})
	}
	m.Report = newReport(m, msg.Now)
	return m.lookHere().do(SaveTrip{})
}

func (msg ReportPointed) update(m Model) Model {
	if m.Report == nil {
		return m
	}
	r := m.Report.km(m, msg.Km)
	r.At, r.Said = &msg.Point, with(r.Said, RoadWhere, "")
	m.Report = r
	return m.lookHere().do(SaveTrip{})
}

// heard takes the text of a control of the panel.
func (m Model) heard(key, text string) Model {
	if m.Report == nil {
		return m
	}
	m.Report = m.Report.hear(m, key, text)
	if tank, is := strings.CutPrefix(key, RoadKind); is {
		m.Gauges = with(m.Gauges, m.Trip.Vehicle.ID+"/"+tank, text)
		m = m.do(SaveMarks{})
	}
	return m.lookHere().do(SaveTrip{})
}

// lookHere puts the cursor where somebody on the road is.
func (m Model) lookHere() Model {
	if km, ok := m.Report.Here(m); ok {
		m.Cursor = m.Axis.AtKm(km).Min
	}
	return m
}

// newReport begins where the plan is now, if the trip is under way, or else at
// the cursor; not before the last stop that is ticked. Kinds of gauges are those
// of the last time.
func newReport(m Model, now string) *Report {
	r := &Report{}
	for _, k := range m.Trip.Vehicle.Tanks {
		r.Said = with(r.Said, RoadKind+k.ID, m.Gauges[m.Trip.Vehicle.ID+"/"+k.ID])
	}
	min := m.Cursor
	start := m.Trip.Start.Time()
	if at, err := time.Parse(NowLayout, now); err == nil {
		if n := at.Sub(start).Minutes(); n >= m.Axis.Start().Min && n <= m.Axis.End().Min {
			min, r.Clock, r.Said = n, true, with(r.Said, RoadTime, now)
		}
	}
	for _, c := range Calls(m.Plan) {
		if m.Ticked(c) {
			min = math.Max(min, c.ArriveMin)
		}
	}
	return r.at(m, min)
}

// at returns what is said with place and time of the plan at a minute.
func (r Report) at(m Model, min float64) *Report {
	r.At, r.Device = nil, fact.Fact{}
	if !r.Clock {
		start := m.Trip.Start.Time()
		r.Said = with(r.Said, RoadTime, start.Add(time.Duration(min)*time.Minute).Format(NowLayout))
	}
	return r.km(m, m.Axis.AtMin(min).Km)
}

func (r Report) km(m Model, km float64) *Report {
	r.Said = with(r.Said, RoadKm, field.Plain(m.Say.Shown(km+m.Trip.DoneKm, "km")))
	return &r
}

// hear takes a control's text.
func (r Report) hear(m Model, key, text string) *Report {
	r.Said = with(r.Said, key, text)
	r.Wrong = fact.Fact{}
	switch {
	case key == RoadWhere:
		for i, c := range Calls(m.Plan) {
			if text == strconv.Itoa(i+1) {
				return r.at(m, c.ArriveMin)
			}
		}
	case key == RoadKm:
		r.At, r.Device = nil, fact.Fact{}
	case key == RoadOther:
		r.Said = with(r.Said, key, "")
		if text != "" && !slices.Contains(r.Closed, text) {
			r.Closed = append(slices.Clip(r.Closed), text)
		}
	case key == RoadTime:
		r.Clock = true
	case strings.HasPrefix(key, RoadKind):
		r.Said = with(r.Said, RoadValue+key[len(RoadKind):], "")
	case strings.HasPrefix(key, RoadClosed):
		id := key[len(RoadClosed):]
		r.Closed = slices.DeleteFunc(slices.Clone(r.Closed), func(s string) bool { return s == id })
		if text == "true" {
			r.Closed = append(r.Closed, id)
		}
	}
	return &r
}

// Here is the kilometre of the plan that was said, which counts from where the trip began; ok is false where it cannot be read.
func (r Report) Here(m Model) (km float64, ok bool) {
	km, wrong := field.Shown(r.Said[RoadKm], m.Say.Unit("km"), m.Trip.DoneKm, m.Trip.DoneKm+math.Max(m.Plan.LengthKm-0.1, 0))
	return km - m.Trip.DoneKm, wrong.Nothing()
}
