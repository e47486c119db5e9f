package page

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

// What was made once is not made again; what failed is tried again.
func TestKept(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	made := 0
	make := func() ([]byte, error) { made++; return []byte("x"), nil }
	if _, err := kept("a", func() ([]byte, error) { return nil, errors.New("no") }); err == nil {
		t.Error("a failure is kept")
	}
	for range 2 {
		if b, err := kept("a", make); err != nil || string(b) != "x" {
			t.Fatalf("%q, %v", b, err)
		}
	}
	if made != 1 {
		t.Errorf("made %d times", made)
	}
}

// Another line of source, another program; tests are no part of it.
func TestContent(t *testing.T) {
	root := t.TempDir()
	put := func(name, text string) string {
		t.Helper()
		p := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		id, err := contentOf(t.Context(), root)
		if err != nil {
			t.Fatal(err)
		}
		return id
	}
	for _, name := range sources {
		if filepath.Ext(name) == "" {
			name += "/doc.go"
		}
		if err := os.MkdirAll(filepath.Join(root, filepath.Dir(name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	a := put("geo/line.go", "package geo")
	if b := put("geo/line_test.go", "package geo"); b != a {
		t.Error("a test counts")
	}
	if b := put("app/say/en.txt", "a = b"); b == a {
		t.Error("a file that is embedded does not count")
	}
	b := put("geo/line.go", "package geo // other")
	if b == a || put("geo/line.go", "package geo") == b {
		t.Error("a change does not count")
	}
}
