package onward

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// This file is a trip on the road: what is behind becomes history, what the
// gauges show becomes the levels, and the rest is a trip of its own.

// Now is where and when somebody on the road is, and what the vehicle shows.
type Now struct {
	Km     *float64         `json:"km,omitempty"`     // along the trip's route; nil: At says it
	At     *orb.Point       `json:"at,omitempty"`     // the nearest pass of the route counts
	Time   string           `json:"time"`             // local: 2026-06-13T14:20
	Gauges map[string]Shown `json:"gauges,omitempty"` // by tank; a tank without one is as planned
	Closed []string         `json:"closed,omitempty"` // ids of places that are of no use
	Called map[string]bool  `json:"called,omitempty"` // by stop: whether it was called at; one that is not named was, if it lies behind

	here, min float64 // where that is along the route, and when: minutes since 00:00 of day one
}

// Shown is what a gauge shows.
type Shown struct {
	Kind   string  `json:"kind"` // litres (a number in the tank's unit), percent, quarters, lamp
	Value  float64 `json:"value"`
	LampAt float64 `json:"lamp_at,omitempty"` // the level where the lamp changes; 0: the tank's reserve
}

// Rest is the rest of a trip, seen from here.
type Rest struct {
	Trip    trip.Trip   `json:"trip"`              // from here to the end, with what was learnt and what is done
	Lessons []Lesson    `json:"lessons,omitempty"` // what the gauges say, by tank
	Notes   []fact.Fact `json:"notes,omitempty"`
}

// A Lesson is what a gauge changed.
type Lesson struct {
	Tank   string      `json:"tank"`
	Level  float64     `json:"level"`  // planned with from here
	Factor float64     `json:"factor"` // of the usual use; 0: not learnt for this tank
	Says   []fact.Fact `json:"says"`
}

// NowLayouts are the ways to write [Now.Time].
var NowLayouts = []string{"2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05"}

const (
	// offRouteKm: who is farther off than this should draw a new route.
	offRouteKm = 50.0
	// hereKm: nearer than this is the same spot of the route.
	hereKm = 0.5
	// lastHourMin is left of the day for a place for the night, however late it is.
	lastHourMin = 60.0
)

// From makes the rest of a trip out of its plan in use and of what is now.
// The new trip's route begins here, its first day is today and begins now, its
// levels are what the gauges say at the trip's confidence; stops behind are in
// Done, and what the gauges teach about the use is in Learned. It is planned
// like any other trip, without a network.
//
// The plan must be one of t. An error says what does not fit together.
func From(t trip.Trip, it trip.Itinerary, now Now) (Rest, error) {
	if len(it.Days) == 0 {
		return Rest{}, fmt.Errorf("on the road: the trip %q has no plan to go on from: plan it first", t.Name)
	}
	line, err := geo.Measure(t.Route)
	if err != nil {
		return Rest{}, fmt.Errorf("on the road: route: %w", err)
	}
	min, err := minute(t, now.Time)
	if err != nil {
		return Rest{}, err
	}
	here, off, err := position(line, it, now, min)
	if err != nil {
		return Rest{}, err
	}
	o := Rest{Trip: t}
	n := &o.Trip
	n.Route = rest(line, here, off, now.At)
	n.Points, n.Round = nil, nil // they are of the whole route
	n.Levels, n.Learned = map[string]float64{}, slices.Clone(t.Learned)
	n.DoneKm += here
	now.here, now.min = here, min
	o.behind(it, now)
	o.clock(t, it, here, min)
	n.Avoid = union(t.Avoid, now.Closed)
	n.Require = slices.DeleteFunc(slices.Clone(t.Require), func(id string) bool {
		return slices.Contains(now.Closed, id) || slices.ContainsFunc(n.Done, func(d trip.Done) bool { return d.Place == id })
	})
	left := max(1-here/it.LengthKm, 0)
	n.UpM, n.DownM = left*t.UpM, left*t.DownM
	n.Ferries = ahead(t.Ferries, here)
	if err := o.read(t, it, now); err != nil {
		return Rest{}, err
	}
	return o, n.Validate()
}

// minute is a local time in minutes since 00:00 of the trip's first day.
func minute(t trip.Trip, text string) (float64, error) {
	start, err := time.Parse(trip.DateLayout, t.Start)
	if err != nil {
		return 0, fmt.Errorf("on the road: start date is %q: write it as 2026-06-12", t.Start)
	}
	for _, layout := range NowLayouts {
		if at, err := time.Parse(layout, text); err == nil {
			if m := at.Sub(start).Minutes(); m >= 0 {
				return m, nil
			}
			return 0, fmt.Errorf("on the road: now is %s, before the trip begins on %s", text, t.Start)
		}
	}
	return 0, fmt.Errorf("on the road: now is %q: write it as 2026-06-13T14:20", text)
}

