package life

import (
	"errors"
	"fmt"
	"math"
)

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

// A Model says what a trip uses. [Model.Validate] rejects the zero value.
type Model struct {
	Vehicle Vehicle
	Party   Party
	Comfort Comfort
}

// Validate names the first thing that is wrong.
func (m Model) Validate() error {
	v := m.Vehicle
	if _, err := NewEngine(v.Body, v.LoadedKg, v.Per100); err != nil {
		return err
	}
	switch v.Heater {
	case LPGHeater, DieselHeater, NoHeater:
	default:
		return fmt.Errorf("life: heater %q is not known: use %s, %s or %s", v.Heater, LPGHeater, DieselHeater, NoHeater)
	}
	switch v.Fridge {
	case Absorption, Compressor, NoFridge:
	default:
		return fmt.Errorf("life: fridge %q is not known: use %s, %s or %s", v.Fridge, Absorption, Compressor, NoFridge)
	}
	if v.Heater == LPGHeater && !v.HasLPG {
		return errors.New("life: the heater burns gas, but the vehicle has none: set HasLPG or another heater")
	}
	if !(v.ElectricW >= 0) || !(v.DEFShare <= 0.2) {
		return fmt.Errorf("life: electric heating %v W, exhaust fluid %v of the diesel: out of range", v.ElectricW, v.DEFShare)
	}
	if c := m.Comfort.usual(); !(c.InsideC >= 5 && c.InsideC <= 30 && c.NightC >= 0 && c.NightC <= 30 && c.HotC >= 30 && c.HotC <= 80) {
		return fmt.Errorf("life: wished are %v °C by day, %v °C by night, water of %v °C: use 5–30, 0–30 and 30–80", c.InsideC, c.NightC, c.HotC)
	}
	return errors.Join(v.Shell.validate(), v.Battery.validate(), m.Party.Validate())
}

// Drive is what sections of the route use: diesel and exhaust fluid, and what
// the battery gets back (negative). Divide by their kilometres for a use per
// km; count 100 km as one day of [Use.Planned].
func (m Model) Drive(sections []Section) (Uses, error) {
	v := m.Vehicle
	engine, err := NewEngine(v.Body, v.LoadedKg, v.Per100)
	if err != nil {
		return nil, err
	}
	var flat, climb, hours float64
	for i, s := range sections {
		if !(s.Km >= 0) || !s.Ferry && s.Km > 0 && !(s.SpeedKmh > 0) || math.IsInf(s.Km, 0) {
			return nil, fmt.Errorf("life: section %d has %v km at %v km/h: state how it is driven", i+1, s.Km, s.SpeedKmh)
		}
		level := s
		level.UpM, level.DownM = 0, 0
		l := engine.Litres(v.LoadedKg, level)
		flat += l
		climb += engine.Litres(v.LoadedKg, s) - l
		hours += s.Hours()
	}
	share := v.DEFShare
	if share == 0 {
		share = defShare
	}
	def := Spread{Trip: math.Hypot(driveSpread.Trip, defSystematic), Day: driveSpread.Day}
	return Uses{
		NewUse("diesel", Part{"driving", flat, driveSpread}, Part{"climbing", climb, driveSpread}),
		NewUse("def", Part{"exhaust treatment", max(share, 0) * (flat + climb), def}),
		NewUse("battery", Part{"charging by driving", -v.Battery.DriveAhPerHour() * hours, chargeSpread}),
	}, nil
}

// A Stay is a day with a night at one place, 24 hours in all.
type Stay struct {
	At         Where
	YearDay    int
	WheelHours float64 // of the 24, engine running: no heater, fridge on 12 V; 0 for a day without driving
	FerryHours float64 // of the 24, on a ferry: gas off
	HookUp     bool
	Amps       float64 // of the hook-up; 0: unknown, [UnknownAmps] counts
	HookHours  float64 // on the pillar; 0: the usual 16 of a travelling day, never more than there are
	Showers    bool    // of the place, in use
	Toilets    bool
	Shade      float64 // of the sun on the roof, 0 to 1
}

// usualHookHours: from arrival at 17 h to departure at 9 h; common practice, no source.
const usualHookHours = 16.0

// A Night is what a stay uses, and why.
type Night struct {
	Uses     Uses
	Air      Air
	HeatKWh  float64 // warmth asked of the heater
	WaterKWh float64 // warmth in the hot water, losses included
	HookUp   *HookUp // nil without
	Cautions []string
}

