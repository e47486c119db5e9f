package read

import (
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// strips draws each tank's level along the route: two points where a call
// jumps, one at each end of a ferry, one more where charging while driving
// reaches the brim.
func (b reader) strips(plan planner.Plan, stops map[string]*planner.Stop) []trip.Strip {
	var out []trip.Strip
	for i, k := range b.Trip.Vehicle.Tanks {
		t := b.Problem.Tanks[i]
		d := &drawer{reader: b, tank: t, perKm: b.Use.PerKm(k), band: newCourse(t), clock: b.Problem.Drive.DepartMin,
			at: trip.Level{Km: 0, Min: b.Problem.Drive.DepartMin + b.Late(), Day: b.Trip.DoneDays + 1, L: t.Start}}
		d.point(d.at)
		for _, v := range plan.Visits {
			s := stops[v.Stop]
			d.leg(s.Km, s.DetourKm/2, trip.Level{Km: b.Candidates[b.Calls[v.Stop].Candidate].Km, Min: v.Arrive.Min, L: v.Arrive.Levels[k.ID]})
			d.visit(s, v, b.eachNight(s, v, i))
		}
		d.leg(b.Problem.LengthKm, 0, trip.Level{Km: b.Axis.LengthKm, Min: plan.End.Min, L: plan.End.Levels[k.ID]})
		out = append(out, trip.Strip{Tank: k.ID, Name: k.Name, Kind: k.Kind, Unit: k.Unit, Capacity: k.Capacity, Reserve: t.Reserve, Points: d.points})
	}
	return out
}

// A drawer draws the strip of one tank.
type drawer struct {
	reader
	tank   planner.Tank
	perKm  life.Band
	band   course
	at     trip.Level
	left   float64 // the planner's km at which the route is on again
	clock  float64 // and the minute
	off    float64 // half detour of the stop behind, driven at the start of the leg
	points []trip.Level
}

func (d *drawer) point(l trip.Level) { d.points = append(d.points, d.band.fill(l)) }

// drive goes km kilometres to a level.
func (d *drawer) drive(to trip.Level, km float64) {
	part := 0.0
	if brim, ok := brim(d.tank, d.at, to, km); ok {
		part = (brim.Km - d.at.Km) / max(to.Km-d.at.Km, 1e-9)
		d.band.take(trip.Scaled(d.perKm, part*km), 0)
		d.point(brim)
	}
	d.band.take(trip.Scaled(d.perKm, (1-part)*km), 0)
	d.point(to)
	d.at = to
}

// leg goes to one of the planner's km, which is to's, and so many kilometres beyond.
func (d *drawer) leg(km, beyond float64, to trip.Level) {
	for _, f := range d.crossings(d.left, km, d.clock) {
		pier := d.Axis.Driven(f.FromKm)
		way := d.off + pier - d.left
		d.drive(trip.Level{Km: max(f.FromKm, d.at.Km), Min: f.StartMin, Day: d.at.Day, L: after(d.tank, d.at.L, way, 0)}, way)
		d.left, d.clock, d.off = pier+trip.Metre, f.StartMin+f.Min, 0
		d.drive(trip.Level{Km: f.ToKm, Min: d.clock, Day: d.at.Day, L: after(d.tank, d.at.L, trip.Metre, 0)}, trip.Metre)
	}
	to.Day = d.at.Day
	d.drive(to, d.off+km-d.left+beyond)
	d.left = km
}

// visit is what a call and its nights do to the level: a stay is drawn night by
// night, with each act of it.
func (d *drawer) visit(s *planner.Stop, v planner.Visit, nights []life.Band) {
	i := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == d.tank.ID })
	var acts []planner.Act
	switch {
	case i >= 0 && v.Night:
		acts = v.Serve[i].Acts
	case i >= 0:
		acts = []planner.Act{{Amount: v.Serve[i].Amount, From: d.at.L}}
	}
	day := d.at.Day
	for n, use := range nights {
		units := s.Night.Uses(d.tank.ID)[n]
		lived := d.serve(acts, n, use, units)
		d.band.take(trip.Scaled(use, 1-lived/max(units, lived, 1e-9)), 0)
		d.at.L = after(d.tank, d.at.L, 0, units-lived)
		d.at.Min, d.at.Day = v.Leave.Min-1440*float64(len(nights)-n-1), day+n+1
		d.within(d.at)
	}
	d.at.Min = v.Leave.Min
	d.serve(acts, len(nights), life.Band{}, 0)
	if len(d.points) > 0 && d.points[len(d.points)-1].Stay && d.points[len(d.points)-1].Min == d.at.Min && len(acts) == 0 {
		d.points = d.points[:len(d.points)-1] // nothing is done before leaving
	}
	d.at.L = v.Leave.Levels[d.tank.ID]
	d.point(d.at)
	d.off, d.clock = s.DetourKm/2, v.Leave.Min+s.DetourMin/2
}

// within a stay is a point that leaves nothing behind.
func (d *drawer) within(l trip.Level) {
	l.Stay = true
	d.point(l)
}

// serve does the acts after so many nights. Where a night takes more than the tank holds,
// part of it is lived before an act. lived is that part, in units.
func (d *drawer) serve(acts []planner.Act, nights int, use life.Band, units float64) (lived float64) {
	for k, a := range acts {
		if a.Night != nights {
			continue
		}
		if part := math.Abs(d.at.L - a.From); units > 0 && part > planner.Tolerance {
			lived += part
			d.band.take(trip.Scaled(use, part/max(units, part)), 0)
			d.at.L = a.From
			d.within(d.at)
		}
		d.at.L = a.From
		if d.tank.Kind == planner.Waste {
			d.at.L = 0
		} else {
			d.at.L += a.Amount
		}
		d.band.serve(a.Amount)
		if k+1 < len(acts) {
			d.within(d.at)
		}
	}
	return lived
}

// after is a level so many kilometres and some use on.
func after(t planner.Tank, level, km, use float64) float64 {
	use += t.PerKm * km
	if t.Kind == planner.Waste {
		use = -use
	}
	return min(max(level-use, 0), t.Capacity)
}

// brim is where a tank that driving restores is full before the leg of km
// kilometres ends; ok is false if it is not.
func brim(t planner.Tank, from, to trip.Level, km float64) (at trip.Level, ok bool) {
	gain := -t.PerKm * km
	room := t.Capacity - from.L
	full := t.Capacity
	if t.Kind == planner.Waste {
		room, full = from.L, 0
	}
	if room >= gain-planner.Tolerance || room <= planner.Tolerance {
		return trip.Level{}, false
	}
	f := room / gain
	return trip.Level{Km: from.Km + f*(to.Km-from.Km), Min: from.Min + f*(to.Min-from.Min), Day: to.Day, L: full}, true
}
