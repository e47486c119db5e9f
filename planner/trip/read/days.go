package read

import (
	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// days splits a plan into days; a stay of several nights gives days
// without driving.
func (b reader) days(plan planner.Plan, stops map[string]*planner.Stop, closed map[string]*backup.Closure) []trip.Day {
	var out []trip.Day
	day, stop := b.newDay(b.Trip.DoneDays+1, 0, b.Problem.Drive.DepartMin+b.Late()), b.Trip.DoneStops
	km, min := 0.0, b.Problem.Drive.DepartMin // where and when the leg begins, on the planner's axis
	drive := func(to float64) {
		day.DriveKm += to - km
		day.DriveMin += b.driving(km, to)
		for _, f := range b.crossings(km, to, min) {
			f.Mind = b.switched()
			day.Ferries = append(day.Ferries, f)
		}
		day.ToKm, km = b.Axis.Route(to), to
	}
	for _, v := range plan.Visits {
		s := stops[v.Stop]
		drive(s.Km)
		day.DriveKm += s.DetourKm / 2
		day.DriveMin += s.DetourMin / 2
		stop++
		c := b.call(s, v, closed[v.Stop])
		c.N = stop
		day.Calls = append(day.Calls, c)
		min = v.Leave.Min + s.DetourMin/2
		if v.Night {
			day.EndMin = v.Arrive.Min
			out = append(out, day)
			for n := 1; n < s.Night.Nights; n++ {
				rest := b.newDay(day.Number+n, day.ToKm, v.Leave.Min-1440*float64(s.Night.Nights-n))
				rest.Due = due(c, n)
				out = append(out, rest)
			}
			day = b.newDay(day.Number+s.Night.Nights, day.ToKm, v.Leave.Min)
			day.Due = due(c, s.Night.Nights)
		}
		day.DriveKm += s.DetourKm / 2
		day.DriveMin += s.DetourMin / 2
	}
	drive(b.Problem.LengthKm)
	day.EndMin = plan.End.Min
	out = append(out, day)
	for i := range out {
		out[i].Breaks = life.Breaks(out[i].DriveMin)
	}
	return out
}

func (b reader) newDay(number int, km, min float64) trip.Day {
	return trip.Day{Number: number, Date: b.Trip.Start.Plus(number - 1 - b.Trip.DoneDays), FromKm: km, ToKm: km, StartMin: min, EndMin: min}
}

// due are the tasks of a stay after so many of its nights.
func due(c trip.Call, nights int) []trip.Due {
	d := trip.Due{Stop: c.Stop, Kind: c.Kind, Name: c.Name, Leaving: nights == c.Nights}
	for _, t := range c.Tasks {
		if t.Night == nights {
			d.Tasks = append(d.Tasks, t)
		}
	}
	if len(d.Tasks) == 0 {
		return nil
	}
	return []trip.Due{d}
}
