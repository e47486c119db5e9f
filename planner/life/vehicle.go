package life

// A Vehicle is what the model needs to know of a motorhome.
type Vehicle struct {
	Body      string  `json:"body"`                // PanelVan, LowProfile, Integrated, OverCab
	LoadedKg  float64 `json:"loaded_kg"`           // on the road
	Per100    float64 `json:"l_100km,omitempty"`   // on [ReferenceProfile]; 0: usual for the body
	DEFShare  float64 `json:"def_share,omitempty"` // of the diesel; 0: usual; negative: uses no exhaust fluid
	Shell     Shell   `json:"shell"`
	Heater    string  `json:"heater"`               // LPGHeater, DieselHeater, NoHeater; heats the water too
	ElectricW float64 `json:"electric_w,omitempty"` // largest step of the electric heating on mains; 0: none
	Fridge    string  `json:"fridge"`               // Absorption, Compressor, NoFridge
	Battery   Battery `json:"battery"`
	Gas       Gas     `json:"gas"`
	HasLPG    bool    `json:"has_lpg,omitempty"` // cooker, and what else runs on gas
}

// Comfort is what the people wish. A zero is the usual.
type Comfort struct {
	InsideC float64 `json:"inside_c,omitempty"` // by day; usual 20
	NightC  float64 `json:"night_c,omitempty"`  // 22–06 h; usual 5 less than by day
	HotC    float64 `json:"hot_c,omitempty"`    // boiler: HotEnough, HotBoost; usual HotBoost
}

// What may be wished, °C.
const (
	CoolestC, WarmestC           = 5, 30 // inside by day; by night from 0
	CoolestWaterC, HottestWaterC = 30, 80
)

// usual fills in the zeros. 20 °C: EN 1646-1 measures with it; 15 °C at night
// from memory.
func (c Comfort) usual() Comfort {
	if c.InsideC == 0 {
		c.InsideC = 20
	}
	if c.NightC == 0 {
		c.NightC = c.InsideC - 5
	}
	if c.HotC == 0 {
		c.HotC = HotBoost
	}
	return c
}

// Stuck is the share of a full tank that does not come out in the cold, by tank:
// butane that stays liquid at the coldest hour.
func (v Vehicle) Stuck(air Air) map[string]float64 {
	if !v.HasLPG {
		return nil
	}
	return map[string]float64{"lpg": 1 - v.Gas.Evaporates(air.MinC)}
}
