package osm

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/osm/file/filetest"
	"ullage/planner/trip"
)

func TestLend(t *testing.T) {
	const square = `<node id="1" lat="0" lon="0"/><node id="2" lat="0" lon="2"/><node id="3" lat="2" lon="2"/><node id="4" lat="2" lon="0"/>`
	site := func(tags string) string {
		return `<way id="9"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><nd ref="1"/>` + filetest.XML(tags) + `</way>`
	}
	node := func(id, lat, lon, tags string) string {
		return `<node id="` + id + `" lat="` + lat + `" lon="` + lon + `">` + filetest.XML(tags) + `</node>`
	}
	for _, tc := range []struct{ name, text, want string }{
		{"dump inside", site("tourism=camp_site") + node("5", "1", "1", "amenity=sanitary_dump_station | access=customers"), "battery?g cassette+g fresh~g grey~g"},
		{"dump outside", site("tourism=camp_site") + node("5", "3", "1", "amenity=sanitary_dump_station"), "battery?g cassette?g fresh~g grey?g"},
		{"outside on the other axis", site("tourism=camp_site") + node("5", "1", "3", "amenity=sanitary_dump_station"), "battery?g cassette?g fresh~g grey?g"},
		{"yes after likely", site("tourism=caravan_site") + node("5", "1", "1", "amenity=sanitary_dump_station") +
			node("6", "1", "1.5", "amenity=sanitary_dump_station | sanitary_dump_station:grey_water=yes"), "battery? cassette+ fresh? grey+"},
		{"own no stands", site("tourism=caravan_site | sanitary_dump_station=no") + node("5", "1", "1", "amenity=sanitary_dump_station"), "battery? cassette- fresh? grey-"},
		{"water", site("tourism=caravan_site") + node("5", "1", "1", "amenity=water_point"), "battery? cassette? fresh+ grey?"},
		{"water for all on a campsite is for its guests", site("tourism=camp_site") + node("5", "1", "1", "amenity=water_point"), "battery?g cassette?g fresh+g grey?g"},
		{"on the eastern side", site("tourism=caravan_site") + node("5", "1", "2", "amenity=water_point"), "battery? cassette? fresh+ grey?"},
		{"fountain", site("tourism=caravan_site") + node("5", "1", "1", "amenity=drinking_water"), "battery? cassette? fresh? grey?"},
		{"no diesel for a site", site("tourism=caravan_site") + node("5", "1", "1", "amenity=fuel | fuel:diesel=yes"), "battery? cassette? fresh? grey?"},
	} {
		x, err := readBytes([]byte("<osm>" + square + tc.text + "</osm>"))
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range x.Places {
			if got := offersText(p.Offers); p.ID == "w9" && got != tc.want {
				t.Errorf("%s: %s, want %s", tc.name, got, tc.want)
			}
			if o, _ := p.Offer("cassette"); tc.name == "dump inside" && p.ID == "w9" && o.Tag != "amenity=sanitary_dump_station at n5" {
				t.Errorf("evidence = %q", o.Tag)
			}
			if o, _ := p.Offer("fresh"); tc.name == "fountain" && p.ID == "w9" && o.Tag != "tourism=caravan_site" {
				t.Errorf("what is known no better is said of %q", o.Tag)
			}
		}
	}
}

// The slow obvious way: every place against every outline.
func TestLendAgainstAllPairs(t *testing.T) {
	var places []trip.Place
	for i := range 40 { // a lattice of dump stations, and sites
		p, _ := placeOf(object{'n', int64(i), filetest.Tags("amenity=sanitary_dump_station")}, [2]float64{float64(i%8) + 0.1, float64(i/8) + 0.1})
		places = append(places, p)
	}
	first := len(places)
	for i := range 10 {
		p, _ := placeOf(object{'w', int64(i), filetest.Tags("tourism=caravan_site")}, [2]float64{})
		at := float64(i) * 0.7
		p.Outline = orb.LineString{{at, at}, {at + 0.5, at}, {at + 0.5, at + 0.5}, {at, at + 0.5}, {at, at}}
		p.Gates = []orb.Point{{at, at + 0.2}}
		places = append(places, p)
	}
	lend(places)
	for _, site := range places[first:] {
		want := trip.Unknown
		for _, p := range places[:first] {
			in := within(site.Outline, p.Point)
			if in {
				want = trip.Yes
			}
			if got := p.Gates != nil && p.Gates[0] == site.Gates[0] && p.Outline.Equal(site.Outline); got != in {
				t.Errorf("%s in %s: the way in is the site's: %v, want %v", p.ID, site.ID, got, in)
			}
		}
		if got, _ := site.Offer("cassette"); got.Answer != want {
			t.Errorf("site %s: %v, want %v", site.ID, got, want)
		}
	}
}
