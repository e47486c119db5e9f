package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Kinds of cautions of a whole trip. Those of its stops are the care of the how-tos
// of package advice. They are common practice, no source; none replaces the
// vehicle's handbook, local rules or a licensed person.
const (
	cautionMap      fact.Kind = "caution.map"
	cautionSetOff   fact.Kind = "caution.set_off"
	cautionHotWater fact.Kind = "caution.hot_water"
	cautionBreak    fact.Kind = "caution.break"
	cautionHandbook fact.Kind = "caution.handbook"

	routeRound    fact.Kind = "route.round"
	moneyCurrency fact.Kind = "money.currency"
	moneyPrice    fact.Kind = "money.price"
	dayLong       fact.Kind = "day.long"
	moveShort     fact.Kind = "move.short"
	endMissing    fact.Kind = "end.missing"
)

// always are the cautions of every trip.
func always() []fact.Fact {
	return []fact.Fact{
		fact.Of(cautionMap, nil),
		fact.Of(cautionSetOff, nil),
		fact.Of(cautionHotWater, fact.V{"kept": fact.Celsius(life.HotEnough), "boost": fact.Celsius(life.HotBoost)}),
		fact.Of(cautionBreak, fact.V{"for": fact.Span(life.BreakMin), "time": fact.Span(life.BreakEveryMin)}),
		fact.Of(cautionHandbook, nil),
	}
}

// cautions are those of this trip as a whole, what its ways are among them.
func (b reader) cautions(ways fact.Fact) []fact.Fact {
	out := []fact.Fact{b.Apart, b.Missing}
	if b.Weight != nil {
		out = append(out, b.Weight.Says)
	}
	out = append(out, b.Notes...)
	out = append(out, moneyCaution(b.Trip), life.Heavier(b.Trip.Vehicle.MassKg))
	for _, r := range b.Trip.Round {
		out = append(out, fact.Of(routeRound, fact.V{"road": fact.Text(r)}))
	}
	out = append(out, b.OnRoads.Cautions...)
	if b.Roads != nil {
		out = append(out, b.dry()...)
	}
	for _, f := range b.Axis.Ferries {
		out = append(out, b.onBoard(f.Crossing)...)
	}
	out = append(append(out, ways), always()...)
	return slices.DeleteFunc(out, fact.Fact.Nothing)
}

// moneyCaution says what typical amounts are worth in another currency; nothing in euros.
func moneyCaution(t trip.Trip) fact.Fact {
	if t.Currency == trip.TypicalCurrency {
		return fact.Fact{}
	}
	prices := []fact.Value{}
	for _, k := range t.Vehicle.Tanks {
		if _, own := t.Prices[k.ID]; own {
			continue
		}
		if v, ok := t.Price(k.ID); ok {
			prices = append(prices, fact.Clause(fact.Of(moneyPrice, fact.V{"tank": k.Called(), "rate": fact.Rate(v, t.Currency, k.Unit)})))
		}
	}
	return fact.Of(moneyCurrency, fact.V{"currency": fact.Text(t.Currency), "typical": fact.Text(trip.TypicalCurrency), "prices": fact.List(prices...),
		"sum": fact.Money(trip.StopoverFee, t.Currency), "upto": fact.Money(trip.SiteFee, t.Currency)})
}

// longDays warns of days that are longer than comfortable.
func longDays(days []trip.Day) []fact.Fact {
	var out []fact.Fact
	for _, d := range days {
		if d.DriveKm > life.ComfortableKm+0.5 || d.DriveMin > life.ComfortableMin+0.5 {
			out = append(out, fact.Of(dayLong, fact.V{"n": fact.Count(d.Number), "km": fact.Km(d.DriveKm, 0), "time": fact.Span(d.DriveMin),
				"easy": fact.Km(life.ComfortableKm, 0), "for": fact.Span(life.ComfortableMin)}))
		}
	}
	return out
}

// missing is what comes back short of what the hire agreement says, and what
// that costs; the last tank first.
func (b reader) missing(plan planner.Plan) []fact.Fact {
	var out []fact.Fact
	for _, k := range b.Trip.Vehicle.Tanks {
		// What rounds to nothing is no news.
		if missing := plan.End.Refill[k.ID]; missing >= 0.05 && missing**k.End.RefillPrice >= 0.005 {
			out = append(out, fact.Of(endMissing, fact.V{"tank": k.Called(), "amount": fact.Quantity(missing, k.Unit, 1), "cost": fact.Money(missing**k.End.RefillPrice, b.Trip.Currency)}))
		}
	}
	slices.Reverse(out)
	return out
}

// fewKm: who moves less than that had better stay where they are.
const fewKm = 30

// shortMoves are those from one night to the next that are hardly worth packing up for.
func shortMoves(days []trip.Day) []fact.Fact {
	var out []fact.Fact
	slept, any := 0.0, false
	for _, d := range days {
		for _, c := range d.Calls {
			if !c.Night {
				continue
			}
			if km := c.Km - slept; any && km < fewKm-0.01 {
				out = append(out, fact.Of(moveShort, fact.V{"n": fact.Count(d.Number), "km": fact.Km(km, 0)}))
			}
			slept, any = c.Km, true
		}
	}
	return out
}
