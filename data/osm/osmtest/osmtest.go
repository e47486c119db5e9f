// Package osmtest opens map data and their roads for tests and benchmarks.
package osmtest

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm/roads"
	"ullage/geo/road/net"
)

// Demo names the map data of the invented island.
const Demo = "demo"

// Bytes returns map data: [Demo], a file of ../shared/data beside the project, or with "module:" of the test data of
// github.com/paulmach/osm, whose folder PAULMACH_OSM_DIR may name. Without the file the test is skipped, and says so.
func Bytes(t testing.TB, path string) []byte {
	t.Helper()
	if path == Demo {
		return demo.Extract()
	}
	file := filepath.Join(root(t), "../shared/data", path)
	if rest, ok := strings.CutPrefix(path, "module:"); ok {
		dir := os.Getenv("PAULMACH_OSM_DIR")
		if dir == "" {
			out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/paulmach/osm").Output()
			if err != nil {
				t.Skipf("module github.com/paulmach/osm not at hand (PAULMACH_OSM_DIR may name its folder): %v", err)
			}
			dir = strings.TrimSpace(string(out))
		}
		file = filepath.Join(dir, "testdata", rest)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	return data
}

// root is the folder of the module, above that of the test.
func root(t testing.TB) string {
	dir, err := os.Getwd()
	for err == nil {
		if _, no := os.Stat(filepath.Join(dir, "go.mod")); no == nil {
			return dir
		}
		if filepath.Dir(dir) == dir {
			break
		}
		dir = filepath.Dir(dir)
	}
	t.Fatalf("no go.mod above the test: %v", err)
	return ""
}

// Roads reads the roads of map data, see [Bytes].
func Roads(t testing.TB, path string) net.Input {
	t.Helper()
	in, err := roads.Read(context.Background(), path, bytes.NewReader(Bytes(t, path)), roads.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// Network builds the network of map data, see [Bytes].
func Network(t testing.TB, path string) *net.Network {
	t.Helper()
	n, err := net.Build(context.Background(), Roads(t, path))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// Passage returns the ends of a road of the island with a limit of 2.7 m that a detour of some kilometres goes round.
func Passage(t testing.TB, island *net.Network) (a, b orb.Point) {
	t.Helper()
	for e := range uint32(island.Edges()) {
		if island.Road(e).Limits.HeightCm == 270 {
			ls := island.Line([]net.Step{{Dir: e << 1, ToCm: island.LengthCm(e)}})
			return ls[0], ls[len(ls)-1]
		}
	}
	t.Fatal("the island has no passage of 2.7 m")
	return
}
