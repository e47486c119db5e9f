package units_test

import (
	"fmt"

	"ullage/planner/life/units"
)

func Example() {
	mpg, _ := units.Of("mpg-imp")
	fmt.Println(mpg.Format(10.5))
	stored, _ := mpg.Read(30)
	fmt.Printf("%.2f L/100 km\n", stored)
	fmt.Println(units.American().Unit(units.Distance).Format(250))
	// Output:
	// 26.9 mpg (imp)
	// 9.42 L/100 km
	// 155 mi
}
