package build

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"
	"ullage/geo"
	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A Course is a trip set off: its way on the planner's axis, its clock, and what
// it uses on it.
type Course struct {
	Trip    trip.Trip
	Start   time.Time
	Hours   Hours
	Roads   trip.Roads
	OnRoads trip.Course // as the roads know the route
	Axis    trip.Axis
	Drive   planner.Drive
	Use     trip.Usage

	MostStops int // of the problem
	Ease      Ease
	route     *geo.Line
}

// setOff is the first stage: the route measured and put on roads, ferries and a
// late beginning on its clock, and what a trip like this uses.
func setOff(t trip.Trip, opt Options) (*Course, error) {
	line, err := geo.Measure(t.Route)
	if err != nil {
		return nil, fmt.Errorf("trip: route: %w", err)
	}
	t.Currency = cmp.Or(t.Currency, "EUR")
	lengthKm := line.LengthM() / 1000
	c := &Course{Trip: t, Start: t.Start.Time(), Hours: opt.Hours, Roads: opt.Roads, MostStops: cmp.Or(opt.MostStops, planner.MostStops), Ease: opt.Ease, route: line}
	c.Drive = planner.Drive{MaxKmPerDay: t.Day.MaxKm, MaxMinPerDay: t.Day.MaxMin, DepartMin: t.Day.DepartMin,
		Pace: []planner.Pace{{ToKm: lengthKm, MinPerKm: 60 / min(t.Day.SpeedKmh, t.Vehicle.TopKmh())}}}
	if err := c.onRoads(lengthKm); err != nil {
		return nil, err
	}
	if err := c.sail(lengthKm); err != nil {
		return nil, err
	}
	c.Use, err = trip.NewUsage(t, c.Drive.Pace, c.Axis)
	return c, err
}

// onRoads asks for the route on roads and takes its speeds.
func (c *Course) onRoads(lengthKm float64) error {
	if c.Roads == nil {
		return nil
	}
	on, err := c.Roads.Course(c.Trip, lengthKm)
	if err != nil {
		return fmt.Errorf("trip: the route on roads: %w", err)
	}
	if n := len(on.Pace); n > 0 {
		on.Pace[n-1].ToKm = lengthKm // a hair beside it is rounding
		c.Drive.Pace = on.Pace
	}
	c.OnRoads = on
	return nil
}

// sail gives the course the planner's axis and clock: the roads' pace with
// ferries in it, and a beginning that may be later than the usual departure.
func (c *Course) sail(lengthKm float64) error {
	ferries, err := ferries(c.Trip, lengthKm, c.OnRoads.Ferries)
	if err != nil {
		return err
	}
	c.Axis = trip.NewAxis(lengthKm, ferries)
	c.Drive.Pace = sailing(c.Axis, c.Drive.Pace)
	if late := c.Late(); late > 0 {
		c.Drive.Pace = delayed(c.Drive.Pace, late)
	}
	return nil
}

// day is the number of a date on this trip, 0 for its first.
func (c *Course) day(d trip.Date) int { return d.Since(c.Trip.Start) }

// restDays are those on which nobody wants to drive.
func (c *Course) restDays() []int {
	var out []int
	for _, w := range c.Trip.Wishes {
		if w.Rest == "" {
			continue
		}
		if day := c.day(w.Rest); day > 0 && !slices.Contains(out, day) {
			out = append(out, day)
		}
	}
	slices.Sort(out)
	return out
}

// Two nights in a row at different places lie so far apart along the route at least:
// more nights than the distance needs are spent by staying. Own choice. Where nothing
// else is left, another place is one that is not at the same turn-off.
const moveKm, anotherKm = 30, 1

// limits puts into a problem what a trip can give up.
func (c *Course) limits(p *planner.Problem) {
	p.Drive.MoveKm, p.Drive.EndByMin, p.Drive.RestDays = moveKm, 0, c.restDays()
	if c.Ease.ShortMoves {
		p.Drive.MoveKm = anotherKm
	}
	if keys := c.Trip.KeysByMin; keys > 0 && !c.Ease.LateKeys {
		p.Drive.EndByMin = max(keys-trip.HandOverMin, p.Drive.DepartMin)
	}
}

// Late is how much later than its usual departure the trip begins, in minutes.
func (c *Course) Late() float64 { return max(c.Trip.FromMin-c.Trip.Day.DepartMin, 0) }

// lengthKm is the planner's.
func (c *Course) lengthKm() float64 { return c.Axis.Driven(c.Axis.LengthKm) }

// isOff tells whether the route is off the roads at a position.
func (c *Course) isOff(km float64) bool {
	for _, o := range c.OnRoads.Off {
		if km >= o[0] && km <= o[1] {
			return true
		}
	}
	return false
}

// forcedNights is how many nights the daily limits make out of the route.
func (c *Course) forcedNights() int {
	d := c.Drive
	days := max(c.lengthKm()/d.MaxKmPerDay, d.Minutes(0, c.lengthKm())/d.MaxMinPerDay)
	return max(0, int(math.Ceil(days-1e-9))-1)
}

// Days is for how many days opening hours are asked: all the days that the
// trip can last, as far as that is known.
func (c *Course) Days() int {
	nights := c.Trip.Stays.MaxNights
	if nights == 0 {
		nights = 2*max(c.forcedNights(), c.Trip.Stays.MinNights) + 7
	}
	return nights + 2
}

// UsualNight is a night in the middle of the trip, at a place that offers nothing.
func (c *Course) UsualNight() []life.Band {
	middle := c.Trip.Route[len(c.Trip.Route)/2]
	return c.Use.Nights(nil, life.Where{Lat: middle.Lat(), Lon: middle.Lon()}, c.Axis.LengthKm/2, 1)
}
