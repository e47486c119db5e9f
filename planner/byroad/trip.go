package byroad

import (
	"context"
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/geo"
	"ullage/geo/road"
	"ullage/planner"
	"ullage/planner/trip"
)

// Own choices, without source.
const (
	placeM    = 1000   // a place farther from every road is not known to the roads
	besideM   = 50     // a road must be this much farther than the place's own to be another way in
	leastOffM = 20_000 // detours up to here are looked for at least
	sections  = 40     // of different speed on a route, at most about
	sectionM  = 2000   // the shortest
)

// Trip returns what planner/trip asks of roads. The questions of one trip
// must be asked in one go: see [trip.Roads].
func (g *Guide) Trip(ctx context.Context) trip.Roads { return &asked{g: g, ctx: ctx} }

// asked answers the questions of one trip. It keeps what it needs of the
// guide, which other questions may change.
type asked struct {
	g      *Guide
	ctx    context.Context
	trip   trip.Trip
	own    *road.Router
	ask    *road.Query
	course road.Course
	runs   []run // of course
	line   *geo.Line
	rule   rule
}

// Course matches the route to roads and measures it.
func (a *asked) Course(t trip.Trip, lengthKm float64) (trip.Course, error) {
	g := a.g
	a.trip = t
	if err := g.vehicle(a.ctx, t.Vehicle); err != nil {
		return trip.Course{}, err
	}
	if err := g.match(a.ctx, t.Route); err != nil {
		return trip.Course{}, err
	}
	a.own, a.ask, a.course = g.own, g.ask, g.course
	line, err := geo.Measure(t.Route)
	if err != nil {
		return trip.Course{}, err
	}
	a.line = line
	a.rule = newRule(g.network, a.own, a.course, line)
	out := trip.Course{Cautions: cautions(a.own, a.course, a.rule)}
	clock := &paces{whole: lengthKm, least: max(sectionM/1000, lengthKm/sections)}
	a.runs = a.cut()
	for _, r := range a.runs {
		from, to := a.km(r.fromM, lengthKm), a.km(r.fromM+r.m, lengthKm)
		switch {
		case r.sea:
			out.Ferries = append(out.Ferries, a.crossing(r, lengthKm))
			clock.alone(to, r.s/60)
		case len(r.Steps) == 0:
			out.Off = append(out.Off, [2]float64{from, to})
			clock.alone(to, 60/t.Day.SpeedKmh*(to-from))
		default:
			m := r.fromM
			for i := range r.Steps {
				p := a.own.PathOf(r.Steps[i : i+1])
				m += p.LengthM
				clock.add(a.km(m, lengthKm), p.Seconds/60)
			}
		}
	}
	out.Pace = clock.done()
	return out, nil
}

func (a *asked) km(m, lengthKm float64) float64 {
	return min(max(a.rule.at(m)/1000, 0), lengthKm)
}

// paces gathers sections of a route with their minutes.
type paces struct {
	whole, least float64
	list         []planner.Pace
	from, to     float64
	min          float64
}

func (p *paces) add(toKm, min float64) {
	p.to, p.min = max(p.to, toKm), p.min+min
	if p.to-p.from >= p.least {
		p.flush()
	}
}

// alone adds what is a section of its own.
func (p *paces) alone(toKm, min float64) {
	p.flush()
	p.add(toKm, min)
	p.flush()
}

func (p *paces) flush() {
	if d := p.to - p.from; d > 1e-6 {
		p.list = append(p.list, planner.Pace{ToKm: p.to, MinPerKm: p.min / d})
		p.from, p.min = p.to, 0
	}
}

// done ends the last section at the end of the route.
func (p *paces) done() []planner.Pace {
	p.flush()
	if n := len(p.list); n > 0 {
		p.list[n-1].ToKm = p.whole
	}
	return p.list
}

func siteOf(p *trip.Place) road.Site {
	return road.Site{Point: p.Point, Outline: p.Outline, Gates: p.Gates}
}

