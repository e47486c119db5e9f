package osm

import (
	"bytes"
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

// placesText writes places as "n7 fuel -1.5 52.5".
func placesText(x Extract) string {
	var words []string
	for _, p := range x.Places {
		words = append(words, fmt.Sprintf("%s %s %.4g %.4g", p.ID, p.Kind, p.Point[0], p.Point[1]))
	}
	return strings.Join(words, ", ")
}

func readBytes(data []byte) (Extract, error) {
	return Read(context.Background(), "x.osm.pbf", bytes.NewReader(data), Options{})
}

// By hand: the square's centre is (10.5, 50.5) as a closed way and as a relation of two halves.
func TestSample(t *testing.T) {
	const want = "n4 fuel 10 51, n7 fuel -1.5 52.5, w10 fuel 10.5 50.5, r20 campsite 10.5 50.5"
	x, err := readBytes(samplePBF())
	if got := placesText(x); err != nil || got != want {
		t.Errorf("got %s (%v), want %s", got, err, want)
	}
}

// Blocks may stand in any order, and one block may hold all kinds.
func TestAnyOrder(t *testing.T) {
	x, err := readBytes(samplePBF())
	if err != nil {
		t.Fatal(err)
	}
	want := placesText(x)
	parts := [][]byte{sampleNodes(), sampleWays(), sampleRelations()}
	for _, order := range [][]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		data := headerBlock("DenseNodes")
		for _, i := range order {
			data = append(data, fileBlock("OSMData", rawBlob(parts[i]))...)
		}
		if x, err := readBytes(data); err != nil || placesText(x) != want {
			t.Errorf("order %v: %s (%v)", order, placesText(x), err)
		}
	}
	// The same strings in each, so the groups fit one block: drop the repeated string tables.
	all := append(headerBlock(), fileBlock("OSMData", rawBlob(slices.Concat(sampleNodes(), sampleWays()[len(message{}.data(1, sampleStrings)):],
		sampleRelations()[len(message{}.data(1, sampleStrings)):])))...)
	if x, err := readBytes(all); err != nil || placesText(x) != want {
		t.Errorf("one block: %s (%v)", placesText(x), err)
	}
}

// Unknown block types and fields are passed over, as the format demands.
func TestUnknownIsSkipped(t *testing.T) {
	data := headerBlock()
	data = append(data, fileBlock("Later", rawBlob([]byte("anything")))...)
	data = append(data, fileBlock("OSMData", rawBlob(message(sampleNodes()).number(99, 5).text(98, "later")))...)
	if x, err := readBytes(data); err != nil || len(x.Places) != 2 {
		t.Errorf("%s, %v", placesText(x), err)
	}
}

// Position in nanodegrees = offset + granularity · number (PBF_Format, "Definition of OSMData").
func TestGranularity(t *testing.T) {
	plain := message{}.signed(1, 7).data(2, packed(1)).data(3, packed(2)).signed(8, 5).signed(9, -3)
	data := message{}.data(1, sampleStrings).data(2, message{}.data(1, plain)).number(17, 1_000_000).number(19, 50_000_000_000).number(20, 10_000_000_000)
	x, err := readBytes(append(headerBlock(), fileBlock("OSMData", rawBlob(data))...))
	if err != nil || len(x.Places) != 1 || x.Places[0].Point != (orb.Point{9.997, 50.005}) {
		t.Errorf("%v %v", x.Places, err)
	}
}

