package read

import (
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
			at: trip.Level{Km: 0, Min: b.Problem.Drive.DepartMin + b.Late(), Day: 1, L: t.Start}}
		d.point(d.at)
		for _, v := range plan.Visits {
			s := stops[v.Stop]
			d.leg(s.Km, s.DetourKm/2, trip.Level{Km: b.Candidates[b.Calls[v.Stop].Candidate].Km, Min: v.Arrive.Min, L: v.Arrive.Levels[k.ID]})
			d.visit(s, v, b.atNight(s, v, i))
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
		d.drive(trip.Level{Km: f.FromKm, Min: f.StartMin, Day: d.at.Day, L: after(d.tank, d.at.L, way)}, way)
		d.left, d.clock, d.off = pier+trip.Metre, f.StartMin+f.Min, 0
		d.drive(trip.Level{Km: f.ToKm, Min: d.clock, Day: d.at.Day, L: after(d.tank, d.at.L, trip.Metre)}, trip.Metre)
	}
	to.Day = d.at.Day
	d.drive(to, d.off+km-d.left+beyond)
	d.left = km
}

// visit is what a call and its nights do to the level.
func (d *drawer) visit(s *planner.Stop, v planner.Visit, nights life.Band) {
	d.at = trip.Level{Km: d.at.Km, Min: v.Leave.Min, Day: d.at.Day, L: v.Leave.Levels[d.tank.ID]}
	if v.Night {
		d.at.Day += s.Night.Nights
	}
	d.band.stop(v, nights)
	d.point(d.at)
	d.off, d.clock = s.DetourKm/2, v.Leave.Min+s.DetourMin/2
}

// after is a level so many kilometres on.
func after(t planner.Tank, level, km float64) float64 {
	if t.Kind == planner.Waste {
		return min(max(level+t.PerKm*km, 0), t.Capacity)
	}
	return min(max(level-t.PerKm*km, 0), t.Capacity)
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
