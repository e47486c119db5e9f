package units_test

import (
	"fmt"

	"ullage/planner/life/units"
)

func Example() {
	mpg, _ := units.Of("mpg-imp")
	fmt.Printf("%.1f %s\n", mpg.Show(10.5), mpg.Symbol)
	stored, _ := mpg.Read(30)
	fmt.Printf("%.2f L/100 km\n", stored)
	miles := units.American().Unit(units.Distance)
	fmt.Printf("%.0f %s\n", miles.Show(250), miles.Symbol)
	// Output:
	// 26.9 mpg (imp)
	// 9.42 L/100 km
	// 155 mi
}
