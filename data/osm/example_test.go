package osm_test

import (
	"context"
	"fmt"
	"strings"

	"ullage/data/osm"
)

func ExampleRead() {
	const text = `<osm version="0.6">
	<node id="1" lat="50.1" lon="8.2">
		<tag k="amenity" v="fuel"/>
		<tag k="fuel:lpg" v="yes"/>
		<tag k="fuel:octane_95" v="yes"/>
	</node>
</osm>`
	extract, err := osm.Read(context.Background(), "example.osm", strings.NewReader(text), osm.Options{})
	if err != nil {
		fmt.Println(err)
	}
	for _, p := range extract.Places {
		lpg, _ := p.Offer("lpg")
		diesel, _ := p.Offer("diesel")
		fmt.Println(p.ID, p.Kind, p.Point, "lpg by", lpg.Tag, "diesel likely:", diesel.Likely)
	}
	// Output: n1 fuel [8.2 50.1] lpg by fuel:lpg=yes diesel likely: true
}