// position finds the kilometre of the route. Where the route comes by more
// than once, the pass counts that the plan expects at this time.
func position(line *geo.Line, it trip.Itinerary, now Now, min float64) (km, offM float64, err error) {
	length := line.LengthM() / 1000
	switch {
	case now.Km != nil:
		km = *now.Km
	case now.At != nil:
		// The narrowest corridor first: a wide one takes a way out and back for one pass.
		corridor := geo.NewCorridor(line)
		var passes []geo.Pass
		for radius := offRouteKm / 512; len(passes) == 0 && radius <= offRouteKm; radius *= 2 {
			passes = corridor.Passes(*now.At, radius*1000)
		}
		if len(passes) == 0 {
			return 0, 0, fmt.Errorf("on the road: %.5f, %.5f is more than %.0f km off the route: draw a route from there", now.At.Lat(), now.At.Lon(), offRouteKm)
		}
		nearest, expected := math.Inf(1), expectedKm(it, min)
		for _, p := range passes {
			nearest = math.Min(nearest, p.OffM)
		}
		best := math.Inf(1)
		for _, p := range passes {
			if d := math.Abs(p.AlongM/1000 - expected); p.OffM <= nearest+hereKm*1000 && d < best {
				km, offM, best = p.AlongM/1000, p.OffM, d
			}
		}
	default:
		return 0, 0, fmt.Errorf("on the road: say where you are: km along the route, or latitude and longitude")
	}
	if !(km >= 0 && km <= length-0.05) {
		return 0, 0, fmt.Errorf("on the road: km %.1f of a route of %.1f km: give a place before its end", km, length)
	}
	return km, offM, nil
}

// expectedKm is where the plan is at a minute.
func expectedKm(it trip.Itinerary, min float64) float64 {
	p := it.Strips[0].Points
	for i := 1; i < len(p); i++ {
		if min < p[i].Min {
			if p[i].Min == p[i-1].Min {
				return p[i-1].Km
			}
			return p[i-1].Km + (p[i].Km-p[i-1].Km)*math.Max(0, min-p[i-1].Min)/(p[i].Min-p[i-1].Min)
		}
	}
	return p[len(p)-1].Km
}

// rest is the route from here on; from the very spot, if it is off the route.
func rest(line *geo.Line, km, offM float64, at *orb.Point) orb.LineString {
	out := orb.LineString{line.At(km * 1000)}
	if at != nil && offM > hereKm*1000 {
		out = orb.LineString{*at, out[0]}
	}
	for i, p := range line.Points() {
		if line.AlongM(i) > km*1000+0.01 {
			out = append(out, p)
		}
	}
	return out
}

// behind turns the calls made before here into history, and takes the nights
// that are over from the wishes, wherever they were spent.
func (o *Rest) behind(it trip.Itinerary, now Now) {
	n := &o.Trip
	n.Done, n.Keep = slices.Clone(n.Done), nil
	var missed []fact.Value
	for _, d := range it.Days {
		for _, c := range d.Calls {
			switch {
			case !now.behind(c):
				n.Keep = append(n.Keep, renumbered(c, it.Places, now.here))
				continue
			case !now.called(c):
				missed = append(missed, calledAt(c))
				continue
			}
			done := trip.Done{Date: d.Date, Km: n.DoneKm - now.here + c.Km, Place: c.Place, Name: c.Name, Night: now.nights(c) > 0}
			for _, task := range c.Tasks {
				done.Tasks = append(done.Tasks, trip.Did{Verb: task.Verb, Tank: task.Tank})
			}
			n.Done = append(n.Done, done)
		}
	}
	if len(missed) > 0 {
		o.Notes = append(o.Notes, fact.Of(passedBy, fact.V{"names": fact.List(missed...)}))
	}
	nights := int(now.min / 1440)
	n.Stays.MinNights = max(n.Stays.MinNights-nights, 0)
	if n.Stays.MaxNights > 0 {
		n.Stays.MaxNights = max(n.Stays.MaxNights-nights, 1)
	}
}

// renumbered is the id that the stop of a call has on the rest of the route,
// where passes that are behind do not count.
func renumbered(c trip.Call, places []trip.Candidate, here float64) string {
	behind := 0
	for _, p := range places {
		if p.Place == c.Place && p.Km < here {
			behind++
		}
	}
	rest := strings.TrimPrefix(c.Stop, c.Place)
	pass, nights, long := strings.Cut(rest, "*")
	n, err := strconv.Atoi(strings.TrimPrefix(pass, "@"))
	if err != nil {
		n = 1
	}
	id := c.Place
	if n -= behind; n > 1 {
		id = fmt.Sprintf("%s@%d", id, n)
	}
	if long {
		id += "*" + nights
	}
	return id
}

