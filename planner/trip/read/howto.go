package read

import (
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// conditions says what holds for the vehicle and the season, for how-tos and
// checklists; more holds what only a call knows.
func (b reader) conditions(frost bool, more ...string) func(string) bool {
	holds := map[string]bool{advice.IsFrost: frost, advice.IsHeavy: b.Trip.Vehicle.MassKg > life.LightKg, advice.IsFerry: len(b.Axis.Ferries) > 0}
	for _, k := range b.Trip.Vehicle.Tanks {
		holds[conditionOf[k.ID]] = true
	}
	if v := b.Trip.Vehicle.Life; v != nil {
		holds[advice.HasGas] = holds[advice.HasGas] || v.HasLPG
		holds[advice.HasAbsorption] = v.Fridge == life.Absorption
		holds[advice.HasLithium] = v.Battery.Chemistry == life.LiFePO4
		holds[advice.HasBoiler] = v.Heater != life.NoHeater
	} else {
		holds[advice.HasAbsorption], holds[advice.HasBoiler] = true, true // not known: say it
	}
	holds[advice.HasAwning] = true // not known either
	for _, c := range more {
		holds[c] = true
	}
	return func(c string) bool { return holds[c] }
}

// conditionOf is what having a tank means.
var conditionOf = map[string]string{"lpg": advice.HasGas, "def": advice.HasDEF, "cassette": advice.HasCassette, "grey": advice.HasGrey, "fresh": advice.HasFresh}

// howTos are the ids of the how-tos of a call. Who stays on hook-up plugs in,
// also with a full battery.
func (b reader) howTos(c trip.Call) []string {
	var out []string
	for _, t := range c.Tasks {
		out = append(out, t.Tank)
	}
	if s := b.Calls[c.Stop].Place.Stay; c.Night && s.HookUp == trip.Yes && !slices.Contains(out, "battery") {
		out = append(out, "battery")
	}
	if c.Night {
		out = append(out, "night")
	}
	return out
}

// minding is the cautions of a how-to in one text, with who decides.
func (b reader) minding(id string, frost bool) (string, bool) {
	h, ok := life.HowToFor(id, b.conditions(frost))
	if !ok {
		return "", false
	}
	var parts []string
	for _, i := range h.Cautions {
		parts = append(parts, i.Text)
	}
	return strings.Join(append(parts, h.Defer), " "), true
}

// frosty says whether a stop of the plan is where nights are near frost.
func (b reader) frosty(plan planner.Plan) bool {
	return b.Use.Lives && slices.ContainsFunc(plan.Visits, func(v planner.Visit) bool {
		return b.nightAt(v.Stop).Air.MinC < life.FrostDumpC
	})
}

// nightAt is the night of a stop as package life has it; the vehicle must live.
func (b reader) nightAt(stop string) life.Night {
	c := b.Calls[stop]
	return b.Use.Stay(c.Place, trip.Where(c.Place), c.Km, false)
}

// instructions gives an itinerary the how-tos of its calls, of the road and of
// the season, and the checklists.
func (b reader) instructions(it *trip.Itinerary, frost bool) {
	used := map[string]bool{"driving": true, "heating": true, "hot-water": true, "frost": frost, "ferry": len(b.Axis.Ferries) > 0}
	var more []string
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, id := range c.HowTo {
				used[id] = true
			}
			used["awning"] = used["awning"] || c.Night
			if slices.Contains(c.HowTo, "battery") {
				more = []string{advice.HasHookUp}
			}
		}
	}
	has := b.conditions(frost, more...)
	for _, h := range advice.HowTos(has) {
		if used[h.ID] {
			it.HowTos = append(it.HowTos, h)
		}
	}
	it.Checklists = advice.Checklists(has)
}
