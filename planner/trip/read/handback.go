package read

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/trip"
)

// engine is the tank whose last station is named.
const engine = "diesel"

// handBack reads the end of a plan.
func (b reader) handBack(plan planner.Plan, days []trip.Day) *trip.Return {
	last := days[len(days)-1]
	r := &trip.Return{Date: last.Date, ArriveMin: plan.End.Min, KeysByMin: b.Trip.KeysByMin, Station: b.lastStation(plan)}
	if n := len(days); n > 1 && len(days[n-2].Calls) > 0 {
		night := days[n-2].Calls[len(days[n-2].Calls)-1]
		r.Steps = append(r.Steps, fmt.Sprintf("%s leave %s", clock(last.StartMin), b.Calls[night.Stop].Place.Label()))
	}
	ferries := last.Ferries
	sail := func(before float64) {
		for ; len(ferries) > 0 && ferries[0].StartMin < before; ferries = ferries[1:] {
			r.Steps = append(r.Steps, fmt.Sprintf("%s km %.0f ferry to km %.0f, gas off", clock(ferries[0].StartMin), ferries[0].FromKm, ferries[0].ToKm))
		}
	}
	for _, c := range last.Calls {
		sail(c.ArriveMin)
		var does []string
		for _, t := range c.Tasks {
			does = append(does, fmt.Sprintf("%s %s (%.0f %s)", t.Verb, b.tankName(t.Tank), t.Amount, t.Unit))
		}
		r.Steps = append(r.Steps, fmt.Sprintf("%s km %.0f %s: %s", clock(c.ArriveMin), c.Km, b.Calls[c.Stop].Place.Label(), cmp.Or(strings.Join(does, ", "), "stop")))
	}
	sail(r.ArriveMin)
	r.Steps = append(r.Steps, fmt.Sprintf("%s at the end of the route", clock(r.ArriveMin)))
	if r.KeysByMin > 0 {
		r.InHandMin = r.KeysByMin - math.Mod(r.ArriveMin, 1440)
		r.Steps = append(r.Steps, fmt.Sprintf("%s keys", clock(r.KeysByMin)))
		switch {
		case r.InHandMin < 0:
			r.Warnings = append(r.Warnings, fmt.Sprintf("There %s after the keys are due: leave earlier, or sleep nearer to the end.", span(-r.InHandMin)))
		case r.InHandMin < handOverMin:
			r.Warnings = append(r.Warnings, fmt.Sprintf("Only %s until the keys are due: cleaning and hand-over take about an hour.", span(r.InHandMin)))
		}
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		b.agreed(r, k, plan.End.Levels[k.ID])
	}
	return r
}

// handOverMin is for cleaning, unloading and the hand-over; from memory.
const handOverMin = 60

func (b reader) agreed(r *trip.Return, k trip.Tank, level float64) {
	switch {
	case k.End == nil:
	case k.End.AtLeast != nil:
		missing, digits := *k.End.AtLeast-level, 0
		if missing >= 0.05 { // rounding must not hide it
			digits = 1
		}
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s %.*f %s, agreed at least %.*f %s", k.Name, digits, level, k.Unit, digits, *k.End.AtLeast, k.Unit))
		if missing >= 0.5 {
			r.Warnings = append(r.Warnings, fmt.Sprintf("%s is %.1f %s short of what is agreed.", k.Name, missing, k.Unit))
		}
	case k.End.AtMost != nil && *k.End.AtMost < 0.05*k.Capacity:
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s empty", k.Name))
	case k.End.AtMost != nil:
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s %.0f %[3]s, agreed at most %.0[4]f %[3]s", k.Name, level, k.Unit, *k.End.AtMost))
	}
}

// lastStation is the last place of the route that sells diesel and is not
// closed when the plan comes by: the nearest of those in the last kilometres,
// how far from the end, and what is known of its hours. A nearer one that is
// closed then is named too.
func (b reader) lastStation(plan planner.Plan) string {
	var best, closed *trip.Candidate
	var hours string
	left := func(c *trip.Candidate) float64 { return b.Axis.LengthKm - c.Km + 2*c.OffKm }
	for i := len(b.Candidates) - 1; i >= 0; i-- {
		c := &b.Candidates[i]
		if c.Excluded != "" || !slices.Contains(c.Tanks, engine) || best != nil && left(c) >= left(best) {
			continue
		}
		min := b.passing(plan, b.Axis.Driven(c.Km))
		open, known := b.openAt(b.Calls[c.Stop].Place, min)
		says := "whether it is open then is not known"
		if known {
			says = "open when you come by at " + clock(min)
		}
		if day := int(min / 1440); known && day != int(plan.End.Min/1440) {
			says += fmt.Sprintf(" on day %d", day+1)
		}
		if open {
			best, hours = c, says
		} else if closed == nil || left(c) < left(closed) {
			closed = c
		}
	}
	switch {
	case best == nil && closed == nil:
		return ""
	case best == nil:
		return fmt.Sprintf("none is open when you come by: %s, %.0f km before the end, is closed by then", b.Calls[closed.Stop].Place.Label(), b.Axis.LengthKm-closed.Km)
	}
	off := ""
	if best.OffKm >= 0.05 {
		off = fmt.Sprintf(", %.1f km off the route", best.OffKm)
	}
	text := fmt.Sprintf("%s, %.0f km before the end%s; %s", b.Calls[best.Stop].Place.Label(), b.Axis.LengthKm-best.Km, off, hours)
	if closed != nil && left(closed) < left(best) {
		text += fmt.Sprintf("; %s, %.0f km before the end, is closed by then", b.Calls[closed.Stop].Place.Label(), b.Axis.LengthKm-closed.Km)
	}
	return text
}

// openAt says whether a place may be called at in a minute, and whether that is known.
func (b reader) openAt(p *trip.Place, min float64) (may, known bool) {
	if b.Hours == nil || p.Hours == "" {
		return true, false
	}
	windows, known := b.Hours(*p, b.Start, max(b.Days(), int(min/1440)+1))
	if !known {
		return true, false
	}
	return slices.ContainsFunc(windows, func(w [2]float64) bool { return min >= w[0] && min <= w[1] }), true
}

// passing is the minute at which a plan comes by one of the planner's km.
func (b reader) passing(plan planner.Plan, km float64) float64 {
	at, min := 0.0, b.Problem.Drive.DepartMin
	for _, v := range plan.Visits {
		if v.Leave.Km > km {
			break
		}
		if v.Leave.Km == km && !v.Night {
			return v.Arrive.Min
		}
		at, min = v.Leave.Km, v.Leave.Min
	}
	return min + b.Problem.Drive.Minutes(at, km)
}

func clock(min float64) string {
	m := int(min+0.5) % 1440
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

func span(min float64) string {
	m := int(min + 0.5)
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}
