package trip

import "ullage/planner"

// Fleet returns the made-up models that the tool ships with, in order of
// length. A hire desk puts its own beside them with a fleet file. They differ
// in what limits them: one has no exhaust fluid, one has no LPG.
//
// Sizes are those of usual hire vehicles: 6–7.5 m × 2.2–2.35 m × 2.65–3.1 m,
// 3.5 t (common practice, from memory). Tank sizes: diesel 75 or 90 L on the
// common 3.5 t chassis (an owner's log, exsis55.com; vanamericana.ch), fresh
// water 90–140 L (from memory), grey 90–100 L (from memory), cassette 17.0 or
// 19.3 L (weretherussos.com), exhaust fluid 15–21 L (from memory), LPG 80 % of
// the water volume of the cylinders (27.2 L for 11 kg, calculated), leisure
// battery 75–100 Ah lead-acid used to 50 % (EN 50342 life test, as quoted by
// aandncaravanservices.co.uk), lithium iron phosphate to 85 % (from memory).
func Fleet() []Vehicle {
	return []Vehicle{
		{
			ID: "ulmar", Name: "Ulmar 54, panel van for two",
			HeightM: 2.65, WidthM: 2.05, LengthM: 5.41, MassKg: 3500,
			Tanks: []Tank{
				dieselTank(75, 9.0),
				defTank(17, 9.0),
				lpgTank(27.2 * lpgFill),
				freshTank(90), greyTank(90), cassetteTank(17),
				batteryTank(95*leadUsable, absorptionAh, splitChargeA),
			},
		},
		{
			ID: "ondrel", Name: "Ondrel 60, panel van that heats with diesel",
			HeightM: 2.80, WidthM: 2.05, LengthM: 5.99, MassKg: 3500,
			Tanks: []Tank{
				heatedByDiesel(dieselTank(90, 9.0)),
				defTank(21, 9.0),
				freshTank(100), greyTank(90), cassetteTank(18),
				batteryTank(210*lithiumUsable, compressorAh, boosterA),
			},
		},
		{
			ID: "vessin", Name: "Vessin 68, low profile of the years before exhaust fluid",
			HeightM: 2.90, WidthM: 2.32, LengthM: 6.85, MassKg: 3500,
			Tanks: []Tank{
				dieselTank(90, 10.5),
				lpgTank(2 * 27.2 * lpgFill),
				freshTank(120), greyTank(100), cassetteTank(19),
				batteryTank(95*leadUsable, absorptionAh, splitChargeA),
			},
		},
		{
			ID: "torrask", Name: "Torrask 72, over-cab for a family",
			HeightM: 3.10, WidthM: 2.35, LengthM: 7.21, MassKg: 3500,
			Tanks: []Tank{
				dieselTank(75, 12.0),
				defTank(19, 12.0),
				lpgTank(2 * 27.2 * lpgFill),
				freshTank(140), greyTank(110), cassetteTank(19),
				batteryTank(100*lithiumUsable, absorptionAh, boosterA),
			},
		},
	}
}

const (
	lpgFill       = 0.80 // automatic stop valve (a supplier's page; leshuttle.com)
	leadUsable    = 0.50 // see Fleet
	lithiumUsable = 0.85 // 0.80–0.90, from memory
)

// dieselTank has a litre size and an average use in L/100 km. The reserve is
// where the lamp lights: 12 L (exsis55.com). It goes out full and goes back
// full by the gauge, which is counted as 95 %: common practice, no source; a missing litre costs the fuel and a
// handling charge (published hire terms ask 15–25 EUR besides the fuel).
func dieselTank(size, per100 float64) Tank {
	return Tank{ID: "diesel", Name: "Diesel", Kind: planner.Supply, Unit: "L",
		Capacity: size, Reserve: 12, Start: size,
		Use: Use{PerKm: per100 / 100, Source: sourceDiesel},
		End: &planner.End{AtLeast: new(0.95 * size), RefillPrice: new(2.5)}}
}

// heatedByDiesel adds a heater that burns the vehicle's own fuel.
func heatedByDiesel(t Tank) Tank {
	t.Use.PerNight = dieselHeaterNight
	t.Use.HookUpNight = new(0.0) // an electric heater takes over
	return t
}

// defTank goes out full and is topped up before less than 2,400 km are left,
// where the first warning comes (UN R83 annex 6; totalenergies.cz).
func defTank(size, dieselPer100 float64) Tank {
	perKm := dieselPer100 / 100 * defShare
	return Tank{ID: "def", Name: "Exhaust fluid (DEF)", Kind: planner.Supply, Unit: "L",
		Capacity: size, Reserve: defWarningKm * perKm, Start: size,
		Use: Use{PerKm: perKm, Source: sourceDEF},
		End: &planner.End{AtLeast: new(size / 2), RefillPrice: new(4.0)}}
}

// lpgTank is counted in litres of liquid that go in up to the stop valve. The
// reserve is a night with the heater on.
func lpgTank(usable float64) Tank {
	return Tank{ID: "lpg", Name: "LPG", Kind: planner.Supply, Unit: "L",
		Capacity: usable, Reserve: 3, Start: usable,
		Use: Use{PerNight: lpgNight, HookUpNight: new(lpgHookUpNight), PerPersonNight: lpgCooking, Source: sourceLPG},
		End: &planner.End{AtLeast: new(usable / 2), RefillPrice: new(2.0)}}
}

func freshTank(size float64) Tank {
	return Tank{ID: "fresh", Name: "Fresh water", Kind: planner.Supply, Unit: "L",
		Capacity: size, Reserve: 10, Start: size,
		Use: Use{PerPersonNight: freshAboard, Source: sourceWater}}
}

// greyTank goes back empty: a published hire tariff asks 50 EUR otherwise.
func greyTank(size float64) Tank {
	return Tank{ID: "grey", Name: "Grey water", Kind: planner.Waste, Unit: "L",
		Capacity: size, Reserve: 5,
		Use: Use{PerPersonNight: freshAboard * greyShare, Source: sourceWater},
		End: &planner.End{AtMost: new(size / 10)}}
}

// cassetteTank goes back empty: published hire tariffs ask 50–180 EUR
// otherwise, and the depot cannot empty it. It is emptied at 75–80 % (from
// memory), so a fifth of it is reserve.
func cassetteTank(size float64) Tank {
	return Tank{ID: "cassette", Name: "Toilet cassette", Kind: planner.Waste, Unit: "L",
		Capacity: size, Reserve: size / 5,
		Use: Use{PerPersonNight: cassetteAboard, Source: sourceCassette},
		End: &planner.End{AtMost: new(0.0)}}
}

// batteryTank is counted in usable ampere-hours; driving charges it.
func batteryTank(usable, perDay, chargeA float64) Tank {
	return Tank{ID: "battery", Name: "Leisure battery", Kind: planner.Supply, Unit: "Ah",
		Capacity: usable, Reserve: usable / 10, Start: usable,
		Use: Use{PerKm: -chargeA / chargeKmh, PerNight: perDay, HookUpNight: new(-chargerAh), Source: sourceBattery}}
}
