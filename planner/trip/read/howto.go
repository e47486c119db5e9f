package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// howTos are the ids of the how-tos of a call: those of its tanks, and of a
// night. Who stays on hook-up plugs in, also with a full battery.
func (b reader) howTos(c trip.Call) []string {
	var out []string
	for _, t := range c.Tasks {
		if !slices.Contains(out, t.Tank) {
			out = append(out, t.Tank)
		}
	}
	if !c.Night {
		return out
	}
	if s := b.Calls[c.Stop].Place.Stay; s.HookUp == trip.Yes {
		for _, k := range b.Trip.Vehicle.Tanks {
			if trip.KindOfTank(k.ID).ByNight && !slices.Contains(out, k.ID) {
				out = append(out, k.ID)
			}
		}
	}
	return append(out, "night")
}

// care is what to take care of in how-tos in a moment, a line each.
func (b reader) care(ids []string, m moment) []fact.Fact {
	var out []fact.Fact
	for _, id := range ids {
		if h, ok := advice.HowToFor(id, b.conditions(m)); ok {
			out = append(out, h.Here()...)
		}
	}
	return out
}

// frosty says whether a stop of the plan is where nights are near frost.
func (b reader) frosty(plan planner.Plan) bool {
	return b.Use.Lives && slices.ContainsFunc(plan.Visits, func(v planner.Visit) bool { return cold(b.nightAt(v.Stop)) })
}

// instructions gives an itinerary the how-tos of its calls, of the road and of
// the season, and the checklists. m is the hardest moment of its nights.
func (b reader) instructions(it *trip.Itinerary, m moment) {
	used := map[string]bool{"driving": true, "heating": true, "hot-water": true, "frost": m.frost, "ferry": len(b.Axis.Ferries) > 0}
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, id := range c.HowTo {
				used[id] = true
				m.hookUp = m.hookUp || trip.KindOfTank(id).ByNight
			}
			used["awning"] = used["awning"] || c.Night
		}
	}
	for _, h := range advice.HowTos(b.conditions(m)) {
		if used[h.ID] {
			it.HowTos = append(it.HowTos, h)
		}
	}
	it.Checklists = advice.Checklists(b.conditions(m))
}
