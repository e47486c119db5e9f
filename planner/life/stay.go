package life

import "math"

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

// A Night is what a stay uses, and why. [Model.Cautions] says what to take care of.
type Night struct {
	Uses     Uses
	Air      Air
	HeatKWh  float64 // warmth asked of the heater
	WaterKWh float64 // warmth in the hot water, losses included
	HookUp   *HookUp // nil without
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
	d := m.day(s)
	return Night{
		Uses: Uses{
			m.gas(d),
			m.heatingDiesel(d),
			NewUse("fresh", Part{"drinking and cooking", d.water.drunk * d.heads, waterSpread}, Part{"washing and dishes", d.water.grey * d.heads, waterSpread}, Part{"flushing", d.water.flush * d.heads, cassetteSpread}),
			NewUse("grey", Part{"washing and dishes", d.water.grey * d.heads, waterSpread}),
			NewUse("cassette", Part{"toilet", m.Party.cassette(amenities{s.Showers, s.Toilets}) * d.heads, cassetteSpread}),
			m.battery(d),
		},
		Air: d.heat.air, HeatKWh: d.heatKWh, WaterKWh: d.waterKWh, HookUp: d.hook,
	}, nil
}

// A day is a stay with what follows from it for several tanks.
type day struct {
	stay                Stay
	wheel, onPillar     float64 // hours
	heads               float64
	water               water // of one adult
	heat                heating
	heatKWh, waterKWh   float64 // asked for
	burntKWh, boiledKWh float64 // of these without the pillar
	warm                Spread  // of the heat
	hook                *HookUp
}

func (m Model) day(s Stay) day {
	d := day{stay: s, wheel: min(max(s.WheelHours, 0), 24), heads: m.Party.heads(), water: m.Party.day(amenities{s.Showers, s.Toilets})}
	c, v := m.Comfort.usual(), m.Vehicle
	parked := max(24-d.wheel-min(max(s.FerryHours, 0), 24), 0)
	d.heat = heating{air: Outside(s.At, s.YearDay), dayC: c.InsideC, nightC: c.NightC, parked: parked, people: m.Party.Adults + m.Party.Children}
	if v.Heater != NoHeater {
		d.heatKWh = v.Shell.heatKWh(d.heat)
		d.waterKWh = WaterHeatKWh(d.water.warm*d.heads, c.HotC, coldWaterC(d.heat.air))
	}
	d.burntKWh, d.boiledKWh = d.heatKWh, d.waterKWh
	if s.HookUp {
		m.plugIn(&d)
	}
	d.warm = m.heatSpread(d)
	return d
}

// plugIn is what the pillar takes over.
func (m Model) plugIn(d *day) {
	v, parked := m.Vehicle, d.heat.parked
	d.onPillar = min(parked, usualHookHours)
	if d.stay.HookHours > 0 {
		d.onPillar = min(parked, d.stay.HookHours)
	}
	hook := NewHookUp(d.stay.Amps, Mains{v.ElectricW, v.Battery.ChargerA, v.Fridge}, m.coldNeedW(*d))
	d.hook = &hook
	if d.onPillar == 0 {
		return
	}
	share := d.onPillar / parked
	if d.heatKWh > 0 {
		d.burntKWh = d.heatKWh*(1-share) + share*v.Shell.beyondKWh(d.heat, hook.HeaterTopW)
	}
	if v.ElectricW > 0 && hook.LimitW-hook.FridgeW >= heaterStepsW[len(heaterStepsW)-1] {
		d.boiledKWh = 0
	}
}

// coldNeedW is the heat asked for on a day one standard deviation colder than
// the normal, averaged over its hours.
func (m Model) coldNeedW(d day) float64 {
	if d.heatKWh == 0 || d.heat.parked == 0 {
		return 0
	}
	return 1000 * m.Vehicle.Shell.heatKWh(d.heat.colder(d.heat.air.SpreadC, 0)) / d.heat.parked
}

// heatSpread is how far the heat can be off: the shell, and a trip that is
// colder than the normal by one standard deviation. In summer the second is the larger.
func (m Model) heatSpread(d day) Spread {
	if d.heatKWh == 0 {
		return shellSpread
	}
	more := m.Vehicle.Shell.heatKWh(d.heat.colder(tripWeatherC, dayWeatherC))/d.heatKWh - 1
	return Spread{Trip: math.Hypot(shellSpread.Trip, min(max(more, 0), 1.5)), Day: shellSpread.Day}
}

// gas in litres of liquid.
func (m Model) gas(d day) Use {
	v := m.Vehicle
	if !v.HasLPG {
		return Use{Tank: "lpg"}
	}
	litre := v.Gas.KgPerL()
	var parts []Part
	if v.Heater == LPGHeater {
		perL := v.Gas.KWhPerL() * heaterShare
		parts = append(parts, Part{"heating", d.burntKWh / perL, d.warm}, Part{"hot water", d.boiledKWh / perL, gasSpread})
	}
	if v.Fridge == Absorption {
		parts = append(parts, Part{"fridge", fridgeKg(d.heat.air, d.heat.parked-d.onPillar) / litre, gasSpread})
	}
	cook := cookKg * d.heads
	if m.Party.Cooking == "little" {
		cook *= cookLittleBy
	}
	return NewUse("lpg", append(parts, Part{"cooking", cook / litre, gasSpread})...)
}

func (m Model) heatingDiesel(d day) Use {
	if m.Vehicle.Heater != DieselHeater {
		return Use{Tank: "diesel"}
	}
	perL := dieselKWhL * dieselHeaterShare
	return NewUse("diesel", Part{"heating", d.burntKWh / perL, d.warm}, Part{"hot water", d.boiledKWh / perL, gasSpread})
}

// battery counts the loads of the hours without pillar and engine, and what
// panel and charger give. What driving charges belongs to [Model.Drive].
func (m Model) battery(d day) Use {
	v := m.Vehicle
	if v.Battery.PlateAh == 0 {
		return Use{Tank: "battery"}
	}
	share := (24 - d.wheel - d.onPillar) / 24
	parts := []Part{
		{"standby and light", share * (standbyAh + lightAh), loadSpread},
		{"devices", share * devicesAh[m.Party.Devices] * d.heads, loadSpread},
		{"water pump", share * pumpAhL * (d.water.fresh() * d.heads), loadSpread},
		{"heater fan", fanAhKWh * d.burntKWh * share, d.warm},
	}
	switch v.Fridge {
	case Compressor:
		parts = append(parts, Part{"fridge", share * compressorAhDay * warmth(d.heat.air), loadSpread})
	case Absorption:
		parts = append(parts, Part{"fridge electronics", share * absorptionAhDay, loadSpread})
	}
	parts = append(parts, Part{"panel", -PanelAh(v.Battery.PanelW, d.stay.At.Lat, d.stay.YearDay, d.stay.Shade), panelSpread})
	if d.onPillar > 0 {
		parts = append(parts, Part{"charging by mains", -v.Battery.ChargeAh(d.hook.ChargeA(), d.onPillar, v.Battery.UsableAh()), chargeSpread})
	}
	return NewUse("battery", parts...)
}

// panelSpread: [SunKWh] is good to ±20 %, and one day is not like another.
var panelSpread = Spread{Trip: 0.20, Day: 0.50}
