package data_test

import (
	"fmt"
	"strings"

	"ullage/app/say"
	"ullage/data"
	"ullage/geo"
)

// A track of two segments, with a ferry between them.
func ExampleReadRoute() {
	file := strings.NewReader(`<gpx version="1.1"><trk><name>To the island</name>
		<trkseg><trkpt lat="50" lon="1"/><trkpt lat="50.1" lon="1"/></trkseg>
		<trkseg><trkpt lat="50.3" lon="1"/><trkpt lat="50.4" lon="1"/></trkseg></trk></gpx>`)
	route, err := data.ReadRoute("island.gpx", file)
	if err != nil {
		fmt.Println(err)
		return
	}
	line, err := geo.Measure(route.Line())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.1f km\n%s\n", route.Name, line.LengthM()/1000, say.Voice{}.Fact(route.Notes[0]))
	// Output:
	// To the island: 44.5 km
	// between part 1 and part 2 lies a gap of 22.2 km, joined by a straight line
}
