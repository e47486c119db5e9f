package life_test

import (
	"fmt"

	"ullage/planner/life"
)

func model() life.Model {
	return life.Model{
		Vehicle: life.Vehicle{
			Body: life.LowProfile, LoadedKg: 3300, Shell: life.Shell{LengthM: 6.85, WidthM: 2.32, HeightM: 2.9, Grade: 3},
			Heater: life.LPGHeater, ElectricW: 2000, Fridge: life.Absorption, HasLPG: true,
			Battery: life.Battery{Chemistry: life.LeadAcid, PlateAh: 95, DriveA: life.SplitChargeA, ChargerA: 15},
		},
		Party: life.Party{Adults: 2, Showers: "sites"},
	}
}

// A night in the mountains in January, without hook-up and with 10 A.
func ExampleModel_Stay() {
	stay := life.Stay{At: life.Where{Lat: 47.3, Lon: 11.4, AltM: new(1100.0)}, YearDay: life.MidMonth(1), WheelHours: 3}
	for _, amps := range []float64{0, 10} {
		stay.HookUp, stay.Amps = amps > 0, amps
		n, err := model().Stay(stay)
		if err != nil {
			fmt.Println(err)
			return
		}
		gas := n.Of("lpg")
		fmt.Printf("%.0f A: %.1f °C, %.1f L of gas, plan with %.1f\n", amps, n.Air.MeanC, gas.Likely, gas.Planned(life.DefaultConfidence, 3))
	}
	// Output:
	// 0 A: -3.7 °C, 6.7 L of gas, plan with 9.4
	// 10 A: -3.7 °C, 1.8 L of gas, plan with 2.5
}

// Ten kilometres over a pass take nearly three times what the flat takes.
func ExampleModel_Drive() {
	for _, s := range []life.Section{{Km: 10, SpeedKmh: 60}, {Km: 10, SpeedKmh: 40, UpM: 600, DownM: 600}} {
		uses, err := model().Drive([]life.Section{s})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.2f L\n", uses.Of("diesel").Likely)
	}
	// Output:
	// 0.70 L
	// 2.04 L
}

// A gauge of quarters after two days teaches a little.
func ExampleFactor_Learn() {
	n, _ := model().Stay(life.Stay{At: life.Where{Lat: 45, Lon: 7}, YearDay: life.MidMonth(6)})
	fresh := n.Of("fresh")
	gauge := life.Gauge{Kind: life.QuarterGauge, Capacity: 120}
	now, _ := gauge.Read(1)
	lesson, _ := life.NewFactor(fresh).Learn(life.Observation{
		From: life.Reading{Level: 120}, To: now, Likely: 2 * fresh.Likely, Day: fresh.Spread().Day, N: 2, Unit: "L"})
	fmt.Println(lesson.Why)
	fmt.Printf("a day: %.0f L, before %.0f\n", fresh.Learned(lesson.After).Likely, fresh.Likely)
	// Output:
	// Expected to use 80 L, the gauge says 90 L: 42 % of the difference is believed, the plan now counts with 105 % of the usual.
	// a day: 42 L, before 40
}

func ExampleNewHookUp() {
	h := life.NewHookUp(6, life.Mains{HeaterMaxW: 3000, ChargerA: 15, Fridge: life.Absorption}, 1800)
	for _, line := range h.Says() {
		fmt.Println(line)
	}
	// Output:
	// The pillar gives 6 A, 1.38 kW.
	// Heater on the 1 kW step; the other 0.8 kW come from gas or diesel.
	// Switch the heater off while a kettle boils.
	// A household kettle of over 2 kW trips this supply: boil on the cooker.
}
