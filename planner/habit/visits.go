package habit

import (
	"slices"

	"ullage/planner"
)

// bare are visits as a person chooses them.
func bare(visits []planner.Visit) []planner.Visit {
	out := make([]planner.Visit, len(visits))
	for i, v := range visits {
		out[i] = planner.Visit{Stop: v.Stop, Night: v.Night}
		for _, y := range v.Serve {
			out[i].Serve = append(out[i].Serve, planner.Serve{Tank: y.Tank, Amount: y.Amount})
		}
	}
	return out
}

func kindOf(p *planner.Problem, tank string) planner.Kind {
	return p.Tanks[slices.IndexFunc(p.Tanks, func(t planner.Tank) bool { return t.ID == tank })].Kind
}

// wanted says whether a stop is required, by itself or with others.
func wanted(p *planner.Problem, stop string) bool {
	return p.Stop(stop).Required || slices.ContainsFunc(p.RequireOne, func(list []string) bool { return slices.Contains(list, stop) })
}