// clock begins the new trip today, now. Before the usual departure it begins
// with that; late in the evening there is still time to get to a place for the night.
func (o *Rest) clock(t trip.Trip, it trip.Itinerary, here, min float64) {
	n := &o.Trip
	day := int(min / 1440)
	start, _ := time.Parse(trip.DateLayout, t.Start)
	n.Start = start.AddDate(0, 0, day).Format(trip.DateLayout)
	n.FromMin = 0
	minute := min - 1440*float64(day)
	if minute <= t.Day.DepartMin {
		return
	}
	n.FromMin = minute
	if latest := t.Day.DepartMin + t.Day.MaxMin - lastHourMin; minute > latest {
		n.FromMin = math.Max(latest, 0)
		o.Notes = append(o.Notes, fact.Of(evening, fact.V{"clock": fact.Clock(n.FromMin)}))
	}
	sea := seaOf(it)
	today := sea.Driven(here)
	for _, d := range it.Days {
		if d.Number == day+1 {
			today = math.Max(sea.Driven(here)-sea.Driven(d.FromKm), 0)
		}
	}
	if today > 1 {
		o.Notes = append(o.Notes, fact.Of(todaysKm, fact.V{"km": fact.Km(today, 0), "easy": fact.Km(t.Day.MaxKm, 0)}))
	}
}

func ahead(ferries []trip.Ferry, here float64) []trip.Ferry {
	var out []trip.Ferry
	for _, f := range ferries {
		if left := f.ToKm - here; left > 0 {
			from := math.Max(f.FromKm-here, 0)
			out = append(out, trip.Ferry{FromKm: from, ToKm: left, Min: f.Min * (left - from) / (f.ToKm - f.FromKm)})
		}
	}
	return out
}

func union(a, b []string) []string {
	out := slices.Clone(a)
	for _, s := range b {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// read takes levels from the gauges, and what they teach.
func (o *Rest) read(t trip.Trip, it trip.Itinerary, now Now) error {
	for _, id := range slices.Sorted(maps.Keys(now.Gauges)) {
		if !slices.ContainsFunc(t.Vehicle.Tanks, func(k trip.Tank) bool { return k.ID == id }) {
			return fmt.Errorf("on the road: a gauge for %q: the vehicle has no such tank; it has %s", id, t.Vehicle.TankIDs())
		}
	}
	sea := seaOf(it)
	use, err := trip.NewUsage(t, paceOf(it, sea), sea)
	if err != nil {
		return err
	}
	for i, k := range t.Vehicle.Tanks {
		g := watched{tank: k, trip: t, use: use, strip: it.Strips[i]}
		g.look(it, now)
		shown, ok := now.Gauges[k.ID]
		if !ok {
			o.Trip.Levels[k.ID] = math.Max(0, math.Min(g.expected.L, k.Capacity))
			continue
		}
		lesson, factor, err := g.learn(shown)
		if err != nil {
			return fmt.Errorf("on the road: %s: %w", k.Name, err)
		}
		o.Trip.Levels[k.ID] = lesson.Level
		o.Lessons = append(o.Lessons, lesson)
		if factor != nil {
			o.Trip.Learned = append(slices.DeleteFunc(o.Trip.Learned, func(f life.Factor) bool { return f.Tank == k.ID }), *factor)
		}
	}
	return nil
}

// paceOf is the average of the plan's driving, on the planner's axis.
func paceOf(it trip.Itinerary, sea trip.Axis) []planner.Pace {
	var km, min float64
	for _, d := range it.Days {
		km, min = km+d.DriveKm, min+d.DriveMin
	}
	return []planner.Pace{{ToKm: sea.Driven(it.LengthKm), MinPerKm: min / max(km, trip.Metre)}}
}

// seaOf is the axis of the plan's route with its ferries.
func seaOf(it trip.Itinerary) trip.Axis {
	var ferries []trip.Crossing
	for _, d := range it.Days {
		ferries = append(ferries, d.Ferries...)
	}
	return trip.NewAxis(it.LengthKm, ferries)
}

// Kinds of what is said on the road.
const (
	passedBy fact.Kind = "onward.passed"
	evening  fact.Kind = "onward.evening"
	todaysKm fact.Kind = "onward.today"
)

// calledAt is the place of a call in a fact.
func calledAt(c trip.Call) fact.Value {
	p := trip.Place{ID: c.Place, Kind: c.Kind, Name: c.Name}
	return p.Called()
}
