package life

import (
	"fmt"
	"math"
)

// Heater fuels.
const (
	LPGHeater    = "lpg"
	DieselHeater = "diesel"
	NoHeater     = "none"
)

// A Shell is the living part of a vehicle as far as it loses heat.
type Shell struct {
	LengthM float64 `json:"length_m"` // outside, over all
	WidthM  float64 `json:"width_m"`
	HeightM float64 `json:"height_m"`
	Grade   int     `json:"grade,omitempty"` // EN 1646-1: 1, 2, 3; 0: unknown, counts as 2
}

// Heat lost per square metre and degree, ventilation and windows included, by
// grade of EN 1646-1. Grade 2 heats from 0 °C to 20 °C within two hours, grade
// 3 from −15 °C to 20 °C within four (campingkaufberatung.de,
// niese-caravan.de). The numbers are from memory; TestGrades holds them
// against what heaters of that class can do.
var gradeLoss = [4]float64{0: 1.4, 1: 1.9, 2: 1.4, 3: 1.1} // W/(m² K)

// groundClearanceM is the part of the height that is wheels; from memory.
const groundClearanceM = 0.5

// LossWPerK is the heat that the shell loses for each degree between inside
// and outside, ±25 %.
func (s Shell) LossWPerK() float64 {
	h := max(s.HeightM-groundClearanceM, 0)
	area := 2 * (s.LengthM*s.WidthM + s.LengthM*h + s.WidthM*h)
	return gradeLoss[min(max(s.Grade, 0), 3)] * max(area, 0)
}

func (s Shell) validate() error {
	if s.Grade < 0 || s.Grade > 3 {
		return fmt.Errorf("life: heating grade %d: EN 1646-1 has 1, 2 and 3; 0 is unknown", s.Grade)
	}
	if !(s.LengthM > 0 && s.WidthM > 0 && s.HeightM > 0) {
		return fmt.Errorf("life: the vehicle measures %v × %v × %v m: state its size", s.LengthM, s.WidthM, s.HeightM)
	}
	return nil
}

// heatCapacityMJ of what is inside, per degree: some 400 kg of wood, cloth and
// stores at 1.6–2 kJ/(kg K); from memory.
const heatCapacityMJ = 0.8

// HeatUpH is how many hours a heater of so many watts takes from the outside's
// temperature to a wished one; +Inf if it cannot. The shell's loss and the
// heat that furniture takes are counted, people and sun are not.
func (s Shell) HeatUpH(heaterW, outsideC, toC float64) float64 {
	rise := toC - outsideC
	if !(rise > 0) {
		return 0
	}
	loss := s.LossWPerK()
	if !(heaterW > loss*rise) {
		return math.Inf(1)
	}
	return -heatCapacityMJ * 1e6 / 3600 / loss * math.Log(1-loss*rise/heaterW)
}

const (
	nightHours = 8.0 // 22–06 h, as [Air] counts them
	// personW is the dry heat of a resting person: about 100 W in all, 70 of it dry
	// (ISO 7730, 1 met; from memory).
	personW = 70.0
	// thingsW: light, fridge, cooking; from memory.
	thingsW = 60.0
	// dayW is the sun through windows and roof on an average day's hours; from memory.
	dayW = 150.0
	// heaterShare of the gas becomes warmth inside: 0.87 as with hot water, calculated.
	heaterShare = 0.87
	// dieselHeaterShare of the diesel; from memory.
	dieselHeaterShare = 0.80
	dieselKWhL        = dieselMJ / 3.6
)

// heating is what a heater works against: the air outside, what is wished inside
// by day and by night, for so many parked hours of a day, with so many people.
type heating struct {
	air                  Air
	dayC, nightC, parked float64
	people               int
}

// colder is the same on a day that is colder by so many degrees; spreadC is what
// is still not known of it.
func (h heating) colder(byC, spreadC float64) heating {
	h.air.DayC, h.air.NightC, h.air.SpreadC = h.air.DayC-byC, h.air.NightC-byC, spreadC
	return h
}

// heatKWh is the warmth that a day asks of the heater, on average over the
// weather of that season: 24 h hold 8 h of night. People rest inside at night
// and half of the day.
//
// What is lost is loss × (inside − outside) less what people, things and the
// sun give. Weather is normal around the mean, so that a mild month still has its cold
// days: E max(0, X) = μ Φ(μ/σ) + σ φ(μ/σ).
func (s Shell) heatKWh(h heating) float64 { return s.beyondKWh(h, 0) }

