package build

import (
	"cmp"
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// besideKm: stops nearer to each other along the route than this are compared
// by [thin]. Driving 1 km uses 0.1 L of diesel: what a plan can lose by taking
// the other one is that much room in a tank.
const besideKm = 1

// thin leaves out stops that another one beside them makes pointless: it
// serves the same tanks and more, each no dearer and to the same people, asks
// no higher fee and no longer detour, is open as much, and neither offers a
// night or is required. A town with twenty equal filling stations keeps the
// nearest of each kilometre. The others remain candidates on the map and ways
// out if a place is closed; they are no stops of the problem.
func thin(stops []planner.Stop, lists [][]string, a trip.Axis) []planner.Stop {
	listed := slices.Concat(lists...)
	km := func(i int) float64 { return a.Route(stops[i].Km) } // a ferry lies between its piers
	order := make([]int, len(stops))
	for i := range order {
		order[i] = i
	}
	// The shortest detour first, so that who is kept is never left out by
	// one that comes later.
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(stops[i].DetourKm, stops[j].DetourKm), cmp.Compare(len(stops[j].Serves), len(stops[i].Serves)))
	})
	keep := make([]bool, len(stops))
	for _, i := range order {
		keep[i] = true
		if slices.Contains(listed, stops[i].ID) {
			continue
		}
		for j := i - 1; j >= 0 && km(i)-km(j) <= besideKm && keep[i]; j-- {
			keep[i] = !(keep[j] && replaces(stops[j], stops[i]))
		}
		for j := i + 1; j < len(stops) && km(j)-km(i) <= besideKm && keep[i]; j++ {
			keep[i] = !(keep[j] && replaces(stops[j], stops[i]))
		}
	}
	out := []planner.Stop{} // null is no list
	for i, s := range stops {
		if keep[i] {
			out = append(out, s)
		}
	}
	return out
}

// replaces is true if stop a does all that b does, and no worse.
func replaces(a, b planner.Stop) bool {
	if a.Night != nil || b.Night != nil || b.Required || a.Fee > b.Fee || a.DetourKm > b.DetourKm || a.DetourMin > b.DetourMin || a.StopMin > b.StopMin {
		return false
	}
	if len(a.Open) > 0 && !slices.Equal(a.Open, b.Open) {
		return false
	}
	for _, y := range b.Serves {
		if !slices.ContainsFunc(a.Serves, func(x planner.Service) bool { return serves(x, y) }) {
			return false
		}
	}
	return true
}

// serves is true if service x does what y does, and no worse.
func serves(x, y planner.Service) bool {
	return x.Tank == y.Tank && x.Price <= y.Price && x.Fee <= y.Fee && x.Min <= y.Min && x.Spare <= y.Spare+1 && x.GuestsOnly == y.GuestsOnly
}
