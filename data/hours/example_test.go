package hours_test

import (
	"fmt"
	"time"

	"ullage/data/hours"
)

// The Friday is a holiday in Andorra.
func ExampleSchedule_Windows() {
	schedule, err := hours.Parse("Mo-Fr 08:00-12:00,14:00-18:00; PH off")
	if err != nil {
		fmt.Println(err)
		return
	}
	thursday := time.Date(2025, 3, 13, 0, 0, 0, 0, time.UTC)
	windows, known := schedule.Windows(thursday, 2, hours.Where{Country: "AD"})
	fmt.Println(windows, known)
	// Output:
	// [[480 720] [840 1080]] true
}
