package roads_test

import (
	"bytes"
	"context"
	"io"
	"reflect"
	"testing"

	"ullage/data/demo"
	"ullage/data/osm/osmtest"
	"ullage/data/osm/roads"
	"ullage/geo/road/net"
)

// open opens open data, see [osmtest.Bytes].
func open(t testing.TB, path string) *bytes.Reader { return bytes.NewReader(osmtest.Bytes(t, path)) }

func readRoads(t testing.TB, name string, r io.ReadSeeker) net.Input {
	t.Helper()
	in, err := roads.Read(context.Background(), name, r, roads.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// Counts by osmium-tool 1.15.0, another program:
//
//	osmium tags-filter -R -f opl FILE w/highway=primary | wc -l
//	osmium tags-filter -R -f opl FILE r/type=restriction | wc -l
//
// The second counts also restrictions over a way between, without a node, and those with "except" for cars.
func TestRoadCounts(t *testing.T) {
	for _, tc := range []struct {
		path                string
		primary, restricted int
	}{
		{"osm/andorra-2025-01-19.osm.pbf", 476, 76},
		{"osm/liechtenstein-2013-08-03.osm.pbf", 81, 2},
	} {
		t.Run(tc.path, func(t *testing.T) {
			in := readRoads(t, tc.path, open(t, tc.path))
			primary := 0
			for _, w := range in.Ways {
				if w.Road.Class == net.Primary {
					primary++
				}
			}
			if primary != tc.primary {
				t.Errorf("%d primary roads, osmium has %d", primary, tc.primary)
			}
			if len(in.Turns) < tc.restricted*3/4 {
				t.Errorf("%d turns of %d restrictions", len(in.Turns), tc.restricted)
			}
			n, err := net.Build(context.Background(), in)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d states, %d edges, %d bytes, %s, %v", n.States(), n.Edges(), n.Bytes(), n.Date(), n.Omitted())
		})
	}
}

// PBF and XML of the same data make the same roads.
func TestRoadsOfTwoEncodings(t *testing.T) {
	const path = "osm/liechtenstein-2013-08-03.osm"
	a, b := readRoads(t, path, open(t, path+".pbf")), readRoads(t, path, open(t, path+".bz2"))
	if !reflect.DeepEqual(a.Ways, b.Ways) || !reflect.DeepEqual(a.Nodes, b.Nodes) || !reflect.DeepEqual(a.Turns, b.Turns) {
		t.Errorf("the two encodings differ: %d and %d ways, %d and %d nodes", len(a.Ways), len(b.Ways), len(a.Nodes), len(b.Nodes))
	}
}

func TestRoadsOfTheIsland(t *testing.T) {
	in := readRoads(t, "demo.osm.pbf", bytes.NewReader(demo.Extract()))
	n, err := net.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	if n.States() < 3000 || n.Omitted() != (net.Omitted{}) {
		t.Errorf("%d states, %d edges, %v", n.States(), n.Edges(), n.Omitted())
	}
	ferries, low := 0, 0
	for e := range uint32(n.Edges()) {
		r := n.Road(e)
		if r.Class == net.Ferry {
			ferries++
		}
		if r.Limits.HeightCm == 270 {
			low++
		}
	}
	if ferries == 0 || low == 0 {
		t.Errorf("%d pieces of ferry, %d of low road: the island has both", ferries, low)
	}
}
