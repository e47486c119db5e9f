package byroad

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/geo/road"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Own choices, without source.
const (
	placeM    = 1000   // a place farther from every road is not known to the roads
	besideM   = 50     // a road must be this much farther than the place's own to be another way in
	leastOffM = 20_000 // detours up to here are looked for at least
	longS     = 600    // a detour as long is looked at for ferries, which take minutes
)

// walkMS is the speed on a forecourt, 10 km/h in m/s: common practice, no source.
const walkMS = 10 / 3.6

// Ways finds the detours to all places at once.
func (a *asked) Ways(places []*trip.Place) ([]trip.Way, error) {
	spots, barred, err := a.spots(places)
	if err != nil {
		return nil, err
	}
	mostM := max(leastOffM, 4000*a.trip.CorridorKm)
	found, err := a.detours(spots, road.DetourOptions{MaxExtraM: mostM})
	if err != nil {
		return nil, err
	}
	var out []trip.Way
	reached, sails := make([]bool, len(places)), make([]fact.Fact, len(places))
	for _, d := range found {
		if by := a.sails(d, spots[d.Place]); !by.Nothing() {
			sails[d.Place] = by
			continue
		}
		reached[d.Place] = true
		out = append(out, a.way(d, spots[d.Place]))
	}
	for i, p := range places {
		if err := a.ctx.Err(); err != nil {
			return nil, err
		}
		if reached[i] || !spots[i].OK && !barred[i] {
			continue
		}
		why := sails[i]
		if why.Nothing() {
			why = a.closed(p, mostM)
		}
		if !why.Nothing() {
			out = append(out, trip.Way{Place: i, Closed: why})
		}
	}
	return out, nil
}

// spots are where the vehicle leaves the road for each place. barred says that it may not use the place's own road.
func (a *asked) spots(places []*trip.Place) (spots []road.Spot, barred []bool, err error) {
	spots, barred = make([]road.Spot, len(places)), make([]bool, len(places))
	for i, p := range places {
		if err := a.ctx.Err(); err != nil {
			return nil, nil, err
		}
		own, car := a.own.SnapSite(siteOf(p), placeM), a.g.car.SnapSite(siteOf(p), placeM)
		if barred[i] = car.OK && (!own.OK || car.In && !own.In || own.OffM > car.OffM+besideM); !barred[i] {
			spots[i] = own
		}
	}
	return spots, barred, nil
}

func siteOf(p *trip.Place) road.Site {
	return road.Site{Point: p.Point, Outline: p.Outline, Gates: p.Gates}
}

// way is a detour to a spot, with the piece from there to the place and back.
func (a *asked) way(d road.Detour, spot road.Spot) trip.Way {
	in := spot.OffM
	return trip.Way{Place: d.Place, LeaveKm: a.rule.at(d.LeaveM) / 1000, RejoinKm: a.rule.at(d.RejoinM) / 1000,
		ThereKm: (d.ThereM + in) / 1000, Km: max(d.ExtraM+2*in, 0) / 1000, Min: max(d.ExtraS+2*in/walkMS, 0) / 60,
		Entry: a.g.entry(spot)}
}

// entry is a spot to a tenth of a metre, with its road.
func (g *Guide) entry(s road.Spot) trip.Entry {
	at := s.Point(g.network)
	return trip.Entry{Point: orb.Point{math.Round(at[0]*1e6) / 1e6, math.Round(at[1]*1e6) / 1e6}, Road: g.network.Road(s.Edge).Name}
}

// detours asks for detours between the ferries of the course, so that none
// leaves it before one and joins it after.
func (a *asked) detours(places []road.Spot, opt road.DetourOptions) ([]road.Detour, error) {
	var out []road.Detour
	for i := 0; i < len(a.runs); i++ {
		var land road.Course
		begin := a.runs[i].fromM
		for ; i < len(a.runs) && !a.runs[i].sea; i++ {
			land = append(land, a.runs[i].Stretch)
		}
		if len(land) == 0 {
			continue
		}
		found, err := a.ask.Detours(a.ctx, land, places, opt)
		if err != nil {
			return nil, err
		}
		for _, d := range found {
			d.LeaveM, d.RejoinM = d.LeaveM+begin, d.RejoinM+begin
			out = append(out, d)
		}
	}
	return out, nil
}

// sails names the ferry on the way to a place, if there is one. A call there would be a
// voyage of its own, with its fare and its timetable: who wants it draws the route.
func (a *asked) sails(d road.Detour, place road.Spot) fact.Fact {
	if !a.g.ferries || d.ExtraS < longS {
		return fact.Fact{}
	}
	path, err := a.ask.Route(a.own.Snap(a.line.At(1000*a.km(d.LeaveM, a.line.LengthM()/1000)), 2*offM), place)
	if err != nil {
		return fact.Fact{}
	}
	for _, s := range path.Steps {
		if a.g.atSea(s) {
			return fact.Of(WaySails, fact.V{"name": fact.Text(a.g.network.Road(s.Edge()).Name)})
		}
	}
	return fact.Fact{}
}

// closed says what keeps the vehicle from a place that a car gets to; nothing if
// not even a car does: then the data lack a road, and nothing is known.
func (a *asked) closed(p *trip.Place, mostM float64) fact.Fact {
	g := a.g
	from, ok := a.rule.nearest(p.Point)
	if !ok {
		return fact.Fact{}
	}
	path, err := g.any.Route(g.car.Snap(from, 2*offM), g.car.SnapSite(siteOf(p), placeM))
	if err != nil {
		return fact.Fact{}
	}
	if why := a.own.Avoided(path); len(why) > 0 {
		n := why[len(why)-1] // the last bar is the one that no other way goes round
		v := fact.V{"why": fact.Clause(barred(n.Bar)), "km": fact.Km(max(path.LengthM-n.AlongM, 0)/1000, 1)}
		whichRoad(v, n)
		return fact.Of(WayBarred, v)
	}
	if path.LengthM > mostM/2 {
		return fact.Of(WayFar, fact.V{"km": fact.Km(math.Ceil(path.LengthM/1000), 0)})
	}
	return fact.Fact{}
}
