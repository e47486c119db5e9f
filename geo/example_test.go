package geo_test

import (
	"fmt"

	"github.com/paulmach/orb"

	"ullage/geo"
)

// A road driven out and back passes a place beside it twice.
func ExampleCorridor_Passes() {
	line, err := geo.Measure(orb.LineString{{10, 45}, {10.5, 45}, {10, 45}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, pass := range geo.NewCorridor(line).Passes(orb.Point{10.2, 45.02}, 5000) {
		fmt.Printf("after %.1f km, %.1f km off\n", pass.AlongM/1000, pass.OffM/1000)
	}
	// Output:
	// after 15.8 km, 2.2 km off
	// after 63.1 km, 2.2 km off
}
