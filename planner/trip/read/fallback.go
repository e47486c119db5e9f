package read

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/backup"
)

func byStop(closures []backup.Closure) map[string]*backup.Closure {
	out := map[string]*backup.Closure{}
	for i := range closures {
		out[closures[i].Stop] = &closures[i]
	}
	return out
}

// fallback says where to go instead if the place of a visit is closed, as the
// way on was driven: with how much left, or when for the night. What is not
// looked for again on that way can wait.
func (b reader) fallback(s *planner.Stop, v planner.Visit, closed *backup.Closure) string {
	var places, parts []string
	at := map[string][]string{} // by place: what for
	var wait []string
	missed := func(what, name string) {
		id, ok := closed.Fallback[what]
		if !ok {
			wait = append(wait, name)
			return
		}
		if at[id] == nil {
			places = append(places, id)
		}
		i := slices.IndexFunc(closed.Plan.Visits, func(v planner.Visit) bool { return v.Stop == id })
		at[id] = append(at[id], name+b.there(what, closed.Plan.Visits[i].Arrive))
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		if slices.ContainsFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == k.ID }) {
			missed(k.ID, k.Name)
		}
	}
	if v.Night {
		missed(planner.NightFallback, "Night")
	}
	for _, id := range places {
		i := slices.IndexFunc(b.Around, func(x planner.Stop) bool { return x.ID == id })
		parts = append(parts, fmt.Sprintf("%s, %.0f km on: %s", b.Calls[id].Place.Label(), math.Max(b.Axis.Route(b.Around[i].Km)-b.Axis.Route(s.Km), 0), strings.Join(at[id], ", ")))
	}
	if len(wait) > 0 {
		parts = append(parts, "can wait: "+strings.Join(wait, ", "))
	}
	if closed.LongDay {
		parts = append(parts, "the day gets longer than its limit")
	}
	return strings.Join(parts, "; ")
}

// there is what is in hand on arrival at a fallback.
func (b reader) there(what string, arrive planner.Moment) string {
	if what == planner.NightFallback {
		m := int(arrive.Min+0.5) % 1440
		return fmt.Sprintf(" (there at %02d:%02d)", m/60, m%60)
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		if left := b.headroom(k.ID, arrive.Levels[k.ID]); k.ID == what && k.Kind == planner.Waste {
			return fmt.Sprintf(" (room for %.0f %s left)", left, k.Unit)
		} else if k.ID == what {
			return fmt.Sprintf(" (%.0f %s left)", left, k.Unit)
		}
	}
	return ""
}

// noWayOn warns of a place that the trip stands or falls with.
func (b reader) noWayOn(closed *backup.Closure) string {
	why := "the rest of the trip no longer fits"
	var broken *planner.Broken
	if errors.As(closed.Err, &broken) {
		switch broken.Rule {
		case planner.RuleReserve:
			why = b.tankName(broken.Tank) + " does not last"
		case planner.RuleEnd:
			why = b.tankName(broken.Tank) + " is not as agreed at the end"
		case planner.RuleDayKm, planner.RuleDayMin:
			why = "the next place for the night is too far"
		}
	}
	return fmt.Sprintf("If this place is closed, no way on was found: %s. Make sure beforehand that it is open.", why)
}