func TestDamaged(t *testing.T) {
	node := func(change func(m message) message) []byte {
		return fileBlock("OSMData", rawBlob(message{}.data(1, sampleStrings).data(2, message{}.data(1, change(message{}.signed(1, 7))))))
	}
	dense := func(m message) []byte {
		return fileBlock("OSMData", rawBlob(message{}.data(1, sampleStrings).data(2, message{}.data(2, m))))
	}
	for _, tc := range []struct {
		name string
		data []byte
		want string
	}{
		{"feature", headerBlock("HistoricalInformation"), `demands the feature "HistoricalInformation"`},
		{"no string", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1, 99)).data(3, packed(2, 2)) })...), "damaged"},
		{"more keys than values", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1, 1)).data(3, packed(2)) })...), "damaged"},
		{"off the earth", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1)).data(3, packed(2)).signed(8, 1e15) })...), "damaged"},
		{"positions missing", append(headerBlock(), dense(message{}.data(1, deltas(1)).data(10, packed(1, 2, 0)))...), "damaged"},
		{"tags not closed", append(headerBlock(), dense(message{}.data(1, deltas(1)).data(8, deltas(1)).data(9, deltas(1)).data(10, packed(1, 2)))...), "damaged"},
		{"LZ4", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(6, "x"))...), "packed with LZ4"},
		{"Zstandard", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(7, "x"))...), "packed with Zstandard"},
		{"no data", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9))...), "no data in a packing"},
		{"too long", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 1<<30).text(3, "x"))...), "1073741824 bytes unpacked, allowed are 33554432"},
		{"not zlib", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(3, "nonsense"))...), "unpack the block"},
		{"lying size", append(headerBlock(), fileBlock("OSMData", message(bytes.Replace(zlibBlob(make([]byte, 100)), []byte{0x10, 100}, []byte{0x10, 50}, 1)))...), "its header says 50"},
		{"huge header", []byte("\x00\x00\x00\x0d\x0a\x09OSMHeader\x18\x00\x7f\xff\xff\xff"), "byte 17: a block header of 2147483647 bytes"},
	} {
		if _, err := readBytes(tc.data); err == nil || !strings.Contains(err.Error(), tc.want) || !strings.Contains(err.Error(), "x.osm.pbf: byte ") {
			t.Errorf("%s: error = %v, want … %s", tc.name, err, tc.want)
		}
	}
}

// Whatever the bytes, reading them ends with an extract or an error.
func FuzzRead(f *testing.F) {
	f.Add(samplePBF())
	f.Add([]byte(`<osm><node id="1" lat="50" lon="10"><tag k="amenity" v="fuel"/></node><way id="2"><nd ref="1"/><tag k="amenity" v="fuel"/></way></osm>`))
	f.Add([]byte(`<osm><relation id="3"><center lat="1" lon="2"/><member type="way" ref="2" role="outer"/><tag k="tourism" v="camp_site"/></relation></osm>`))
	f.Add([]byte("BZh9"))
	f.Add([]byte("\x1f\x8b\x08"))
	f.Fuzz(func(t *testing.T, data []byte) {
		readBytes(data)
	})
}

// The block decoder by itself, as zlib keeps a fuzzer from it.
func FuzzBlock(f *testing.F) {
	f.Add(sampleNodes())
	f.Add(sampleWays())
	f.Add(sampleRelations())
	look := newLookup(append(placeTags(), backdropTags()...))
	f.Fuzz(func(t *testing.T, data []byte) {
		var b block
		b.open(data, look)
		b.nodes(ids{1, 2, 5})
		b.ways(ids{11})
		b.relations()
	})
}

// A file of the feature LocationsOnWays needs no nodes.
func TestLocationsOnWays(t *testing.T) {
	way := message{}.number(1, 10).data(2, packed(1)).data(3, packed(2)).data(8, deltas(1, 2, 3, 4, 1)).
		data(9, deltas(50e7, 50e7, 51e7, 51e7, 50e7)).data(10, deltas(10e7, 11e7, 11e7, 10e7, 10e7))
	data := message{}.data(1, sampleStrings).data(2, message{}.data(3, way))
	x, err := readBytes(append(headerBlock("OsmSchema-V0.6"), fileBlock("OSMData", rawBlob(data))...))
	if got := placesText(x); err != nil || got != "w10 fuel 10.5 50.5" {
		t.Errorf("%s (%v)", got, err)
	}
}
