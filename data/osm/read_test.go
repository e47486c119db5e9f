package osm_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"ullage/data/osm"
)

// shared opens a file of ../shared/data, which is not part of the project.
func shared(t testing.TB, path string) *os.File {
	t.Helper()
	f, err := os.Open(filepath.Join("../../../shared/data", path))
	if err != nil {
		t.Skipf("open data not at hand: %v", err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func TestAndorra2025(t *testing.T) {
	f := shared(t, "osm/andorra-2025-01-19.osm.pbf")
	x, err := osm.Read(context.Background(), f.Name(), f, osm.Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for _, p := range x.Places {
		got[p.Kind]++
	}
	t.Log(got, x.Date, x.Objects, x.Notes, len(x.Backdrop.Lines), len(x.Backdrop.Towns))
	if got["fuel"] != 59 {
		t.Errorf("fuel stations = %d, want 59", got["fuel"])
	}
}