// entry is a spot to a tenth of a metre, with its road.
func (g *Guide) entry(s road.Spot) trip.Entry {
	at := s.Point(g.network)
	return trip.Entry{Point: orb.Point{math.Round(at[0]*1e6) / 1e6, math.Round(at[1]*1e6) / 1e6}, Road: g.network.Road(s.Edge).Name}
}

// Ways finds the detours to all places at once.
func (a *asked) Ways(places []*trip.Place) ([]trip.Way, error) {
	g := a.g
	spots := make([]road.Spot, len(places))
	barred := make([]bool, len(places)) // the vehicle may not use the place's own road
	for i, p := range places {
		if err := a.ctx.Err(); err != nil {
			return nil, err
		}
		spots[i] = a.own.SnapSite(siteOf(p), placeM)
		if car := g.car.SnapSite(siteOf(p), placeM); car.OK && (!spots[i].OK || car.In && !spots[i].In || spots[i].OffM > car.OffM+besideM) {
			spots[i], barred[i] = road.Spot{}, true
		}
	}
	mostM := max(leastOffM, 4000*a.trip.CorridorKm)
	found, err := a.detours(spots, road.DetourOptions{MaxExtraM: mostM})
	if err != nil {
		return nil, err
	}
	var out []trip.Way
	reached, sailed := make([]bool, len(places)), make([]string, len(places))
	for _, d := range found {
		if name := a.sails(d, spots[d.Place]); name != "" {
			sailed[d.Place] = name
			continue
		}
		in := spots[d.Place].OffM // from the road to the place
		reached[d.Place] = true
		out = append(out, trip.Way{Place: d.Place, LeaveKm: a.rule.at(d.LeaveM) / 1000, RejoinKm: a.rule.at(d.RejoinM) / 1000,
			ThereKm: (d.ThereM + in) / 1000, Km: max(d.ExtraM+2*in, 0) / 1000, Min: max(d.ExtraS+2*in/walkMS, 0) / 60,
			Entry: g.entry(spots[d.Place])})
	}
	for i, p := range places {
		if err := a.ctx.Err(); err != nil {
			return nil, err
		}
		if reached[i] || !spots[i].OK && !barred[i] {
			continue
		}
		if sailed[i] != "" {
			out = append(out, trip.Way{Place: i, Closed: "the way there goes by ferry: " + sailed[i]})
			continue
		}
		if why := a.closed(p, mostM); why != "" {
			out = append(out, trip.Way{Place: i, Closed: why})
		}
	}
	return out, nil
}

// walkMS is the speed on a forecourt, 10 km/h in m/s: common practice, no source.
const walkMS = 10 / 3.6

// closed says what keeps the vehicle from a place that a car gets to; "" if
// not even a car does: then the data lack a road, and nothing is known.
func (a *asked) closed(p *trip.Place, mostM float64) string {
	g := a.g
	from, ok := a.rule.nearest(p.Point)
	if !ok {
		return ""
	}
	path, err := g.any.Route(g.car.Snap(from, 2*offM), g.car.SnapSite(siteOf(p), placeM))
	if err != nil {
		return ""
	}
	if why := a.own.Avoided(path); len(why) > 0 {
		n := why[len(why)-1] // the last bar is the one that no other way goes round
		return fmt.Sprintf("the way there is not for this vehicle: %s (%s, %.1f km before the place)", n.Text, roadName(n), max(path.LengthM-n.AlongM, 0)/1000)
	}
	if path.LengthM > mostM/2 {
		return fmt.Sprintf("%.0f km away by road", math.Ceil(path.LengthM/1000))
	}
	return ""
}

// roadName is the name of the road that a note is about, or where it is.
func roadName(n road.Note) string {
	if n.Road != "" {
		return n.Road
	}
	return fmt.Sprintf("a road at %.5f, %.5f", n.Point[1], n.Point[0])
}
