package road_test

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/geo/road"
)

// openNetwork builds the network of a file of ../shared/data, or "demo" of the invented island; without the file the test is
// skipped.
func openNetwork(t testing.TB, path string) *road.Network {
	t.Helper()
	var r io.ReadSeeker
	if path == "demo" {
		r = bytes.NewReader(demo.Extract())
	} else {
		f, err := os.Open(filepath.Join("../../../shared/data", path))
		if err != nil {
			t.Skipf("open data not at hand: %v", err)
		}
		t.Cleanup(func() { f.Close() })
		r = f
	}
	in, err := osm.ReadRoads(context.Background(), path, r, osm.RoadOptions{})
	if err != nil {
		t.Fatal(err)
	}
	n, err := road.Build(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

const (
	andorra       = "osm/andorra-2025-01-19.osm.pbf"
	liechtenstein = "osm/liechtenstein-2013-08-03.osm.pbf"
)

// TestRoutesAgainstDijkstra: 300 random pairs for each of five vehicles, fastest and shortest, on three networks: 9,000. Every
// path is followed step by step as well.
func TestRoutesAgainstDijkstra(t *testing.T) {
	for i, path := range []string{andorra, liechtenstein, "demo"} {
		t.Run(path, func(t *testing.T) {
			n := openNetwork(t, path)
			ways := road.CompareWithDijkstra(t, n, 300, uint64(i))
			t.Logf("%d states, %d of 3000 pairs have a way", n.States(), ways)
			if ways < 1500 {
				t.Errorf("only %d of 3000 pairs have a way", ways)
			}
		})
	}
}