// Of is the use of a tank.
func (n Night) Of(tank string) Use { return n.Uses.Of(tank) }

// Stay is what a day and night at a place use, from all tanks. A hook-up
// carries fridge, hot water, charger and as much of the heating as its current
// allows; while driving the fridge runs on 12 V; on a ferry gas is off; else
// gas does it. O(1).
func (m Model) Stay(s Stay) (Night, error) {
	if err := m.Validate(); err != nil {
		return Night{}, err
	}
	wheel, ferry := min(max(s.WheelHours, 0), 24), min(max(s.FerryHours, 0), 24)
	parked := max(24-wheel-ferry, 0)
	v, p, c := m.Vehicle, m.Party, m.Comfort.usual()
	n := Night{Air: Outside(s.At, s.YearDay)}
	people := p.Adults + p.Children
	water := p.day(s.Showers, s.Toilets)
	heads := p.heads()

	n.HeatKWh = v.Shell.HeatKWh(n.Air, c.InsideC, c.NightC, parked, people)
	n.WaterKWh = WaterHeatKWh(water.warm*heads, c.HotC, coldWaterC(n.Air))
	if v.Heater == NoHeater {
		n.HeatKWh, n.WaterKWh = 0, 0
	}

	// What the pillar takes over.
	var hook HookUp
	var onPillar float64
	if s.HookUp {
		onPillar = min(parked, usualHookHours)
		if s.HookHours > 0 {
			onPillar = min(parked, s.HookHours)
		}
		hook = NewHookUp(s.Amps, Mains{v.ElectricW, v.Battery.ChargerA, v.Fridge}, m.coldNeedW(n, c, parked, people))
		n.HookUp = &hook
	}
	burnt, boiled := n.HeatKWh, n.WaterKWh
	if onPillar > 0 {
		share := onPillar / parked
		if n.HeatKWh > 0 {
			burnt = n.HeatKWh*(1-share) + share*v.Shell.beyondKWh(n.Air, c.InsideC, c.NightC, parked, people, hook.HeaterTopW)
		}
		if v.ElectricW > 0 && hook.LimitW-hook.FridgeW >= heaterStepsW[len(heaterStepsW)-1] {
			boiled = 0
		}
	}

	warm := m.heatSpread(n, c, parked, people)
	n.Uses = Uses{
		m.gas(n.Air, burnt, boiled, warm, parked-onPillar, heads),
		m.heatingDiesel(burnt, boiled, warm),
		NewUse("fresh", Part{"drinking and cooking", water.drunk * heads, waterSpread}, Part{"washing and dishes", water.grey * heads, waterSpread}, Part{"flushing", water.flush * heads, cassetteSpread}),
		NewUse("grey", Part{"washing and dishes", water.grey * heads, waterSpread}),
		NewUse("cassette", Part{"toilet", p.cassette(s.Toilets) * heads, cassetteSpread}),
		m.battery(n, s, burnt, warm, water.fresh()*heads, wheel, onPillar),
	}
	n.Cautions = m.cautions(n, s)
	return n, nil
}

// coldNeedW is the heat asked for on a day one standard deviation colder than
// the normal, averaged over its hours.
func (m Model) coldNeedW(n Night, c Comfort, parked float64, people int) float64 {
	if n.HeatKWh == 0 || parked == 0 {
		return 0
	}
	cold := n.Air
	cold.DayC, cold.NightC, cold.SpreadC = cold.DayC-cold.SpreadC, cold.NightC-cold.SpreadC, 0
	return 1000 * m.Vehicle.Shell.HeatKWh(cold, c.InsideC, c.NightC, parked, people) / parked
}

// heatSpread is how far the heat can be off: the shell, and a trip that is
// colder than the normal by one standard deviation. In summer the second is the larger.
func (m Model) heatSpread(n Night, c Comfort, parked float64, people int) Spread {
	if n.HeatKWh == 0 {
		return shellSpread
	}
	cold := n.Air
	cold.DayC, cold.NightC, cold.SpreadC = cold.DayC-tripWeatherC, cold.NightC-tripWeatherC, dayWeatherC
	more := m.Vehicle.Shell.HeatKWh(cold, c.InsideC, c.NightC, parked, people)/n.HeatKWh - 1
	return Spread{Trip: math.Hypot(shellSpread.Trip, min(max(more, 0), 1.5)), Day: shellSpread.Day}
}

