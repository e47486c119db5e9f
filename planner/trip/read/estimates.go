package read

import (
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of what the distances off the route are.
const (
	waysByRoad    fact.Kind = "way.roads"
	waysSome      fact.Kind = "way.some"
	waysEstimated fact.Kind = "way.estimates"
)

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
func wayCaution(days []trip.Day, places []trip.Candidate) fact.Fact {
	estimated, calls := estimates(days)
	for _, p := range places {
		if days == nil && p.Excluded == nil {
			if calls++; !p.ByRoad {
				estimated++
			}
		}
	}
	switch {
	case calls > 0 && estimated == 0:
		return fact.Of(waysByRoad, nil)
	case estimated < calls:
		return fact.Of(waysSome, nil)
	}
	return fact.Of(waysEstimated, nil)
}
