package life

import "math"

// Properties of liquid gas. Lower heating values: 46.3 and 45.7 MJ/kg (gas
// table of kadatec; 12.87 and 12.69 kWh/kg, tyczka-trading.de). Densities at 15 °C:
// 0.508 and 0.584 kg/L (from memory; kadatec has 0.498 and 0.578 at 20 °C, patioheat.com
// 0.504 for commercial propane at 15.6 °C). kWh per litre are calculated.
const (
	propaneKWhKg, butaneKWhKg = 46.3 / 3.6, 45.7 / 3.6
	propaneKgL, butaneKgL     = 0.508, 0.584
	propaneMol, butaneMol     = 44.10, 58.12 // g/mol

	// FillShare of a tank's or cylinder's water volume is filled with liquid; a stop
	// valve ends the filling (a supplier's page; leshuttle.com).
	FillShare = 0.80

	// regulatorBar is what the gas needs above the air's pressure for the
	// regulator to deliver: 0.3 bar, from memory.
	regulatorBar = 0.3
	airBar       = 1.013
)

// Gas is a mixture of propane and butane. The zero value is pure propane.
type Gas struct {
	ButaneShare float64 `json:"butane_share,omitempty"` // of the mass, 0 to 1; winter autogas 0.2–0.4, summer 0.5–0.7 (vixongas.ro)
}

func (g Gas) butane() float64 { return min(max(g.ButaneShare, 0), 1) }

// KWhPerKg is the heat of a kilogram, the water of burning not condensed.
func (g Gas) KWhPerKg() float64 {
	b := g.butane()
	return b*butaneKWhKg + (1-b)*propaneKWhKg
}

// KgPerL is the mass of a litre of liquid at 15 °C; the volumes add up.
func (g Gas) KgPerL() float64 {
	b := g.butane()
	return 1 / (b/butaneKgL + (1-b)/propaneKgL)
}

// KWhPerL is the heat of a litre of liquid.
func (g Gas) KWhPerL() float64 { return g.KWhPerKg() * g.KgPerL() }

// propaneBar and butaneBar are vapour pressures at °C, absolute: Antoine's
// equation through the boiling points −42.1 and −0.5 °C (kadatec), its slopes
// from memory of the NIST Chemistry WebBook (230–320 K; 195–273 K).
func propaneBar(c float64) float64 { return antoine(c, -42.1, 819.296, -24.417) }
func butaneBar(c float64) float64  { return antoine(c, -0.5, 909.65, -36.146) }

func antoine(c, boilC, slope, shift float64) float64 {
	return airBar * math.Pow(10, slope/(boilC+273.15+shift)-slope/(c+273.15+shift))
}

// Evaporates is the share of a full cylinder's mass that comes out as gas at a
// temperature of the liquid, 0 to 1. The rest is liquid that is too rich in
// butane to reach the regulator's pressure.
//
// Raoult's law for the pressure, Rayleigh's equation for what distils first
// (any textbook of distillation; for instance McCabe, Smith, Harriott, "Unit
// operations"), relative volatility constant. Cooling of the liquid by its own
// evaporation is not in it: heavy use needs a warmer liquid.
func (g Gas) Evaporates(liquidC float64) float64 {
	need := airBar + regulatorBar
	pp, pb := propaneBar(liquidC), butaneBar(liquidC)
	b := g.butane()
	if pb >= need || b == 0 && pp >= need {
		return 1
	}
	if pp <= need {
		return 0
	}
	// Mole fractions of propane: now, and where the pressure gives out.
	x0 := (1 - b) / propaneMol / ((1-b)/propaneMol + b/butaneMol)
	x := (need - pb) / (pp - pb)
	if x0 <= x {
		return 0
	}
	a := pp / pb
	left := math.Exp(-(math.Log(x0/x) + a*math.Log((1-x)/(1-x0))) / (a - 1)) // moles
	mass := func(x float64) float64 { return x*propaneMol + (1-x)*butaneMol }
	return 1 - left*mass(x)/mass(x0)
}

// A GasStore is the cylinders or the tank of a vehicle.
type GasStore struct {
	Count  int     // cylinders that are filled or changed together, ≥ 1; a tank is one
	WaterL float64 // water volume of each; an 11 kg cylinder has 27.2 (calculated)
}

// FullL is how many litres of liquid go in when all are filled in one go.
func (s GasStore) FullL() float64 {
	return FillShare * max(s.WaterL, 0) * float64(max(s.Count, 0))
}