// gas in litres of liquid.
func (m Model) gas(air Air, heatKWh, waterKWh float64, warm Spread, gasHours, heads float64) Use {
	v := m.Vehicle
	if !v.HasLPG {
		return Use{Tank: "lpg"}
	}
	litre := v.Gas.KgPerL()
	var parts []Part
	if v.Heater == LPGHeater {
		perL := v.Gas.KWhPerL() * heaterShare
		parts = append(parts, Part{"heating", heatKWh / perL, warm}, Part{"hot water", waterKWh / perL, gasSpread})
	}
	if v.Fridge == Absorption {
		parts = append(parts, Part{"fridge", fridgeKg(air, gasHours) / litre, gasSpread})
	}
	cook := cookKg * heads
	if m.Party.Cooking == "little" {
		cook *= cookLittleBy
	}
	return NewUse("lpg", append(parts, Part{"cooking", cook / litre, gasSpread})...)
}

func (m Model) heatingDiesel(heatKWh, waterKWh float64, warm Spread) Use {
	if m.Vehicle.Heater != DieselHeater {
		return Use{Tank: "diesel"}
	}
	perL := dieselKWhL * dieselHeaterShare
	return NewUse("diesel", Part{"heating", heatKWh / perL, warm}, Part{"hot water", waterKWh / perL, gasSpread})
}

// battery counts the loads of the hours without pillar and engine, and what
// panel and charger give. What driving charges belongs to [Model.Drive].
func (m Model) battery(n Night, s Stay, burntKWh float64, warm Spread, freshL, wheel, onPillar float64) Use {
	v := m.Vehicle
	if v.Battery.PlateAh == 0 {
		return Use{Tank: "battery"}
	}
	share := (24 - wheel - onPillar) / 24
	parts := []Part{
		{"standby and light", share * (standbyAh + lightAh), loadSpread},
		{"devices", share * devicesAh[m.Party.Devices] * m.Party.heads(), loadSpread},
		{"water pump", share * pumpAhL * freshL, loadSpread},
		{"heater fan", fanAhKWh * burntKWh * share, warm},
	}
	switch v.Fridge {
	case Compressor:
		parts = append(parts, Part{"fridge", share * compressorAhDay * warmth(n.Air), loadSpread})
	case Absorption:
		parts = append(parts, Part{"fridge electronics", share * absorptionAhDay, loadSpread})
	}
	parts = append(parts, Part{"panel", -PanelAh(v.Battery.PanelW, s.At.Lat, s.YearDay, s.Shade), panelSpread})
	if onPillar > 0 {
		parts = append(parts, Part{"charging by mains", -v.Battery.ChargeAh(n.HookUp.ChargeA(), onPillar, v.Battery.UsableAh()), chargeSpread})
	}
	return NewUse("battery", parts...)
}

// panelSpread: [SunKWh] is good to ±20 %, and one day is not like another.
var panelSpread = Spread{Trip: 0.20, Day: 0.50}

// cautions that belong to the season and the wishes; those of a kind of stop are
// in [HowTos].
func (m Model) cautions(n Night, s Stay) []string {
	var out []string
	v := m.Vehicle
	if n.Air.MinC < FrostDumpC && v.Heater != NoHeater {
		out = append(out, fmt.Sprintf("Nights near %.0f °C: below about 3 °C a valve empties the boiler unless the heater runs, and outdoor taps and drains may be shut off. The handbook says how to keep water from freezing.", n.Air.MinC))
	}
	if v.HasLPG {
		if w := v.Gas.FrostWarning(math.Floor(n.Air.MinC)); w != "" {
			out = append(out, w)
		}
	}
	if v.Battery.Chemistry == LiFePO4 && n.Air.MinC < 0 {
		out = append(out, "A lithium battery must not be charged below 0 °C: keep its place warm before you drive off or plug in, as the handbook says.")
	}
	if m.Comfort.HotC != 0 && m.Comfort.HotC < 55 {
		out = append(out, "Water kept at 40 °C can grow legionella: heat it to 60 °C before you shower, and mind scalding.")
	}
	if n.Air.MinC < 0 && v.Shell.Grade < 3 && v.Heater != NoHeater {
		out = append(out, "This vehicle is not tested for hard frost (EN 1646-1 grade 3): expect cold corners and frozen waste pipes.")
	}
	if n.HookUp != nil {
		out = append(out, n.HookUp.Says()...)
	}
	return out
}
