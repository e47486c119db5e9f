package demo

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"testing"

	"github.com/paulmach/osm"
	"github.com/paulmach/osm/osmxml"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// The hash changes with every intended change of the island: -update, and say
// why in the commit.
func TestExtractIsTheSameEveryTime(t *testing.T) {
	a := newIsland()
	sum := sha256.Sum256(Extract())
	again := sha256.Sum256(encode(&a.world, replication))
	if sum != again {
		t.Fatal("two islands from one seed differ")
	}
	if arch := runtime.GOARCH; arch != "amd64" && arch != "wasm" {
		t.Skipf("on %s the compiler may fuse multiplication and addition, so the last digits of a position may differ", arch)
	}
	const file = "testdata/extract.sha256"
	got := hex.EncodeToString(sum[:]) + "\n"
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("SHA-256 of the extract = %s, want %s", got, want)
	}
}

func TestExtractIsSmall(t *testing.T) {
	if n := len(Extract()); n > 400_000 {
		t.Errorf("the extract is %d bytes, want at most 400,000: the page loads it at the start", n)
	}
	if n := len(theIsland().world.nodes); n > 40_000 {
		t.Errorf("%d nodes, want at most 40,000", n)
	}
}

// osmium-tool reads back what was written: https://osmcode.org/osmium-tool.
// Its XML is read by package osmxml of github.com/paulmach/osm.
func TestExtractThroughOsmium(t *testing.T) {
	osmium, err := exec.LookPath("osmium")
	if err != nil {
		t.Skip("osmium-tool is not installed (Debian: apt install osmium-tool)")
	}
	dir := t.TempDir()
	file, text := filepath.Join(dir, "demo.osm.pbf"), filepath.Join(dir, "demo.osm")
	if err := os.WriteFile(file, Extract(), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(osmium, "check-refs", "-r", file).CombinedOutput(); err != nil {
		t.Errorf("check-refs: %v\n%s", err, out)
	}
	if out, err := exec.Command(osmium, "cat", "-o", text, file).CombinedOutput(); err != nil {
		t.Fatalf("cat: %v\n%s", err, out)
	}
	xml, err := os.Open(text)
	if err != nil {
		t.Fatal(err)
	}
	defer xml.Close()
	scanner := osmxml.New(context.Background(), xml)
	defer scanner.Close()
	sameObjects(t, &theIsland().world, scanner)
}

func sameObjects(t *testing.T, w *world, scanner osm.Scanner) {
	same := func(what string, id, wantID int64, got osm.Tags, want tags) {
		t.Helper()
		if id != wantID || !maps.Equal(got.Map(), want.with(nil)) {
			t.Fatalf("%s %d %v, want %d %v", what, id, got, wantID, want)
		}
	}
	var nodes, ways, relations int
	for scanner.Scan() {
		switch o := scanner.Object().(type) {
		case *osm.Node:
			want := w.nodes[nodes]
			same("node", int64(o.ID), want.id, o.Tags, want.tags)
			if p := w.point(want.id); math.Abs(o.Lon-p.Lon()) > 1e-9 || math.Abs(o.Lat-p.Lat()) > 1e-9 {
				t.Fatalf("node %d at %v %v, want %v", want.id, o.Lon, o.Lat, p)
			}
			nodes++
		case *osm.Way:
			want := w.ways[ways]
			same("way", int64(o.ID), want.id, o.Tags, want.tags)
			var refs []int64
			for _, n := range o.Nodes {
				refs = append(refs, int64(n.ID))
			}
			if !slices.Equal(refs, want.refs) {
				t.Fatalf("way %d has nodes %v, want %v", want.id, refs, want.refs)
			}
			ways++
		case *osm.Relation:
			want := w.relations[relations]
			same("relation", int64(o.ID), want.id, o.Tags, want.tags)
			var members []member
			for _, m := range o.Members {
				members = append(members, member{m.Ref, m.Role})
			}
			if !slices.Equal(members, want.members) {
				t.Fatalf("relation %d has members %v, want %v", want.id, members, want.members)
			}
			relations++
		}
	}
	if err := scanner.Err(); err != nil {
		t.Fatal(err)
	}
	if nodes != len(w.nodes) || ways != len(w.ways) || relations != len(w.relations) {
		t.Errorf("read %d nodes, %d ways, %d relations, want %d, %d, %d", nodes, ways, relations, len(w.nodes), len(w.ways), len(w.relations))
	}
}
