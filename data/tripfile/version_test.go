package tripfile

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

var update = flag.Bool("update", false, "write the test file of a version that has none; those that are there stay")

// TestVersions: a file of each version is read, as what it was. A version has its file
// from the day on which it is the newest.
func TestVersions(t *testing.T) {
	writers := map[string]func(*os.File) error{
		trip.Format: func(f *os.File) error { return Write(f, summer()) },
		FleetFormat: func(f *os.File) error { return WriteFleet(f, trip.Fleet()[:1]) },
	}
	for format, write := range writers {
		file := "testdata/versions/" + format + ".json"
		if _, err := os.Stat(file); err != nil && *update {
			f, err := os.Create(file)
			if err == nil {
				err = errors.Join(write(f), f.Close())
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		if _, err := os.Stat(file); err != nil {
			t.Errorf("the newest version has no file; make it with -update: %v", err)
		}
	}
	files, err := filepath.Glob("testdata/versions/*.json")
	if err != nil || len(files) < 2 {
		t.Fatalf("%q, %v", files, err)
	}
	for _, name := range files {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(name, "fleet") {
			if got, _, err := ReadFleet(name, bytes.NewReader(b)); err != nil || len(got) != 1 || got[0].ID != trip.Fleet()[0].ID || len(got[0].Tanks) != 7 {
				t.Errorf("%+v, %v", got, err)
			}
		} else if got, _, err := Read(name, bytes.NewReader(b)); err != nil || got.Name != "Summer <1>" || len(got.Route) != 3 || got.Prices["diesel"] != 1.7 || !got.Backup {
			t.Errorf("%+v, %v", got, err)
		}
		if IsNewer(b) {
			t.Errorf("%s is said to be newer", name)
		}
		next := bytes.Replace(b, []byte(`-1"`), []byte(`-12"`), 1)
		_, _, err = Read("next.json", bytes.NewReader(next))
		if strings.Contains(name, "fleet") {
			_, _, err = ReadFleet("next.json", bytes.NewReader(next))
		}
		var newer *NewerError
		if !IsNewer(next) || !errors.As(err, &newer) || !strings.Contains(err.Error(), "next.json: a newer version of Ullage wrote it, as ullage-") {
			t.Errorf("the next version of %s: %v", name, err)
		}
	}
	for _, other := range []string{"", "{", `{"format": "ullage-trip-2"}`, `{"format": "ullage-fleet-0"}`, `{"format": "fleet-2"}`} {
		if IsNewer([]byte(other)) {
			t.Errorf("%q is said to be newer", other)
		}
	}
}

// A trip without its route and the route make the file of both.
func TestParts(t *testing.T) {
	want := summer()
	bare := want
	bare.Route, bare.Name = nil, `a "features":[]} b`
	var b, whole bytes.Buffer
	if err := Write(&b, bare); err != nil {
		t.Fatal(err)
	}
	route, err := Route(want.Route)
	if err != nil {
		t.Fatal(err)
	}
	got, _, err := Read("parts", bytes.NewReader(WithRoute(b.Bytes(), route)))
	if want.Name = bare.Name; err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
	if err := Write(&whole, want); err != nil {
		t.Fatal(err)
	}
	for _, same := range [][]byte{whole.Bytes(), []byte("{}"), nil} {
		if got := WithRoute(slices.Clone(same), route); !bytes.Equal(got, same) {
			t.Errorf("%.40q became %.40q", same, got)
		}
	}
	if got := WithRoute(b.Bytes(), nil); !bytes.Equal(got, b.Bytes()) {
		t.Error("no route changes a file")
	}
	if none, err := Route(orb.LineString{}); err != nil || len(none) == 0 {
		t.Errorf("%q, %v", none, err)
	}
}
