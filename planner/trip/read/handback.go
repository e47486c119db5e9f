package read

import (
	"math"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of the last morning.
const (
	returnLeave fact.Kind = "return.leave"
	returnFerry fact.Kind = "return.ferry"
	returnCall  fact.Kind = "return.call"
	returnEnd   fact.Kind = "return.end"
	returnKeys  fact.Kind = "return.keys"

	keysLate    fact.Kind = "keys.late"
	keysShort   fact.Kind = "keys.short"
	agreedLeast fact.Kind = "agreed.least"
	agreedMost  fact.Kind = "agreed.most"
	agreedEmpty fact.Kind = "agreed.empty"
	agreedShort fact.Kind = "agreed.short"
)

// handBack reads the end of a plan.
func (b reader) handBack(plan planner.Plan, days []trip.Day) *trip.Return {
	last := days[len(days)-1]
	r := &trip.Return{Date: last.Date, ArriveMin: plan.End.Min, KeysByMin: b.Trip.KeysByMin, Station: b.lastStation(plan), Steps: b.lastMorning(days)}
	if r.KeysByMin > 0 {
		r.InHandMin = r.KeysByMin - math.Mod(r.ArriveMin, 1440)
		r.Steps = append(r.Steps, fact.Of(returnKeys, fact.V{"clock": fact.Clock(r.KeysByMin)}))
		switch {
		case r.InHandMin < 0:
			r.Warnings = append(r.Warnings, fact.Of(keysLate, fact.V{"for": fact.Span(-r.InHandMin)}))
		case r.InHandMin < trip.HandOverMin:
			r.Warnings = append(r.Warnings, fact.Of(keysShort, fact.V{"for": fact.Span(r.InHandMin)}))
		}
	}
	for _, k := range b.Trip.Vehicle.Tanks {
		b.agreed(r, k, plan.End.Levels[k.ID])
	}
	return r
}

// lastMorning is what is done from the last night to the end of the route.
func (b reader) lastMorning(days []trip.Day) []fact.Fact {
	last := days[len(days)-1]
	var out []fact.Fact
	if n := len(days); n > 1 && len(days[n-2].Calls) > 0 {
		night := days[n-2].Calls[len(days[n-2].Calls)-1]
		out = append(out, fact.Of(returnLeave, fact.V{"clock": fact.Clock(last.StartMin), "name": b.Calls[night.Stop].Place.Called()}))
	}
	ferries := last.Ferries
	sail := func(before float64) {
		for ; len(ferries) > 0 && ferries[0].StartMin < before; ferries = ferries[1:] {
			f := ferries[0]
			out = append(out, fact.Of(returnFerry, fact.V{"clock": fact.Clock(f.StartMin), "from": fact.Mark(f.FromKm, 0), "to": fact.Mark(f.ToKm, 0)}))
		}
	}
	for _, c := range last.Calls {
		sail(c.ArriveMin)
		var does []fact.Value
		for _, t := range c.Tasks {
			does = append(does, t.Verb.Does(b.called(t.Tank), fact.Quantity(t.Amount, t.Unit, 0)))
		}
		out = append(out, fact.Of(returnCall, fact.V{"clock": fact.Clock(c.ArriveMin), "mark": fact.Mark(c.Km, 0), "name": b.Calls[c.Stop].Place.Called(), "does": fact.List(does...)}))
	}
	sail(last.EndMin)
	return append(out, fact.Of(returnEnd, fact.V{"clock": fact.Clock(last.EndMin)}))
}

// agreed says how a tank comes back, and how it was agreed.
func (b reader) agreed(r *trip.Return, k trip.Tank, level float64) {
	say := func(kind fact.Kind, agreed float64, digits int) {
		r.Agreed = append(r.Agreed, fact.Of(kind, fact.V{"tank": k.Called(), "level": fact.Quantity(level, k.Unit, digits), "agreed": fact.Quantity(agreed, k.Unit, digits)}))
	}
	switch {
	case k.End == nil:
	case k.End.AtLeast != nil:
		missing, digits := *k.End.AtLeast-level, 0
		if missing >= 0.05 { // rounding must not hide it
			digits = 1
		}
		say(agreedLeast, *k.End.AtLeast, digits)
		if missing >= 0.5 {
			r.Warnings = append(r.Warnings, fact.Of(agreedShort, fact.V{"tank": k.Called(), "amount": fact.Quantity(missing, k.Unit, 1)}))
		}
	case k.End.AtMost != nil && *k.End.AtMost < 0.05*k.Capacity:
		r.Agreed = append(r.Agreed, fact.Of(agreedEmpty, fact.V{"tank": k.Called()}))
	case k.End.AtMost != nil:
		say(agreedMost, *k.End.AtMost, 0)
	}
}
