package trip

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/planner"
)

// A Return is the last morning: what is done in which order until the keys are
// given back, and whether the tanks are as agreed.
type Return struct {
	Date      string   `json:"date"`
	ArriveMin float64  `json:"arrive_min"`         // since 00:00 of day one
	KeysByMin float64  `json:"keys_by_min"`        // minutes after midnight of that day; 0: not stated
	InHandMin float64  `json:"in_hand_min"`        // between the two; < 0: too late
	Station   string   `json:"station,omitempty"`  // the last place before the end that sells diesel
	Steps     []string `json:"steps"`              // the last stops, in order, then the hand-over
	Agreed    []string `json:"agreed"`             // each tank that the hire agreement speaks of
	Warnings  []string `json:"warnings,omitempty"` // what is not as agreed
}

// engine is the tank whose last station is named.
const engine = "diesel"

// handBack reads the end of a plan.
func (b *Built) handBack(plan planner.Plan, days []Day) *Return {
	last := days[len(days)-1]
	r := &Return{Date: last.Date, ArriveMin: plan.End.Min, KeysByMin: b.Trip.KeysByMin, Station: b.lastStation(plan)}
	if n := len(days); n > 1 && len(days[n-2].Calls) > 0 {
		night := days[n-2].Calls[len(days[n-2].Calls)-1]
		r.Steps = append(r.Steps, fmt.Sprintf("%s leave %s", clock(last.StartMin), label(b.calls[night.Stop].place)))
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
		r.Steps = append(r.Steps, fmt.Sprintf("%s km %.0f %s: %s", clock(c.ArriveMin), c.Km, label(b.calls[c.Stop].place), cmp.Or(strings.Join(does, ", "), "stop")))
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

func (b *Built) agreed(r *Return, k Tank, level float64) {
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
func (b *Built) lastStation(plan planner.Plan) string {
	var best, closed *Candidate
	var hours string
	left := func(c *Candidate) float64 { return b.axis.lengthKm - c.Km + 2*c.OffKm }
	for i := len(b.Candidates) - 1; i >= 0; i-- {
		c := &b.Candidates[i]
		if c.Excluded != "" || !contains(c.Tanks, engine) || best != nil && left(c) >= left(best) {
			continue
		}
		min := b.passing(plan, b.axis.driven(c.Km))
		open, known := b.openAt(b.calls[c.Stop].place, min)
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
		return fmt.Sprintf("none is open when you come by: %s, %.0f km before the end, is closed by then", label(b.calls[closed.Stop].place), b.axis.lengthKm-closed.Km)
	}
	off := ""
	if best.OffKm >= 0.05 {
		off = fmt.Sprintf(", %.1f km off the route", best.OffKm)
	}
	text := fmt.Sprintf("%s, %.0f km before the end%s; %s", label(b.calls[best.Stop].place), b.axis.lengthKm-best.Km, off, hours)
	if closed != nil && left(closed) < left(best) {
		text += fmt.Sprintf("; %s, %.0f km before the end, is closed by then", label(b.calls[closed.Stop].place), b.axis.lengthKm-closed.Km)
	}
	return text
}

// openAt says whether a place may be called at in a minute, and whether that is known.
func (b *Built) openAt(p *Place, min float64) (may, known bool) {
	if b.hours == nil || p.Hours == "" {
		return true, false
	}
	windows, known := b.hours(*p, b.start, max(b.days(), int(min/1440)+1))
	if !known {
		return true, false
	}
	return slices.ContainsFunc(windows, func(w [2]float64) bool { return min >= w[0] && min <= w[1] }), true
}

// passing is the minute at which a plan comes by one of the planner's km.
func (b *Built) passing(plan planner.Plan, km float64) float64 {
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
