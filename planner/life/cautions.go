package life

import (
	"math"

	"ullage/planner/fact"
)

// This file says what the season and the wishes ask people to take care of. What
// belongs to a kind of stop is in package advice.

// Kinds of what is said of a night.
const (
	Frosty        fact.Kind = "night.frost"
	GasStuck      fact.Kind = "night.gas_stuck"  // none comes out
	GasScarce     fact.Kind = "night.gas_scarce" // a share of it comes out
	LithiumCold   fact.Kind = "night.lithium"
	Legionella    fact.Kind = "night.legionella"
	NotForFrost   fact.Kind = "night.shell"
	HookUpHere    fact.Kind = "hookup.note" // what its supply carries: how it is shared out, clause by clause
	SupplyIs      fact.Kind = "hookup.supply"
	SupplyGuessed fact.Kind = "hookup.guess"
	NoMainsHeat   fact.Kind = "hookup.no_heat"
	SomeMainsHeat fact.Kind = "hookup.some_heat"
	MainsHeat     fact.Kind = "hookup.heat"
	KettleBeside  fact.Kind = "hookup.kettle"
	KettleInstead fact.Kind = "hookup.kettle_alone"
	KettleTrips   fact.Kind = "hookup.kettle_trips"
)

// Cautions are what a night of this model asks people to take care of: frost,
// gas, battery, hot water, and what the hook-up carries.
func (m Model) Cautions(n Night) []fact.Fact {
	v, cold := m.Vehicle, fact.Celsius(n.Air.MinC)
	var out []fact.Fact
	if n.Air.MinC < FrostDumpC && v.Heater != NoHeater {
		out = append(out, fact.Of(Frosty, fact.V{"cold": cold, "valve": fact.Celsius(FrostDumpC)}))
	}
	if v.HasLPG {
		if f := v.Gas.InCold(math.Floor(n.Air.MinC)); !f.Nothing() {
			out = append(out, f)
		}
	}
	if v.Battery.Chemistry == LiFePO4 && n.Air.MinC < 0 {
		out = append(out, fact.Of(LithiumCold, fact.V{"freezing": fact.Celsius(0)}))
	}
	if hot := m.Comfort.HotC; hot != 0 && hot < 55 {
		out = append(out, fact.Of(Legionella, fact.V{"kept": fact.Celsius(hot), "boost": fact.Celsius(HotBoost)}))
	}
	if n.Air.MinC < 0 && v.Shell.Grade < 3 && v.Heater != NoHeater {
		out = append(out, fact.Of(NotForFrost, fact.V{"grade": fact.Count(3)}))
	}
	if n.HookUp != nil {
		out = append(out, n.HookUp.Says())
	}
	return out
}

// OfNight tells whether a fact is one of [Model.Cautions].
func OfNight(f fact.Fact) bool {
	switch f.Kind {
	case Frosty, GasStuck, GasScarce, LithiumCold, Legionella, NotForFrost, HookUpHere:
		return true
	}
	return false
}

// InCold is what the cold does to the gas; nothing if all of it comes out.
func (g Gas) InCold(outsideC float64) fact.Fact {
	switch share := g.Evaporates(outsideC); {
	case share > 0.97:
		return fact.Fact{}
	case share < 0.05:
		return fact.Of(GasStuck, fact.V{"cold": fact.Celsius(outsideC)})
	default:
		return fact.Of(GasScarce, fact.V{"cold": fact.Celsius(outsideC), "part": fact.Share(share, 0), "freezing": fact.Celsius(0)})
	}
}

// Says is how a hook-up is shared out.
func (h HookUp) Says() fact.Fact {
	kind := SupplyIs
	if h.SupplyIsAGuess {
		kind = SupplyGuessed
	}
	v := fact.V{"heating": {}, "boiling": {}}
	says := func(name string, kind fact.Kind, values fact.V) { v[name] = fact.Clause(fact.Of(kind, values)) }
	says("gives", kind, fact.V{"amps": fact.Quantity(h.Amps, "A", 0), "power": kW(h.LimitW, 2)})
	switch {
	case h.HeatNeedW == 0:
	case h.HeaterW == 0:
		says("heating", NoMainsHeat, nil)
	case h.GasHeatW > 0:
		says("heating", SomeMainsHeat, fact.V{"step": kW(h.HeaterW, 0), "rest": kW(h.GasHeatW, 1)})
	default:
		says("heating", MainsHeat, fact.V{"step": kW(h.HeaterW, 0)})
	}
	household := fact.Value{} // what trips it even alone
	if !h.KettleAlone {
		household = kW(householdKettleW, 0)
	}
	switch {
	case h.KettleBeside:
		says("boiling", KettleBeside, fact.V{"kettle": kW(kettleW, 0), "household": household})
	case h.HeaterW > 0:
		says("boiling", KettleInstead, fact.V{"household": household})
	case !h.KettleAlone:
		says("boiling", KettleTrips, fact.V{"household": household})
	}
	return fact.Of(HookUpHere, v)
}

func kW(watts float64, digits int) fact.Value { return fact.Quantity(watts/1000, "kW", digits) }
