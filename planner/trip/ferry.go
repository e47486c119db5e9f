package trip

import (
	"fmt"

	"ullage/planner"
)

// A Ferry is a part of the route that the vehicle does not drive. Its minutes
// count as on the road, boarding included; what its kilometres use is counted as
// if they were driven, which is a little too much.
type Ferry struct {
	FromKm float64 `json:"from_km"`
	ToKm   float64 `json:"to_km"`
	Min    float64 `json:"min"` // from joining the queue to driving off
}

// ferriesAscend says what is wrong with the ferries of a route.
func ferriesAscend(ferries []Ferry) error {
	at := 0.0
	for i, f := range ferries {
		if !(f.FromKm >= at && f.ToKm > f.FromKm) || !within(f.Min, 0, 10_000) {
			return fmt.Errorf("trip: ferry %d runs from km %v to km %v in %v minutes: give ferries in the order of the route, each longer than nothing", i+1, f.FromKm, f.ToKm, f.Min)
		}
		at = f.ToKm
	}
	return nil
}

// pace is how fast the route is driven where no roads tell.
func (t Trip) pace(lengthKm float64) []planner.Pace {
	drive := 60 / t.Day.SpeedKmh
	var out []planner.Pace
	at := 0.0
	add := func(to, minPerKm float64) {
		if to = min(to, lengthKm); to > at {
			out, at = append(out, planner.Pace{ToKm: to, MinPerKm: minPerKm}), to
		}
	}
	for _, f := range t.Ferries {
		add(f.FromKm, drive)
		add(f.ToKm, f.Min/(f.ToKm-f.FromKm))
	}
	add(lengthKm, drive)
	return out
}

const firstMetre = 0.001 // km

// late is how much later than its usual departure the trip begins, in minutes.
func (b *Built) late() float64 { return max(b.Trip.FromMin-b.Trip.Day.DepartMin, 0) }

// driving is the minutes at the wheel between two positions.
func (b *Built) driving(fromKm, toKm float64) float64 {
	minutes := b.Problem.Drive.Minutes(fromKm, toKm)
	if fromKm < firstMetre && toKm >= firstMetre {
		minutes -= b.late()
	}
	return minutes
}

// begin sets the clock of a trip that begins later than its usual departure:
// the time until then passes in the first metre, where no stop is.
func (b *Built) begin(stops []planner.Stop) {
	late := b.late()
	if late == 0 {
		return
	}
	d := &b.Problem.Drive
	d.Pace = append([]planner.Pace{{ToKm: firstMetre, MinPerKm: late / firstMetre}}, d.Pace...)
	for i := range stops {
		stops[i].Km = max(stops[i].Km, firstMetre)
	}
}
