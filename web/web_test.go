package web

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// TestVendored compares the map library with the checksums of the files in
// the npm package maplibre-gl 6.17.0, taken when it was vendored.
func TestVendored(t *testing.T) {
	all := Files()
	listed := map[string]bool{"maplibre/SHA256SUMS": true}
	s := bufio.NewScanner(bytes.NewReader(all["maplibre/SHA256SUMS"]))
	for s.Scan() {
		want, name, ok := strings.Cut(s.Text(), "  ")
		if !ok {
			t.Fatalf("SHA256SUMS: %q is not a sum and a name", s.Text())
		}
		sum := sha256.Sum256(all["maplibre/"+name])
		if got := hex.EncodeToString(sum[:]); got != want {
			t.Errorf("maplibre/%s has the sum %s, want %s", name, got, want)
		}
		listed["maplibre/"+name] = true
	}
	for name := range all {
		if strings.HasPrefix(name, "maplibre/") && !listed[name] {
			t.Errorf("%s is not in SHA256SUMS", name)
		}
	}
	if !bytes.Contains(all["maplibre/LICENSE.txt"], []byte("MapLibre contributors")) {
		t.Error("maplibre/LICENSE.txt is not the library's licence")
	}
	// The library asks for its worker under this version: see [Cacheable].
	if !bytes.Contains(all["maplibre/maplibre-gl.mjs"], []byte(MapLibreVersion)) {
		t.Errorf("maplibre-gl.mjs does not know itself as %s", MapLibreVersion)
	}
}

// TestNothingForeign: our own files ask no other host for anything.
func TestNothingForeign(t *testing.T) {
	foreign := regexp.MustCompile(`(https?:)?//[a-z0-9-]+\.[a-z]`)
	for name, b := range Files() {
		if strings.HasPrefix(name, "maplibre/") || strings.HasSuffix(name, ".png") || strings.HasSuffix(name, ".txt") {
			continue
		}
		b = bytes.ReplaceAll(b, []byte("http://www.w3.org/2000/svg"), nil)
		if at := foreign.Find(b); at != nil {
			t.Errorf("%s: %s…", name, at)
		}
	}
}

// TestScripts has node parse the scripts.
func TestScripts(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node to parse the scripts (Debian: apt install nodejs)")
	}
	for _, name := range []string{"glue.mjs", "worker.js", "storage.js"} {
		if out, err := exec.Command(node, "--check", name).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}
