package life

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/fact"
)

// load is all that runs at the same time, in watts.
func (h HookUp) load() float64 { return h.FridgeW + h.HeaterW + h.ChargerW }

// 230 V × 6, 10, 16 A = 1.38, 2.30, 3.68 kW (calculated); kettle and heater
// trip 6 A (common practice, no source).
func TestHookUp(t *testing.T) {
	all := Mains{HeaterMaxW: 3000, ChargerA: 15, Fridge: Absorption}
	for _, c := range []struct {
		name               string
		amps, need         float64
		mains              Mains
		limit, heater, gas float64
		beside, alone      bool
	}{
		{"6 A, cold", 6, 2500, all, 1380, 1000, 1500, false, false},
		{"unknown is 6 A", 0, 2500, all, 1380, 1000, 1500, false, false},
		{"10 A, cold", 10, 2500, all, 2300, 2000, 500, false, false},
		{"10 A, mild", 10, 700, all, 2300, 1000, 0, false, false},
		{"10 A, a step is just enough", 10, 1000, all, 2300, 1000, 0, false, false},
		{"16 A, cold", 16, 2500, all, 3680, 3000, 0, false, true},
		{"16 A, mild", 16, 700, all, 3680, 1000, 0, true, true},
		{"16 A, heater of 1 kW", 16, 2500, Mains{1000, 15, Absorption}, 3680, 1000, 1500, true, true},
		{"3 A", 3, 2500, all, 690, 0, 2500, false, false},
		{"summer", 10, 0, all, 2300, 0, 0, true, false},
		{"no electric heating", 10, 1500, Mains{0, 15, Compressor}, 2300, 0, 1500, true, true},
	} {
		h := NewHookUp(c.amps, c.mains, c.need)
		if math.Abs(h.LimitW-c.limit) > 1e-9 || h.HeaterW != c.heater || h.GasHeatW != c.gas || h.KettleBeside != c.beside || h.KettleAlone != c.alone {
			t.Errorf("%s: %+v", c.name, h)
		}
	}
	// By hand: 135 W for the fridge, 3 kW, and 15 A × 14.4 V ÷ 0.85 = 254.1 W for the charger.
	if h := NewHookUp(16, all, 2500); math.Abs(h.load()-3389.1) > 0.1 || math.Abs(h.ChargeA()-15) > 1e-9 {
		t.Errorf("16 A carry %v W and charge with %v A, want 3389.1 and 15", h.load(), h.ChargeA())
	}
	// The whole charger of 15 A does not fit beside 1 kW and the fridge on 6 A: it takes what is left.
	if h := NewHookUp(6, all, 1000); h.ChargerW >= 254 || h.load() > h.LimitW {
		t.Errorf("6 A is overloaded: %+v", h)
	}
	amps, unknown, kettle := fact.Quantity(16, "A", 0), fact.Quantity(UnknownAmps, "A", 0), kW(1000, 0)
	beside, trips := fact.Of(KettleBeside, fact.V{"kettle": kettle, "household": {}}), fact.V{"household": kW(2000, 0)}
	for _, c := range []struct {
		name       string
		amps, need float64
		want       map[string]fact.Fact
	}{
		{"not known, cold", math.NaN(), 2500, map[string]fact.Fact{
			"gives": fact.Of(SupplyGuessed, fact.V{"amps": unknown, "power": kW(1380, 2)}), "heating": fact.Of(SomeMainsHeat, fact.V{"step": kW(1000, 0), "rest": kW(1500, 1)}),
			"boiling": fact.Of(KettleInstead, trips)}},
		{"16 A, mild", 16, 700, map[string]fact.Fact{
			"gives": fact.Of(SupplyIs, fact.V{"amps": amps, "power": kW(3680, 2)}), "heating": fact.Of(MainsHeat, fact.V{"step": kW(1000, 0)}), "boiling": beside}},
		{"16 A, cold", 16, 2500, map[string]fact.Fact{
			"gives": fact.Of(SupplyIs, fact.V{"amps": amps, "power": kW(3680, 2)}), "heating": fact.Of(MainsHeat, fact.V{"step": kW(3000, 0)}), "boiling": fact.Of(KettleInstead, fact.V{"household": {}})}},
		{"16 A, summer", 16, 0, map[string]fact.Fact{"gives": fact.Of(SupplyIs, fact.V{"amps": amps, "power": kW(3680, 2)}), "boiling": beside}},
		{"10 A, summer", 10, 0, map[string]fact.Fact{
			"gives": fact.Of(SupplyIs, fact.V{"amps": fact.Quantity(10, "A", 0), "power": kW(2300, 2)}), "boiling": fact.Of(KettleBeside, fact.V{"kettle": kettle, "household": kW(2000, 0)})}},
		{"3 A, cold", 3, 2500, map[string]fact.Fact{
			"gives": fact.Of(SupplyIs, fact.V{"amps": fact.Quantity(3, "A", 0), "power": kW(690, 2)}), "heating": fact.Of(NoMainsHeat, nil), "boiling": fact.Of(KettleTrips, trips)}},
	} {
		want := fact.V{"heating": {}, "boiling": {}}
		for name, f := range c.want {
			want[name] = fact.Clause(f)
		}
		if got := NewHookUp(c.amps, all, c.need).Says(); !got.Equal(fact.Of(HookUpHere, want)) {
			t.Errorf("%s: says %+v, want %+v", c.name, got, want)
		}
	}
}

func TestHookUpNeverOverloads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amps := rapid.Float64Range(-1, 40).Draw(t, "A")
		m := Mains{rapid.Float64Range(0, 4000).Draw(t, "heater"), rapid.Float64Range(0, 40).Draw(t, "charger"), rapid.SampledFrom([]string{Absorption, Compressor, NoFridge}).Draw(t, "fridge")}
		need := rapid.Float64Range(0, 6000).Draw(t, "need")
		h := NewHookUp(amps, m, need)
		if h.load() > h.LimitW+1e-9 {
			t.Errorf("%v W on %v W", h.load(), h.LimitW)
		}
		if more := NewHookUp(h.Amps+4, m, need); more.GasHeatW > h.GasHeatW {
			t.Error("more amperes need more gas")
		}
		if h.KettleBeside && h.load()+kettleW > h.LimitW+1e-9 {
			t.Error("the kettle trips it")
		}
	})
}
