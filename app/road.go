package page

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/onward"
)

// A Report is what somebody on the road says: where, when, what the gauges show
// and what is closed. Texts are as typed, by the key of their control.
type Report struct {
	Said   map[string]string
	At     *orb.Point // chosen on the map, or said by the device; nil: the kilometre counts
	Asking bool       // the device is to say where it is
	Device string     // what it said
	Lost   string     // why it says nothing
	Clock  bool       // the time is that of a clock, not of the plan
	Closed []string   // ids of places
	Wrong  string
}

// Keys of the controls; those of gauges and places end with an id.
const (
	roadPrefix = "road:"
	roadWhere  = "road:where" // number of a stop
	roadKm     = "road:km"
	roadTime   = "road:time"
	roadMade   = "road:made:" // id of a stop
	roadKind   = "road:kind:"
	roadValue  = "road:value:"
	roadClosed = "road:closed:"
	roadOther  = "road:other"
)

const nowLayout = "2006-01-02T15:04" // of an input of that kind, and of [onward.Now]

// newReport begins where the plan is now, if the trip is under way, or else at
// the cursor; not before the last stop that is ticked. Kinds of gauges are those
// of the last time.
func newReport(m Model, now string) *Report {
	r := &Report{}
	for _, k := range m.Trip.Vehicle.Tanks {
		r.Said = with(r.Said, roadKind+k.ID, m.Gauges[m.Trip.Vehicle.ID+"/"+k.ID])
	}
	min := m.Cursor
	start, _ := time.Parse(trip.DateLayout, m.Trip.Start)
	if at, err := time.Parse(nowLayout, now); err == nil {
		if n := at.Sub(start).Minutes(); n >= m.Axis.Start().Min && n <= m.Axis.End().Min {
			min, r.Clock, r.Said = n, true, with(r.Said, roadTime, now)
		}
	}
	for _, c := range callsOf(m.Plan) {
		if m.ticked(c) {
			min = math.Max(min, c.ArriveMin)
		}
	}
	return r.at(m, min)
}

// at returns what is said with place and time of the plan at a minute.
func (r Report) at(m Model, min float64) *Report {
	r.At, r.Device = nil, ""
	if !r.Clock {
		start, _ := time.Parse(trip.DateLayout, m.Trip.Start)
		r.Said = with(r.Said, roadTime, start.Add(time.Duration(min)*time.Minute).Format(nowLayout))
	}
	return r.km(m, m.Axis.AtMin(min).Km)
}

func (r Report) km(m Model, km float64) *Report {
	r.Said = with(r.Said, roadKm, plain(m.Say.Unit("km").Show(km)))
	return &r
}

// hear takes a control's text.
func (r Report) hear(m Model, key, text string) *Report {
	r.Said = with(r.Said, key, text)
	r.Wrong = ""
	switch {
	case key == roadWhere:
		for i, c := range callsOf(m.Plan) {
			if text == strconv.Itoa(i+1) {
				return r.at(m, c.ArriveMin)
			}
		}
	case key == roadKm:
		r.At, r.Device = nil, ""
	case key == roadOther:
		r.Said = with(r.Said, key, "")
		if text != "" && !slices.Contains(r.Closed, text) {
			r.Closed = append(slices.Clip(r.Closed), text)
		}
	case key == roadTime:
		r.Clock = true
	case strings.HasPrefix(key, roadKind):
		r.Said = with(r.Said, roadValue+key[len(roadKind):], "")
	case strings.HasPrefix(key, roadClosed):
		id := key[len(roadClosed):]
		r.Closed = slices.DeleteFunc(slices.Clone(r.Closed), func(s string) bool { return s == id })
		if text == "true" {
			r.Closed = append(r.Closed, id)
		}
	}
	return &r
}

// here is the kilometre that was said; ok is false where it cannot be read.
func (r Report) here(m Model) (km float64, ok bool) {
	km, err := parseShown(r.Said[roadKm], m.Say.Unit("km"), 0, math.Max(m.Plan.LengthKm-0.1, 0))
	return km, err == nil
}

// locate takes what the device says, or that it is asked.
func (r Report) locate(m Model, msg Msg) *Report {
	r.Asking, r.Lost = false, ""
	switch msg := msg.(type) {
	case HereAsked:
		r.Asking = true
	case HereUnknown:
		r.Lost = word.roadNoPosition
		if errors.Is(msg.Why, browser.ErrNotAllowed) {
			r.Lost = word.roadNotAllowed
		} else if errors.Is(msg.Why, browser.ErrTooLong) {
			r.Lost = word.roadTooLong
		}
	case HereFound:
		km, off, err := onward.Locate(m.Trip, m.Plan, msg.Point, r.Said[roadTime])
		if err != nil {
			r.Lost = roadTrouble(err)
			break
		}
		r = *r.km(m, km)
		r.At, r.Said = &msg.Point, with(r.Said, roadWhere, "")
		r.Device = fmt.Sprintf(word.roadFix, m.Say.Mark(km, -1), m.Say.Short(msg.WithinM))
		if off > offRouteKm {
			r.Device = fmt.Sprintf(word.roadFixOff, m.Say.Mark(km, -1), m.Say.Short(msg.WithinM), m.Say.Km(off))
		}
	}
	return &r
}

