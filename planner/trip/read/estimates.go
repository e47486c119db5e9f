package read

import "ullage/planner/trip"

// entryM is how far from a place its road must be to be told apart: own choice.
const entryM = 30

// estimates says how many of a plan's calls rest on an estimate of the way.
func estimates(days []trip.Day) (estimated, calls int) {
	for _, d := range days {
		for _, c := range d.Calls {
			calls++
			if !c.ByRoad {
				estimated++
			}
		}
	}
	return estimated, calls
}

// wayCaution says what the distances off the route are: of a plan's days, or,
// where there is no plan, of the places.
func wayCaution(days []trip.Day, places []trip.Candidate) string {
	estimated, calls := estimates(days)
	for _, p := range places {
		if days == nil && p.Excluded == "" {
			if calls++; !p.ByRoad {
				estimated++
			}
		}
	}
	switch {
	case calls > 0 && estimated == 0:
		return "Ways off the route follow the roads of the map data that are open to a vehicle of this height, width, length and mass. Barriers, new signs and works are not in the data: your eyes and the sign on the road decide."
	case estimated < calls:
		return "Ways off the route follow the roads of the map data; those that say estimate are straight line × circuity, since no road is known there. Check each approach with a road sign and your eyes before you turn in."
	}
	return "Distances off the route are estimates (straight line × circuity), not roads: check each approach with a map, a road sign and your eyes before you turn in."
}
