package trip

import (
	"fmt"
	"math"
	"ullage/planner/fact"
)

// A Ferry is a part of the route that the vehicle does not drive. Its minutes
// count as on the road; its kilometres use nothing and charge nothing, and
// count for no day's kilometres. On board gas is off.
type Ferry struct {
	FromKm float64 `json:"from_km"`
	ToKm   float64 `json:"to_km"`
	Min    float64 `json:"min"` // from joining the queue to driving off
}

// A Crossing is a ferry as a plan has it.
type Crossing struct {
	Ferry
	Name     string    `json:"name,omitempty"`
	Basis    fact.Fact `json:"basis"`     // where the minutes come from
	StartMin float64   `json:"start_min"` // since 00:00 of day one

	Mind []fact.Fact `json:"mind,omitempty"` // what of the vehicle is switched, and when
}

// ferriesAscend says what is wrong with the ferries of a route.
func ferriesAscend(ferries []Ferry) error {
	at := 0.0
	for i, f := range ferries {
		if !(f.FromKm >= at && f.ToKm > f.FromKm) || math.IsInf(f.ToKm, 0) || !within(f.Min, 0, 10_000) {
			return fmt.Errorf("trip: ferry %d runs from km %v to km %v in %v minutes: give ferries in the order of the route, each longer than nothing", i+1, f.FromKm, f.ToKm, f.Min)
		}
		at = f.ToKm
	}
	return nil
}

// within is false for NaN.
func within(v, min, max float64) bool { return v >= min && v <= max }
