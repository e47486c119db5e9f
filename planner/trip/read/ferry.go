package read

import (
	"ullage/planner/fact"
	"ullage/planner/life/advice"
	"ullage/planner/trip"
)

// Kinds of what is said of a ferry.
const (
	ferryCounted fact.Kind = "ferry.counted"
	ferryTooLong fact.Kind = "ferry.too_long"
	ferryGas     fact.Kind = "ferry.gas"
	ferryOnLand  fact.Kind = "ferry.on_land"
)

// onBoard says how a ferry is counted, and what to ask before.
func (b reader) onBoard(f trip.Crossing) []fact.Fact {
	name, takes := fact.Text(f.Name), fact.Span(f.Min)
	out := []fact.Fact{fact.Of(ferryCounted, fact.V{"name": name, "from": fact.Mark(f.FromKm, 1), "to": fact.Mark(f.ToKm, 1), "for": takes, "basis": fact.Clause(f.Basis)})}
	if most := b.Trip.Day.MaxMin; f.Min > most {
		out = append(out, fact.Of(ferryTooLong, fact.V{"name": name, "for": takes, "time": fact.Span(most)}))
	}
	if b.conditions(moment{})(advice.HasGas) {
		out = append(out, fact.Of(ferryGas, nil))
	}
	return out
}

// dry warns of ferries that the trip names where the map has roads: their
// kilometres would be driven, and use what nobody counts.
func (b reader) dry() []fact.Fact {
	var out []fact.Fact
	for i, f := range b.Trip.Ferries {
		if land := ashoreKm(f, b.OnRoads); land > (f.ToKm-f.FromKm)/2 {
			out = append(out, fact.Of(ferryOnLand, fact.V{"n": fact.Count(i + 1), "from": fact.Mark(f.FromKm, 1), "to": fact.Mark(f.ToKm, 1), "km": fact.Km(land, 0)}))
		}
	}
	return out
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
		out = append(out, c)
	}
	return out
}

// switched is what has to be switched on a vehicle before it goes on board.
func (b reader) switched() []fact.Fact {
	var out []fact.Fact
	h, _ := advice.HowToFor("ferry", b.conditions(moment{}))
	for _, s := range h.Steps {
		if len(s.If) > 0 {
			out = append(out, s.Says)
		}
	}
	return out
}
