package read

import (
	"fmt"

	"ullage/planner/fact"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// onBoard says how a ferry is counted, and what to ask before.
func (b reader) onBoard(f trip.Crossing) string {
	name := "Ferry"
	if f.Name != "" {
		name += " " + f.Name
	}
	text := fmt.Sprintf("%s, km %.1f to km %.1f: counted as %.0f min without driving (%s). Timetable and fare are not in the plan: ask the operator, and state height, length and mass.", name, f.FromKm, f.ToKm, f.Min, f.Basis)
	if most := b.Trip.Day.MaxMin; f.Min > most {
		text += fmt.Sprintf(" It is longer than a day on the road may be, %.0f min: no plan has it, unless that limit is raised.", most)
	}
	if b.conditions(false)(advice.HasGas) {
		text += " Gas off at the cylinder before you drive on, and say that there is gas on board."
	}
	return text
}

// ashoreKm is how much of a stretch the roads know as road: neither a ferry nor off them.
func ashoreKm(f trip.Ferry, c trip.Course) float64 {
	land := f.ToKm - f.FromKm
	less := func(from, to float64) { land -= max(min(to, f.ToKm)-max(from, f.FromKm), 0) }
	for _, o := range c.Off {
		less(o[0], o[1])
	}
	for _, k := range c.Ferries {
		less(k.FromKm, k.ToKm)
	}
	return land
}

// dry warns of ferries that the trip names where the map has roads: their
// kilometres would be driven, and use what nobody counts.
func (b reader) dry() []string {
	var out []string
	for i, f := range b.Trip.Ferries {
		if land := ashoreKm(f, b.Course); land > (f.ToKm-f.FromKm)/2 {
			out = append(out, fmt.Sprintf("Ferry %d, km %.1f to km %.1f, is on roads of the map data for %.0f km: nothing is counted as used there. Is it still where the route is? Else change or remove it.", i+1, f.FromKm, f.ToKm, land))
		}
	}
	return out
}

// driving is the minutes at the wheel between two of the planner's km.
func (b reader) driving(fromKm, toKm float64) float64 {
	minutes := b.Problem.Drive.Minutes(fromKm, toKm)
	if fromKm < trip.Metre && toKm >= trip.Metre {
		minutes -= b.Late()
	}
	for _, f := range b.Axis.Between(fromKm, toKm) {
		minutes -= f.Min
	}
	return max(minutes, 0)
}

// crossings are the ferries of the leg between two of the planner's km, which begins at a minute.
func (b reader) crossings(fromKm, toKm, min float64) []trip.Crossing {
	var out []trip.Crossing
	for _, f := range b.Axis.Between(fromKm, toKm) {
		c := f.Crossing
		c.StartMin = min + b.Problem.Drive.Minutes(fromKm, f.At)
		if f.At < trip.Metre/2 { // a late beginning passes in the same metre
			c.StartMin += b.Late()
		}
		c.Mind = b.switched()
		out = append(out, c)
	}
	return out
}

// switched is what has to be switched on a vehicle before it goes on board.
func (b reader) switched() []fact.Fact {
	var out []fact.Fact
	h, _ := advice.HowToFor("ferry", b.conditions(false))
	for _, s := range h.Steps {
		if len(s.If) > 0 {
			out = append(out, s.Says)
		}
	}
	return out
}
