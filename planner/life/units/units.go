package units

import (
	"fmt"
	"math"
)

// A Quantity is a kind of number.
type Quantity string

// The quantities, and the unit that each is stored in.
const (
	Distance    Quantity = "distance"    // km
	Length      Quantity = "length"      // m
	Speed       Quantity = "speed"       // km/h
	Volume      Quantity = "volume"      // L
	Consumption Quantity = "consumption" // L/100 km
	Temperature Quantity = "temperature" // °C
	Mass        Quantity = "mass"        // kg
	Energy      Quantity = "energy"      // kWh
)

// Factors are those of NIST Special Publication 811 (2008), appendix B, and of
// NIST Handbook 44, appendix C; those that follow from the definitions of inch,
// pound and gallons are exact.
const (
	mileKm  = 1.609344    // exact: 5280 ft of 0.3048 m
	footM   = 0.3048      // exact
	usGalL  = 3.785411784 // exact: 231 cubic inches of 16.387064 mL
	impGalL = 4.54609     // exact
	poundKg = 0.45359237  // exact
	mjKWh   = 1 / 3.6     // exact
	mpgUS   = 100 * usGalL / mileKm
	mpgImp  = 100 * impGalL / mileKm
)

// A Unit shows one quantity: shown = stored × per + offset, or per ÷ stored
// where it counts the other way round (miles per gallon).
type Unit struct {
	ID       string
	Quantity Quantity
	Symbol   string // as shown behind the number
	Digits   int    // shown after the point
	per      float64
	offset   float64
	inverse  bool
}

// all units; the first of a quantity is the one it is stored in.
var all = []Unit{
	{"km", Distance, "km", 0, 1, 0, false},
	{"mi", Distance, "mi", 0, 1 / mileKm, 0, false},
	{"m", Length, "m", 2, 1, 0, false},
	{"ft", Length, "ft", 1, 1 / footM, 0, false},
	{"km/h", Speed, "km/h", 0, 1, 0, false},
	{"mph", Speed, "mph", 0, 1 / mileKm, 0, false},
	{"L", Volume, "L", 0, 1, 0, false},
	{"gal-imp", Volume, "gal (imp)", 1, 1 / impGalL, 0, false},
	{"gal-us", Volume, "gal (US)", 1, 1 / usGalL, 0, false},
	{"L/100km", Consumption, "L/100 km", 1, 1, 0, false},
	{"mpg-imp", Consumption, "mpg (imp)", 1, mpgImp, 0, true},
	{"mpg-us", Consumption, "mpg (US)", 1, mpgUS, 0, true},
	{"C", Temperature, "°C", 0, 1, 0, false},
	{"F", Temperature, "°F", 0, 1.8, 32, false},
	{"kg", Mass, "kg", 0, 1, 0, false},
	{"lb", Mass, "lb", 0, 1 / poundKg, 0, false},
	{"kWh", Energy, "kWh", 1, 1, 0, false},
	{"MJ", Energy, "MJ", 1, 1 / mjKWh, 0, false},
}

// Of is the unit with an id, ok false if there is none.
func Of(id string) (u Unit, ok bool) {
	for _, u := range all {
		if u.ID == id {
			return u, true
		}
	}
	return Unit{}, false
}

// Show is the stored number as this unit shows it. Of an inverse unit 0 is
// shown as infinity.
func (u Unit) Show(stored float64) float64 {
	if u.inverse {
		return u.per / stored
	}
	return stored*u.per + u.offset
}

// Read is the stored number behind one that was entered. What cannot be (a
// negative mass, 0 miles per gallon, less than −273.15 °C) is an error.
func (u Unit) Read(shown float64) (float64, error) {
	stored := (shown - u.offset) / u.per
	if u.inverse {
		stored = u.per / shown
	}
	if math.IsNaN(stored) || math.IsInf(stored, 0) || stored < 0 && u.Quantity != Temperature || u.Quantity == Temperature && stored < -273.15-1e-9 {
		return 0, fmt.Errorf("units: %v %s is not possible", shown, u.Symbol)
	}
	return stored, nil
}

// ShowPer is a rate per stored unit as a rate per this unit: 1.60 a litre is
// 7.27 a gallon. Temperature and inverse units have no such rate: NaN.
func (u Unit) ShowPer(rate float64) float64 {
	if u.inverse || u.offset != 0 {
		return math.NaN()
	}
	return rate / u.per
}
