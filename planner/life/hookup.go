package life

// MainsV is the voltage of mains.
const MainsV = 230.0

const (
	// UnknownAmps is counted where a site's supply is not known: the lowest that
	// is common, 6 A (10 A is normal, 6 close behind, 3 seen: practicalmotorhome).
	UnknownAmps = 6.0
	kettleW     = 1000.0 // a travel kettle; from memory. A household's has 2–3 kW
	// A household kettle of more than 2 kW; the usual one.
	householdKettleW, hungryKettleW = 2000.0, 2200.0
	// chargerShare of the mains power reaches the battery; from memory.
	chargerShare = 0.85
	chargeV      = 14.4 // lead-acid in the bulk phase; from memory
)

// heaterStepsW are the steps of mains heating: of 1, 2 and 3 kW, 1–2 is usually
// advised (common practice, no source).
var heaterStepsW = []float64{3000, 2000, 1000}

// Mains is what the vehicle has that runs on 230 V.
type Mains struct {
	HeaterMaxW float64 // largest step of electric heating, 0 for none
	ChargerA   float64 // battery charger at 12 V, 0 for none
	Fridge     string  // Absorption, Compressor, NoFridge
}

// HookUp is what a supply carries at the same time.
type HookUp struct {
	Amps, LimitW   float64
	FridgeW        float64
	HeaterW        float64 // the step that covers the need, or the largest that fits beside the fridge; 0: gas heats
	HeaterTopW     float64 // the largest step that fits, for a colder hour
	ChargerW       float64 // what is left for the charger, at most what it takes
	KettleBeside   bool    // a travel kettle of 1 kW runs beside all of it
	KettleAlone    bool    // a household kettle of 2.2 kW runs when the heater is off
	HeatNeedW      float64
	GasHeatW       float64 // what the heater's gas has to add
	SupplyIsAGuess bool
}

// NewHookUp shares out a supply of amps (0 or NaN: unknown, [UnknownAmps] counts)
// in the order fridge, heating, charger: cold food first, then as much of the
// needed heat as a step of the heater gives, and the battery takes what is left, more
// slowly. Together they never ask for more than the supply.
func NewHookUp(amps float64, m Mains, heatNeedW float64) HookUp {
	h := HookUp{Amps: amps, HeatNeedW: max(heatNeedW, 0)}
	if !(amps > 0) {
		h.Amps, h.SupplyIsAGuess = UnknownAmps, true
	}
	h.LimitW = h.Amps * MainsV
	left := h.LimitW
	if m.Fridge == Absorption && left >= fridgeMainsW {
		h.FridgeW = fridgeMainsW
		left -= h.FridgeW
	}
	// The smallest step that covers the need, if it fits; else the largest that fits.
	for _, step := range heaterStepsW {
		if step > m.HeaterMaxW || step > left {
			continue
		}
		h.HeaterTopW = max(h.HeaterTopW, step)
		if h.HeatNeedW == 0 {
			continue
		}
		if h.HeaterW == 0 || step >= h.HeatNeedW {
			h.HeaterW = step
		}
	}
	left -= h.HeaterW
	h.GasHeatW = max(h.HeatNeedW-h.HeaterW, 0)
	h.ChargerW = min(left, max(m.ChargerA, 0)*chargeV/chargerShare)
	left -= h.ChargerW
	h.KettleBeside = left >= kettleW
	h.KettleAlone = h.LimitW-h.FridgeW >= hungryKettleW
	return h
}

// ChargeA is the current into a 12 V battery.
func (h HookUp) ChargeA() float64 { return h.ChargerW * chargerShare / chargeV }
