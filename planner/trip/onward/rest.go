package onward

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Rest is the rest of a trip, seen from here.
type Rest struct {
	Trip    trip.Trip   `json:"trip"`              // from here to the end, with what was learnt and what is done
	Lessons []Lesson    `json:"lessons,omitempty"` // what the gauges say, by tank
	Notes   []fact.Fact `json:"notes,omitempty"`
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

// From makes the rest of a trip out of its plan in use and of what is now.
// The new trip's route begins here, its first day is today and begins now, its
// levels are what the gauges say at the trip's confidence; stops behind are in
// Done, and what the gauges teach about the use is in Learned. It is planned
// like any other trip, without a network.
//
// The plan must be one of t. An error says what does not fit together.
func From(t trip.Trip, it trip.Itinerary, now Now) (Rest, error) {
	if len(it.Days) == 0 {
		return Rest{}, fact.Fail(nil, noPlan, nil)
	}
	line, err := geo.Measure(t.Route)
	if err != nil {
		return Rest{}, fmt.Errorf("on the road: route: %w", err)
	}
	min, err := minute(t, now.Time)
	if err != nil {
		return Rest{}, err
	}
	here, off, err := position(line, t, it, now, min)
	if err != nil {
		return Rest{}, err
	}
	o := Rest{Trip: t}
	n := &o.Trip
	n.Route = rest(line, here, off, now.At)
	n.Points, n.Round = nil, nil // they are of the whole route
	n.Levels, n.Learned = map[string]float64{}, slices.Clone(t.Learned)
	n.DoneKm += here
	n.DoneDays += int(min / 1440)
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
				stop := renumbered(c, it.Places, now.here)
				if spent := now.nights(c); spent > 0 && now.called(c) { // the rest of a stay stands
					stop.Nights = max(stop.Nights-spent, 0)
				}
				n.Keep = append(n.Keep, stop.String())
				continue
			case !now.called(c):
				n.DoneStops++
				missed = append(missed, calledAt(c))
				continue
			}
			done := trip.Done{Date: d.Date, Km: n.DoneKm - now.here + c.Km, Place: c.Place, Kind: c.Kind, Name: c.Name, Night: now.nights(c) > 0}
			for _, task := range c.Tasks {
				if did := (trip.Did{Verb: task.Verb, Tank: task.Tank}); !slices.Contains(done.Tasks, did) {
					done.Tasks = append(done.Tasks, did)
				}
			}
			n.Done, n.DoneStops = append(n.Done, done), n.DoneStops+1
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
func renumbered(c trip.Call, places []trip.Candidate, here float64) trip.StopID {
	id := trip.ParseStop(c.Stop)
	for _, p := range places {
		if p.Place == c.Place && p.Km < here {
			id.Pass--
		}
	}
	return id
}

// clock begins the new trip today, now. Before the usual departure it begins
// with that; late in the evening there is still time to get to a place for the night.
func (o *Rest) clock(t trip.Trip, it trip.Itinerary, here, min float64) {
	n := &o.Trip
	day := int(min / 1440)
	n.Start = t.Start.Plus(day)
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
			return fact.Fail(nil, noTank, fact.V{"found": fact.Text(id), "list": fact.Each(t.Vehicle.Tanks, func(k trip.Tank) fact.Value { return fact.Text(k.ID) })})
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
			return fact.Fail(fmt.Errorf("on the road: %s: %w", k.Name, err), badGauge, fact.V{"tank": k.Called(), "why": fact.Why(err)})
		}
		o.Trip.Levels[k.ID] = lesson.Level
		o.Lessons = append(o.Lessons, lesson)
		if factor != nil {
			o.Trip.Learned = append(slices.DeleteFunc(o.Trip.Learned, func(f life.Factor) bool { return f.Tank == k.ID }), *factor)
		}
	}
	return nil
}
