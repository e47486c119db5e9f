package demo_test

import (
	"bytes"
	"context"
	"fmt"

	"ullage/data/demo"
	"ullage/data/osm"
)

// The island is read like any extract of the real world.
func Example() {
	extract, err := osm.Read(context.Background(), "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range extract.Places {
		if o, ok := p.Offer("lpg"); ok && o.Tag == "fuel:lpg=yes" {
			fmt.Println(p.Name, p.Hours)
		}
	}
	// Output:
	// Imbrel Fuel Mo-Sa 07:00-20:00
	// Sembrel Fuel Altrel Quay Mo-Su 07:00-20:00
}
