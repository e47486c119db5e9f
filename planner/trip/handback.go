package trip

import (
	"cmp"
	"fmt"
	"math"
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
	r := &Return{Date: last.Date, ArriveMin: plan.End.Min, KeysByMin: b.Trip.KeysByMin, Station: b.lastStation()}
	for _, c := range last.Calls {
		var does []string
		for _, t := range c.Tasks {
			does = append(does, fmt.Sprintf("%s %s (%.0f %s)", t.Verb, b.tankName(t.Tank), t.Amount, t.Unit))
		}
		r.Steps = append(r.Steps, fmt.Sprintf("%s km %.0f %s: %s", clock(c.ArriveMin), c.Km, label(b.calls[c.Stop].place), cmp.Or(strings.Join(does, ", "), "stop")))
	}
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
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s %.0f %[3]s, agreed at least %.0[4]f %[3]s", k.Name, level, k.Unit, *k.End.AtLeast))
		if missing := *k.End.AtLeast - level; missing >= 0.5 {
			r.Warnings = append(r.Warnings, fmt.Sprintf("%s is %.0f %s short of what is agreed.", k.Name, missing, k.Unit))
		}
	case k.End.AtMost != nil && *k.End.AtMost < 0.05*k.Capacity:
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s empty", k.Name))
	case k.End.AtMost != nil:
		r.Agreed = append(r.Agreed, fmt.Sprintf("%s %.0f %[3]s, agreed at most %.0[4]f %[3]s", k.Name, level, k.Unit, *k.End.AtMost))
	}
}

// lastStation is the last place of the route that sells diesel: the nearest
// of those in the last kilometres, and how far from the end.
func (b *Built) lastStation() string {
	var best *Candidate
	for i := range b.Candidates {
		c := &b.Candidates[i]
		if c.Excluded != "" || !contains(c.Tanks, engine) {
			continue
		}
		left := func(c *Candidate) float64 { return b.axis.lengthKm - c.Km + 2*c.OffKm }
		if best == nil || left(c) < left(best) {
			best = c
		}
	}
	if best == nil {
		return ""
	}
	off := ""
	if best.OffKm >= 0.05 {
		off = fmt.Sprintf(", %.1f km off the route", best.OffKm)
	}
	return fmt.Sprintf("%s, %.0f km before the end%s", label(b.calls[best.Stop].place), b.axis.lengthKm-best.Km, off)
}

func clock(min float64) string {
	m := int(min+0.5) % 1440
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

func span(min float64) string {
	m := int(min + 0.5)
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}