// beyondKWh is the part of heatKWh that a first heater of so many watts leaves
// to a second one.
func (s Shell) beyondKWh(h heating, firstW float64) float64 {
	hours := min(max(h.parked, 0), 24)
	night := min(hours, nightHours)
	loss := s.LossWPerK()
	w := func(inside, outside, gain float64) float64 {
		mean, sigma := loss*(inside-outside)-gain-firstW, loss*max(h.air.SpreadC, 0.1)
		z := mean / sigma
		if z < -6 { // less than a billionth of σ is left, and rounding would be all of it
			return 0
		}
		return mean*0.5*math.Erfc(-z/math.Sqrt2) + sigma*math.Exp(-z*z/2)/math.Sqrt(2*math.Pi)
	}
	return (night*w(h.nightC, h.air.NightC, thingsW+personW*float64(h.people)) +
		(hours-night)*w(h.dayC, h.air.DayC, thingsW+dayW+personW*float64(h.people)/2)) / 1000
}

const (
	// waterWhLK is the heat capacity of water: 4.187 kJ/(kg K), any table.
	waterWhLK = 4.187 / 3.6
	// useC is the temperature at which people wash and shower; from memory.
	useC = 38.0
	// HotBoost kills legionella and is the boost; HotEnough is enough for most (common practice, no source).
	HotEnough, HotBoost = 40.0, 60.0
	// boilerL of a common heater (5–14 L); from memory.
	boilerL = 10.0
	// boilerLossWK of a small insulated boiler; from memory. Kept hot 4 h a day.
	boilerLossWK, boilerHours = 1.2, 4.0
)

// WaterHeatKWh is the heat for so many litres of warm water in a day, the
// boiler set to hotC. cold is the water in the tank. One heating-up is lost
// when the rest cools down.
func WaterHeatKWh(warmL, hotC, coldC float64) float64 {
	if !(warmL > 0) {
		return 0
	}
	drawn := warmL * waterWhLK * max(min(useC, hotC)-coldC, 0)
	rest := boilerL/2*waterWhLK*max(hotC-coldC, 0) + boilerLossWK*boilerHours*max(hotC-20, 0)
	return (drawn + rest) / 1000
}

// coldWaterC is the water in a tank inside the vehicle: between outside and
// inside, never frozen; from memory.
func coldWaterC(air Air) float64 { return min(max(air.MeanC, 8), 20) }

// FrostDumpC is where a frost valve empties the boiler: about 3 °C (a vehicle's
// manual, p. 163; 4–5 °C quoted elsewhere).
const FrostDumpC = 3.0

// Fridges.
const (
	Absorption = "absorption" // gas, 12 V while driving, mains
	Compressor = "compressor" // 12 V
	NoFridge   = "none"
)

const (
	// fridgeKgDay at 20 °C outside: 17.5 g/h, the middle of 10–25 g/h (vehicle
	// manual of 2012, p. 81); 80 L take 20 g/h (womopedia). 3 % a degree within that range; from memory.
	fridgeKgDay              = 0.42
	fridgeKgMin, fridgeKgMax = 0.24, 0.60
	// compressorAhDay at 20 °C: with the loads beside it 50–80 Ah/day, from memory. An owner
	// counts 60 W half of the time beyond 25 °C (spainhelp.co.uk): 56 Ah/day.
	compressorAhDay = 40.0
	absorptionAhDay = 3.0   // its electronics; from memory
	fridgeMainsW    = 135.0 // from memory (125–190 W)
)

// warmth scales a fridge's use with the air around it.
func warmth(air Air) float64 { return max(1+0.03*(air.MeanC-20), 0.5) }

// fridgeKg is the gas of an absorption fridge in so many hours.
func fridgeKg(air Air, hours float64) float64 {
	return min(max(fridgeKgDay*warmth(air), fridgeKgMin), fridgeKgMax) * hours / 24
}

const (
	// cookKg a person and day: 0.1–0.2 kg for a crew of two; from memory. A van's crew
	// cooked on 5 kg for three to four weeks, 0.18–0.24 kg a day (rkh.tondok-verlag.de).
	cookKg       = 0.075
	cookLittleBy = 0.3
)

var (
	shellSpread = Spread{Trip: 0.25, Day: 0.15} // the shell ±25 %, doors and windows by the day; from memory
	gasSpread   = Spread{Trip: 0.20, Day: 0.20} // fridge 0.25–0.6, cooking 0.1–0.2 kg
)
