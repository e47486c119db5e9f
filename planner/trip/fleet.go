package trip

import (
	"ullage/planner"
	"ullage/planner/life"
)

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
// Empty masses: from memory, those of the light ones of their size.
//
// What they use comes from package life: diesel on the usual mix of roads van
// 9, low profile 10.5, over-cab 12 L/100 km (from memory, ±15 %; owners' logs: van
// 8–11, coachbuilt at most 10 over a year).
func Fleet() []Vehicle {
	return []Vehicle{
		{
			ID: "ulmar", Name: "Ulmar 54, panel van for two",
			HeightM: 2.65, WidthM: 2.05, LengthM: 5.41, MassKg: 3500, EmptyKg: 2700,
			Tanks: []Tank{
				dieselTank(75), defTank(17, 9.0), lpgTank(cylinders(1)),
				freshTank(90), greyTank(90), cassetteTank(17), batteryTank(lead95),
			},
			Life: &life.Vehicle{
				Body: life.PanelVan, LoadedKg: 3100, Per100: 9, Shell: life.Shell{LengthM: 5.41, WidthM: 2.05, HeightM: 2.65, Grade: 2},
				Heater: life.LPGHeater, HasLPG: true, Fridge: life.Absorption, Battery: lead95,
			},
		},
		{
			ID: "ondrel", Name: "Ondrel 60, panel van that heats with diesel",
			HeightM: 2.80, WidthM: 2.05, LengthM: 5.99, MassKg: 3500, EmptyKg: 2850,
			Tanks: []Tank{
				dieselTank(90), defTank(21, 9.0),
				freshTank(100), greyTank(90), cassetteTank(18), batteryTank(lithium(210)),
			},
			Life: &life.Vehicle{
				Body: life.PanelVan, LoadedKg: 3300, Per100: 9, Shell: life.Shell{LengthM: 5.99, WidthM: 2.05, HeightM: 2.80, Grade: 2},
				Heater: life.DieselHeater, ElectricW: 2000, Fridge: life.Compressor, Battery: lithium(210),
			},
		},
		{
			ID: "vessin", Name: "Vessin 68, low profile of the years before exhaust fluid",
			HeightM: 2.90, WidthM: 2.32, LengthM: 6.85, MassKg: 3500, EmptyKg: 2870,
			Tanks: []Tank{
				dieselTank(90), lpgTank(cylinders(2)),
				freshTank(120), greyTank(100), cassetteTank(19), batteryTank(lead95),
			},
			Life: &life.Vehicle{
				Body: life.LowProfile, LoadedKg: 3350, Per100: 10.5, DEFShare: -1, Shell: life.Shell{LengthM: 6.85, WidthM: 2.32, HeightM: 2.90, Grade: 3},
				Heater: life.LPGHeater, HasLPG: true, Fridge: life.Absorption, Battery: lead95,
			},
		},
		{
			ID: "torrask", Name: "Torrask 72, over-cab for a family",
			HeightM: 3.10, WidthM: 2.35, LengthM: 7.21, MassKg: 3500, EmptyKg: 2930,
			Tanks: []Tank{
				dieselTank(75), defTank(19, 12.0), lpgTank(cylinders(2)),
				freshTank(140), greyTank(110), cassetteTank(19), batteryTank(lithium(100)),
			},
			Life: &life.Vehicle{
				Body: life.OverCab, LoadedKg: 3450, Per100: 12, Shell: life.Shell{LengthM: 7.21, WidthM: 2.35, HeightM: 3.10, Grade: 3},
				Heater: life.LPGHeater, ElectricW: 3000, HasLPG: true, Fridge: life.Absorption, Battery: lithium(100),
			},
		},
	}
}

// lead95 is a lead-acid battery with what usually charges it.
var lead95 = life.Battery{Chemistry: life.LeadAcid, PlateAh: 95, DriveA: life.SplitChargeA, ChargerA: 15}

// What follows is not inlined: the copies were most of this file in the page's
// program.

// lithium has a booster; its charger of 20 A is from memory.
//
//go:noinline
func lithium(plateAh float64) life.Battery {
	return life.Battery{Chemistry: life.LiFePO4, PlateAh: plateAh, DriveA: life.BoosterA, ChargerA: 20}
}

// dieselTank has a litre size. The reserve is where the lamp lights: 12 L
// (exsis55.com). It goes out full and goes back full by the gauge, which is
// counted as 95 %: common practice, no source; a missing litre costs the fuel and a
// handling charge (published hire terms ask 15–25 EUR besides the fuel).
//
//go:noinline
func dieselTank(size float64) Tank {
	return Tank{ID: "diesel", Name: "Diesel", Kind: planner.Supply, Unit: "L", Capacity: size, Reserve: 12, Start: size,
		End: &planner.End{AtLeast: new(0.95 * size), RefillPrice: new(2.5)}}
}

const (
	defShare     = 0.04 // of the diesel burnt, as package life counts; from memory
	defWarningKm = 2400 // range left at the first warning
)

// defTank goes out full and is topped up before less than 2,400 km are left,
// where the first warning comes (UN R83 annex 6; totalenergies.cz).
//
//go:noinline
func defTank(size, dieselPer100 float64) Tank {
	return Tank{ID: "def", Name: "Exhaust fluid (DEF)", Kind: planner.Supply, Unit: "L",
		Capacity: size, Reserve: defWarningKm * dieselPer100 / 100 * defShare, Start: size,
		End: &planner.End{AtLeast: new(size / 2), RefillPrice: new(4.0)}}
}

// cylinders of 11 kg that are filled in one go, in litres.
func cylinders(n int) float64 { return life.GasStore{Count: n, WaterL: 27.2}.FullL() }

// lpgTank is counted in litres of liquid that go in up to the stop valve. The
// reserve is a night with the heater on.
//
//go:noinline
func lpgTank(usable float64) Tank {
	return Tank{ID: "lpg", Name: "LPG", Kind: planner.Supply, Unit: "L", Capacity: usable, Reserve: 3, Start: usable,
		End: &planner.End{AtLeast: new(usable / 2), RefillPrice: new(2.0)}}
}

//go:noinline
func freshTank(size float64) Tank {
	return Tank{ID: "fresh", Name: "Fresh water", Kind: planner.Supply, Unit: "L", Capacity: size, Reserve: 10, Start: size}
}

// greyTank goes back empty: a published hire tariff asks 50 EUR otherwise.
//
//go:noinline
func greyTank(size float64) Tank {
	return Tank{ID: "grey", Name: "Grey water", Kind: planner.Waste, Unit: "L", Capacity: size, Reserve: 5,
		End: &planner.End{AtMost: new(size / 10)}}
}

// cassetteTank goes back empty: published hire tariffs ask 50–180 EUR
// otherwise, and the depot cannot empty it. It is emptied at 75–80 % (from
// memory), so a fifth of it is reserve.
//
//go:noinline
func cassetteTank(size float64) Tank {
	return Tank{ID: "cassette", Name: "Toilet cassette", Kind: planner.Waste, Unit: "L", Capacity: size, Reserve: size / 5,
		End: &planner.End{AtMost: new(0.0)}}
}

// batteryTank is counted in usable ampere-hours.
//
//go:noinline
func batteryTank(b life.Battery) Tank {
	usable := b.UsableAh()
	return Tank{ID: "battery", Name: "Leisure battery", Kind: planner.Supply, Unit: "Ah", Capacity: usable, Reserve: usable / 10, Start: usable}
}
