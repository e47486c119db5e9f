package read

import (
	"fmt"
	"slices"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/life"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// This file reads a plan back as days, calls and levels.

// Itinerary reads a plan of the problem as people do, and closes each of its
// stops in turn to say where to go instead. The plan must be one that
// [audit.Check] passed; a plan that names stops which the problem does not
// have is an error. An infeasible plan gives an itinerary without days that
// says why.
func Itinerary(b *build.Built, plan planner.Plan) (trip.Itinerary, error) {
	for _, v := range plan.Visits {
		if !slices.ContainsFunc(b.Problem.Stops, func(s planner.Stop) bool { return s.ID == v.Stop }) {
			return trip.Itinerary{}, fmt.Errorf("trip: the plan visits stop %q, which this trip does not have", v.Stop)
		}
	}
	if plan.End == nil {
		return Closed(b, plan, nil), nil
	}
	return Closed(b, plan, backup.Closures(b.Whole(), plan)), nil
}

// A reader reads plans of one built trip.
type reader struct{ *build.Built }

// Closed is Itinerary with what becomes of the trip if a stop is closed, which is
// known already; nil: not looked into.
func Closed(built *build.Built, plan planner.Plan, closures []backup.Closure) trip.Itinerary {
	b := reader{built}
	closed := byStop(closures)
	it := trip.Itinerary{Name: b.Trip.Name, Status: plan.Status, Currency: b.Trip.Currency, Cost: plan.Cost, Bound: plan.Bound,
		LengthKm: b.Axis.LengthKm, Places: slices.Clone(b.Candidates), Estimated: true, OffRoad: b.Course.Off, Confidence: b.Trip.Confident(), Weight: b.Weight, Done: b.Trip.Done}
	own := b.cautions()
	it.Cautions = append(append(slices.Clone(own), wayCaution(nil, b.Candidates)), tripCautions...)
	if plan.End == nil {
		if plan.Status == planner.Infeasible {
			it.Why = b.why(plan.Why)
		}
		return it
	}
	stops := map[string]*planner.Stop{}
	for i := range b.Problem.Stops {
		stops[b.Problem.Stops[i].ID] = &b.Problem.Stops[i]
	}
	if plan.Parts != nil {
		it.Parts = *plan.Parts
	}
	it.Days = b.calendar(plan, stops, closed)
	it.Strips = b.strips(plan, stops)
	it.Cautions[len(own)] = wayCaution(it.Days, nil)
	estimated, _ := estimates(it.Days)
	it.Estimated = estimated > 0 || len(plan.Visits) == 0
	it.Counts = b.counts()
	it.Return = b.handBack(plan, it.Days)
	b.instructions(&it, b.frosty(plan))
	it.Cautions = append(it.Cautions, longDays(it.Days)...)
	for _, v := range plan.Visits {
		it.Places[b.Calls[v.Stop].Candidate].Chosen = true
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		// What rounds to nothing is no news.
		if missing := plan.End.Refill[k.ID]; missing >= 0.05 && missing**k.End.RefillPrice >= 0.005 {
			it.Cautions = append([]string{fmt.Sprintf(
				"%s comes back %.1f %s short of what the hire agreement says: the plan counts that as %.2f %s.",
				k.Name, missing, k.Unit, missing**k.End.RefillPrice, it.Currency)}, it.Cautions...)
		}
	}
	return it
}

// calendar splits a plan into days; a stay of several nights gives days
// without driving.
func (b reader) calendar(plan planner.Plan, stops map[string]*planner.Stop, closed map[string]*backup.Closure) []trip.Day {
	var days []trip.Day
	day := b.newDay(1, 0, b.Problem.Drive.DepartMin+b.Late())
	km, min := 0.0, b.Problem.Drive.DepartMin // where and when the leg begins, on the planner's axis
	drive := func(to float64) {
		day.DriveKm += to - km
		day.DriveMin += b.driving(km, to)
		day.Ferries = append(day.Ferries, b.crossings(km, to, min)...)
		day.ToKm, km = b.Axis.Route(to), to
	}
	for _, v := range plan.Visits {
		s := stops[v.Stop]
		drive(s.Km)
		day.DriveKm += s.DetourKm / 2
		day.DriveMin += s.DetourMin / 2
		day.Calls = append(day.Calls, b.call(s, v, closed[v.Stop]))
		min = v.Leave.Min + s.DetourMin/2
		if v.Night {
			day.EndMin = v.Arrive.Min
			days = append(days, day)
			for n := 1; n < s.Night.Nights; n++ {
				days = append(days, b.newDay(day.Number+n, day.ToKm, v.Leave.Min-1440*float64(s.Night.Nights-n)))
			}
			day = b.newDay(day.Number+s.Night.Nights, day.ToKm, v.Leave.Min)
		}
		day.DriveKm += s.DetourKm / 2
		day.DriveMin += s.DetourMin / 2
	}
	drive(b.Problem.LengthKm)
	day.EndMin = plan.End.Min
	days = append(days, day)
	for i := range days {
		days[i].Breaks = life.Breaks(days[i].DriveMin)
	}
	return days
}

// longDays warns of days that are longer than comfortable.
func longDays(days []trip.Day) []string {
	var out []string
	for _, d := range days {
		if d.DriveKm > life.ComfortableKm+0.5 || d.DriveMin > life.ComfortableMin+0.5 {
			out = append(out, fmt.Sprintf("Day %d is long: %.0f km and %s at the wheel. Up to %.0f km or %.0f h are comfortable; a lower limit of a day gives shorter ones.",
				d.Number, d.DriveKm, span(d.DriveMin), life.ComfortableKm, life.ComfortableMin/60))
		}
	}
	return out
}

func (b reader) newDay(number int, km, min float64) trip.Day {
	return trip.Day{Number: number, Date: b.Start.AddDate(0, 0, number-1).Format(trip.DateLayout), FromKm: km, ToKm: km, StartMin: min, EndMin: min}
}

// strips draws each tank's level along the route: two points where a call
// jumps, one at each end of a ferry, one more where charging while driving
// reaches the brim.
func (b reader) strips(plan planner.Plan, stops map[string]*planner.Stop) []trip.Strip {
	var out []trip.Strip
	for i, k := range b.Trip.Vehicle.Tanks {
		t := b.Problem.Tanks[i]
		strip := trip.Strip{Tank: k.ID, Name: k.Name, Kind: k.Kind, Unit: k.Unit, Capacity: k.Capacity, Reserve: t.Reserve}
		at := trip.Level{Km: 0, Min: b.Problem.Drive.DepartMin + b.Late(), Day: 1, L: t.Start}
		left, clock := 0.0, b.Problem.Drive.DepartMin // the planner's km and minute at which the route is on again
		off := 0.0                                    // half detour of the stop behind, driven at the start of the leg
		band, perKm := newCourse(t), b.Use.PerKm(k)
		strip.Points = append(strip.Points, band.fill(at))
		drive := func(to trip.Level, km float64) {
			part := 0.0
			if brim, ok := brim(t, at, to, km); ok {
				part = (brim.Km - at.Km) / max(to.Km-at.Km, 1e-9)
				band.take(trip.Scaled(perKm, part*km), 0)
				strip.Points = append(strip.Points, band.fill(brim))
			}
			band.take(trip.Scaled(perKm, (1-part)*km), 0)
			strip.Points = append(strip.Points, band.fill(to))
			at = to
		}
		// leg goes to one of the planner's km, which is to's, and half a detour beyond.
		leg := func(km, beyond float64, to trip.Level) {
			for _, f := range b.crossings(left, km, clock) {
				pier := b.Axis.Driven(f.FromKm)
				drive(trip.Level{Km: f.FromKm, Min: f.StartMin, Day: at.Day, L: after(t, at.L, off+pier-left)}, off+pier-left)
				left, clock, off = pier+trip.Metre, f.StartMin+f.Min, 0
				drive(trip.Level{Km: f.ToKm, Min: clock, Day: at.Day, L: after(t, at.L, trip.Metre)}, trip.Metre)
			}
			to.Day = at.Day
			drive(to, off+km-left+beyond)
			left = km
		}
		for _, v := range plan.Visits {
			s := stops[v.Stop]
			leg(s.Km, s.DetourKm/2, trip.Level{Km: b.Candidates[b.Calls[v.Stop].Candidate].Km, Min: v.Arrive.Min, L: v.Arrive.Levels[k.ID]})
			at = trip.Level{Km: at.Km, Min: v.Leave.Min, Day: at.Day, L: v.Leave.Levels[k.ID]}
			if v.Night {
				at.Day += s.Night.Nights
			}
			band.stop(v, b.atNight(s, v, i))
			strip.Points = append(strip.Points, band.fill(at))
			off, clock = s.DetourKm/2, v.Leave.Min+s.DetourMin/2
		}
		leg(b.Problem.LengthKm, 0, trip.Level{Km: b.Axis.LengthKm, Min: plan.End.Min, L: plan.End.Levels[k.ID]})
		out = append(out, strip)
	}
	return out
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
	if gain <= 0 || room >= gain-planner.Tolerance || room <= planner.Tolerance {
		return trip.Level{}, false
	}
	f := room / gain
	return trip.Level{Km: from.Km + f*(to.Km-from.Km), Min: from.Min + f*(to.Min-from.Min), Day: to.Day, L: full}, true
}