// offRouteKm is how far off the route is worth a word: a receiver and the line
// of a route both err by some hundred metres.
const offRouteKm = 0.5

// roadTrouble says an error of package trip to somebody on the road.
func roadTrouble(err error) string { return capital(strings.TrimPrefix(err.Error(), "on the road: ")) }

// stopTicks is the list of ticks for stops, beside the checklists.
const stopTicks = "stop"

// ticked tells whether a stop is ticked off.
func (m Model) ticked(c trip.Call) bool {
	_, ok := slices.BinarySearch(m.Ticks, stopTicks+"/"+c.Stop)
	return ok
}

// A visit is a stop here or behind, and whether it was called at.
type visit struct {
	Call trip.Call
	Made bool
}

// visits are the stops here and behind. What is said of one counts; else the
// ticks, if any stop is ticked off; else all are made that the clock leaves time for.
func (r Report) visits(m Model) []visit {
	km, ok := r.here(m)
	passed, err := onward.Behind(m.Trip, m.Plan, km, r.Said[roadTime])
	if !ok || err != nil {
		return nil
	}
	ticks := slices.ContainsFunc(callsOf(m.Plan), m.ticked)
	var out []visit
	for _, p := range passed {
		v := visit{p.Call, p.Over}
		if ticks {
			v.Made = m.ticked(p.Call)
		}
		if said := r.Said[roadMade+p.Call.Stop]; said != "" {
			v.Made = said == "true"
		}
		out = append(out, v)
	}
	return out
}

// now is what was said, as the planner takes it.
func (r Report) now(m Model) (onward.Now, error) {
	n := onward.Now{At: r.At, Time: r.Said[roadTime], Closed: r.Closed, Gauges: map[string]onward.Shown{}, Called: map[string]bool{}}
	for _, v := range r.visits(m) {
		n.Called[v.Call.Stop] = v.Made
	}
	if r.At == nil {
		km, ok := r.here(m)
		if !ok {
			return n, fmt.Errorf(word.roadWantKm, m.Say.Km(m.Plan.LengthKm))
		}
		n.Km = &km
	}
	for _, k := range m.Trip.Vehicle.Tanks {
		kind, text := r.Said[roadKind+k.ID], r.Said[roadValue+k.ID]
		if kind == "" || text == "" {
			continue
		}
		unit, most := m.Say.Unit("%"), 100.0
		if kind == life.LitreGauge {
			unit, most = m.Say.Unit(k.Unit), k.Capacity
		}
		v, err := parseShown(text, unit, 0, most)
		if err != nil {
			return n, fmt.Errorf("%s: %w", k.Name, err)
		}
		n.Gauges[k.ID] = onward.Shown{Kind: kind, Value: v}
	}
	return n, nil
}

// goOn makes the rest of the trip out of what was said; what the gauges taught
// is told in a line each.
func goOn(m Model) Model {
	if m.Report == nil {
		return m
	}
	now, err := m.Report.now(m)
	var o onward.Rest
	if err == nil {
		o, err = onward.From(m.Trip, m.Plan, now)
	}
	if err != nil {
		r := *m.Report
		r.Wrong = roadTrouble(err)
		m.Report = &r
		return m
	}
	m.Before, m.News = &Before{m.Trip, *m.Report, m.Ticks, m.Track, m.Matched}, nil
	m = m.untick(stopTicks) // what is behind is history now
	for _, l := range o.Lessons {
		m.News = append(m.News, l.Text)
	}
	m.News = append(m.News, o.Notes...)
	m.Trip, m.Report, m.Typed, m.Wrong, m.Cursor = o.Trip, nil, nil, nil, 0
	m.Track, m.Matched = nil, false // they are of the whole route
	return ask(m)
}

// Before is what was there before a plan from the road, with what was said:
// who takes it back corrects a reading and goes on again.
type Before struct {
	Trip    trip.Trip
	Report  Report
	Ticks   []string
	Track   orb.LineString
	Matched bool
}

func goBack(m Model) Model {
	if m.Before == nil {
		return m
	}
	b := *m.Before
	m.Trip, m.Report, m.Track, m.Matched = b.Trip, &b.Report, b.Track, b.Matched
	m.Before, m.News = nil, nil
	m.Ticks = b.Ticks
	m.Marks++
	return ask(m)
}

// callsOf are the calls of all days in their order.
func callsOf(it trip.Itinerary) []trip.Call {
	var out []trip.Call
	for _, d := range it.Days {
		out = append(out, d.Calls...)
	}
	return out
}

// learnt says what earlier readings taught, where the page has been loaded anew since.
func learnt(it trip.Itinerary) []string {
	var out []string
	for _, c := range it.Counts {
		if c.Factor != 0 {
			out = append(out, fmt.Sprintf(word.roadLearnt, c.Name, 100*c.Factor))
		}
	}
	return out
}
