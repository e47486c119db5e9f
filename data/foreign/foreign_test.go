package foreign_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ullage/data/foreign"
)

func TestRecognise(t *testing.T) {
	tar := make([]byte, 512)
	copy(tar[257:], "ustar")
	for head, want := range map[string]string{
		"PK\x03\x04\x14": "file.archive", string(tar): "file.archive", "\xff\xd8\xff\xe0": "file.picture", "%PDF-1.7": "file.paper",
		"\n<!DOCTYPE html><html>": "file.web_page", "SQLite format 3\x00": "file.tiles",
		"id,name,lat,lon\r\n1,a,2,3\r\n": "file.table", "\ufeffid;name;lat\n1;a;2": "file.table", "a\tb\tc\nd\te\tf": "file.table",
		`{"type":"FeatureCollection","features":[` + "\n1,2,3": "", "<gpx>\n<a,b,c>": "", "": "", "one, two": "", "a,b\n1,2": "", "a, b, c\nno more": "", "\x00\x00\x00\x0d\n\x09OSMHeader": "",
	} {
		err := foreign.Recognise("x", []byte(head))
		var e *foreign.Error
		if got := ""; errors.As(err, &e) {
			if got = string(e.Kind); got != want || string(e.Fact().Kind) != want || strings.HasSuffix(e.Error(), ": ") {
				t.Errorf("%.20q is %s, want %q: %v", head, got, want, err)
			}
		} else if want != "" || err != nil {
			t.Errorf("%.20q is nothing (%v), want %q", head, err, want)
		}
	}
}

// Real files: a feed of prices as zip, none of the routes and maps that are read.
func TestRecogniseRealFiles(t *testing.T) {
	shared := filepath.Join("..", "..", "..", "shared", "data")
	for _, c := range []struct {
		glob, want string
	}{{"prices/*.zip", "file.archive"}, {"routes/*.geojson", ""}, {"osm/*.pbf", ""}, {"osm/*.bz2", ""}, {"places/*", ""}} {
		names, _ := filepath.Glob(filepath.Join(shared, c.glob))
		if len(names) == 0 {
			t.Skip("open data are not beside the project, as ../shared/data")
		}
		for _, name := range names {
			b, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			var e *foreign.Error
			if got := ""; errors.As(foreign.Recognise(name, b[:min(len(b), 512)]), &e) || c.want != "" {
				if e != nil {
					got = string(e.Kind)
				}
				if got != c.want {
					t.Errorf("%s is %q, want %q", name, got, c.want)
				}
			}
		}
	}
}
