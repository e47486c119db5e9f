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

// sail puts the ferries into the pace of the roads.
func sail(roads []planner.Pace, ferries []Ferry) []planner.Pace {
	if len(ferries) == 0 {
		return roads
	}
	var out []planner.Pace
	end, at := roads[len(roads)-1].ToKm, 0.0
	add := func(to, minPerKm float64) {
		if to = min(to, end); to > at {
			out, at = append(out, planner.Pace{ToKm: to, MinPerKm: minPerKm}), to
		}
	}
	drive := func(to float64) {
		for _, p := range roads {
			if p.ToKm > at && at < to {
				add(min(p.ToKm, to), p.MinPerKm)
			}
		}
	}
	for _, f := range ferries {
		drive(f.FromKm)
		add(f.ToKm, f.Min/(f.ToKm-f.FromKm))
	}
	drive(end)
	return out
}

// firstMetre, in km, is where the time passes until a trip begins that begins
// later than its usual departure.
const firstMetre = 0.001

// setOff gives the problem its clock: ferries, and the beginning.
func (b *Built) setOff() {
	d := &b.Problem.Drive
	d.Pace = sail(d.Pace, b.Trip.Ferries)
	if late := b.late(); late > 0 {
		d.Pace = append([]planner.Pace{{ToKm: firstMetre, MinPerKm: late / firstMetre}}, d.Pace...)
	}
}

// late is how much later than its usual departure the trip begins, in minutes.
func (b *Built) late() float64 { return max(b.Trip.FromMin-b.Trip.Day.DepartMin, 0) }

// afterSettingOff moves stops out of the first metre, where the clock is wrong.
func (b *Built) afterSettingOff(stops []planner.Stop) {
	if b.late() == 0 {
		return
	}
	for i := range stops {
		stops[i].Km = max(stops[i].Km, firstMetre)
	}
}

// driving is the minutes at the wheel between two positions.
func (b *Built) driving(fromKm, toKm float64) float64 {
	minutes := b.Problem.Drive.Minutes(fromKm, toKm)
	if fromKm < firstMetre && toKm >= firstMetre {
		minutes -= b.late()
	}
	return minutes
}
