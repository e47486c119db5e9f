package life

import (
	"fmt"
	"math"
)

// batteryV is what ampere-hours are counted at; 12.0–13.2 V in use, from memory.
const batteryV = 12.8

// Chemistries of leisure batteries.
const (
	LeadAcid = "lead"
	AGM      = "agm"
	Gel      = "gel"
	LiFePO4  = "lifepo4"
)

// chemistry: usable is the share of the plate that is used; taperH is how the
// charge slows down: a battery takes at most deficit/taperH.
type chemistry struct{ usable, taperH float64 }

// Lead: half (EN 50342's life test, as quoted by aandncaravanservices; 50–60 %,
// 12voltplanet). AGM and gel the same, from memory. Lithium iron phosphate 80–90 %, from
// memory; no charging below 0 °C. Tapers from memory: lead takes hours for
// the last fifth, lithium nearly none.
var chemistries = map[string]chemistry{
	LeadAcid: {0.50, 2.5}, AGM: {0.50, 1.8}, Gel: {0.50, 2.5}, LiFePO4: {0.85, 0.3},
}

// Charging by driving: 15 A through a split charge, 30 A through a
// battery-to-battery charger; from memory. An alternator's nominal 90 A fall
// quickly to a trickle without one (motorhomefun).
const SplitChargeA, BoosterA = 15.0, 30.0

// A Battery is the leisure battery with what charges it.
type Battery struct {
	Chemistry string  `json:"chemistry"`
	PlateAh   float64 `json:"plate_ah"`
	DriveA    float64 `json:"drive_a,omitempty"`   // charge while driving: SplitChargeA, BoosterA; 0 for none
	ChargerA  float64 `json:"charger_a,omitempty"` // on mains; 0 for none
	PanelW    float64 `json:"panel_w,omitempty"`   // peak power on the roof, lying flat; 0 for none
}

// UsableAh is what may be taken from full.
func (b Battery) UsableAh() float64 { return chemistries[b.Chemistry].usable * max(b.PlateAh, 0) }

func (b Battery) validate() error {
	if _, ok := chemistries[b.Chemistry]; !ok && b.PlateAh != 0 {
		return fmt.Errorf("life: battery chemistry %q is not known: use %s, %s, %s or %s", b.Chemistry, LeadAcid, AGM, Gel, LiFePO4)
	}
	for _, v := range []float64{b.PlateAh, b.DriveA, b.ChargerA, b.PanelW} {
		if !(v >= 0) {
			return fmt.Errorf("life: battery %+v: no number may be negative", b)
		}
	}
	return nil
}

// ChargeAh is what a source of amps puts into the battery in so many hours
// when deficitAh are missing: all it has, until the battery takes less and
// the rest comes ever more slowly (dQ/dt = min(amps, deficit/taper)).
func (b Battery) ChargeAh(amps, hours, deficitAh float64) float64 {
	if !(amps > 0 && hours > 0 && deficitAh > 0) {
		return 0
	}
	taper := max(chemistries[b.Chemistry].taperH, 1e-3)
	knee := min(amps*taper, deficitAh) // below it the battery limits
	flat := (deficitAh - knee) / amps
	if hours <= flat {
		return amps * hours
	}
	return deficitAh - knee*math.Exp(-(hours-flat)/taper)
}

// DriveAhPerHour is the charge to plan with for an hour of driving: the mean
// of three hours with half of the usable charge missing.
func (b Battery) DriveAhPerHour() float64 {
	return b.ChargeAh(b.DriveA, 3, b.UsableAh()/2) / 3
}

var (
	chargeSpread = Spread{Trip: 0.25, Day: 0.15} // 15 A and 30 A are from memory
	loadSpread   = Spread{Trip: 0.25, Day: 0.20} // 20–40 Ah/day

)

// fanAhKWh of a blown-air heater: 10–20 Ah on a winter's day of some 30 kWh, from memory.
const fanAhKWh = 0.5
