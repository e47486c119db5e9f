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
	stay := life.Stay{At: life.Where{Lat: 47.3, Lon: 11.4, AltM: new(1100.0)}, YearDay: 15, WheelHours: 3}
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
	n, _ := model().Stay(life.Stay{At: life.Where{Lat: 45, Lon: 7}, YearDay: 167})
	fresh := n.Of("fresh")
	gauge := life.Gauge{Kind: life.QuarterGauge, Capacity: 120}
	now, _ := gauge.Read(1)
	lesson, _ := life.NewFactor(fresh).Learn(life.Observation{
		From: life.Reading{Level: 120}, To: now, Likely: 2 * fresh.Likely, Day: fresh.Spread().Day, N: 2, Unit: "L"})
	said := lesson.Says.Values
	fmt.Printf("expected %.0f %s, the gauge says %.0f %s, from now on %.0f %% %s\n",
		said["expected"].N, said["expected"].Unit, said["used"].N, said["used"].Unit, 100*said["change"].N, said["use"].S)
	fmt.Printf("a day: %.0f L, before %.0f\n", fresh.Learned(lesson.After).Likely, fresh.Likely)
	// Output:
	// expected 80 L, the gauge says 90 L, from now on 5 % more
	// a day: 42 L, before 40
}

func ExampleNewHookUp() {
	h := life.NewHookUp(6, life.Mains{HeaterMaxW: 3000, ChargerA: 15, Fridge: life.Absorption}, 1800)
	fmt.Printf("%.2f kW: heater %.0f W, gas adds %.0f W\n", h.LimitW/1000, h.HeaterW, h.GasHeatW)
	for _, part := range []string{"gives", "heating", "boiling"} {
		fmt.Println(h.Says().Values[part].Fact.Kind)
	}
	// Output:
	// 1.38 kW: heater 1000 W, gas adds 800 W
	// hookup.supply
	// hookup.some_heat
	// hookup.kettle_alone
}
