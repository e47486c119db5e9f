package osm

import (
	"encoding/binary"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/data/osm/file"
	"ullage/data/osm/file/filetest"
)

// What is drawn behind the route: lines by their class, lakes from some 250 m on,
// and what has a name of those who live there.
func TestBackdrop(t *testing.T) {
	lake := func(deg float64) orb.LineString { return orb.LineString{{0, 0}, {0, deg}, {deg / 100, deg}, {0, 0}} }
	for _, tc := range []struct {
		tags string
		line orb.LineString
		want string
	}{
		{"natural=coastline", orb.LineString{{0, 0}, {1, 1}}, "coast"}, {"highway=motorway", orb.LineString{{0, 0}, {1, 1}}, "motorway"},
		{"landuse=reservoir", lake(0.0023), "water"}, {"natural=water", lake(0.0022), ""}, {"waterway=river", lake(0.0001), "river"},
		{"highway=service", orb.LineString{{0, 0}, {1, 1}}, ""}, {"highway=primary", orb.LineString{{0, 0}}, ""},
	} {
		var b Backdrop
		if b.addLine(filetest.Tags(tc.tags), tc.line); len(b.Lines) > 1 || (len(b.Lines) == 1) != (tc.want != "") || tc.want != "" && b.Lines[0].Class != tc.want {
			t.Errorf("%s of %d points is drawn as %+v, want %q", tc.tags, len(tc.line), b.Lines, tc.want)
		}
	}
	road := `<osm><way id="2"><nd ref="1" lat="1" lon="2"/><nd ref="3" lat="1" lon="4"/>` + filetest.XML("highway=primary") + `</way></osm>`
	town := `<node id="1" lat="1" lon="2">` + filetest.XML("place=town | name=Beck") + `</node>`
	if x, err := readBytes([]byte(strings.Replace(road, "<osm>", "<osm>"+town, 1))); err != nil || len(x.Backdrop.Lines) != 1 || len(x.Backdrop.Towns) != 1 {
		t.Errorf("a road and a town of a file are drawn as %+v, %v", x.Backdrop, err)
	}
	var b Backdrop
	for _, tags := range []string{"place=city | name=Aston", "place=town | name=Beck", "place=village | name=Clough", "place=hamlet | name=Dene", "place=town"} {
		b.addTown(file.Node{Tags: filetest.Tags(tags), Point: orb.Point{1, 2}})
	}
	want := []Town{{"Aston", orb.Point{1, 2}, 1}, {"Beck", orb.Point{1, 2}, 2}, {"Clough", orb.Point{1, 2}, 3}}
	if !slices.Equal(b.Towns, want) {
		t.Errorf("towns are %v, want %v", b.Towns, want)
	}
}

// FuzzBackdropLine: of a line that is drawn the ends stay, nothing is invented, no point is left out that lies farther from
// it than is promised, and the outline that it came from is as it was.
func FuzzBackdropLine(f *testing.F) {
	f.Add(byte(1), []byte{0, 0, 0, 0, 0, 1, 0, 0, 0, 2, 0, 9, 0, 3, 0, 0})
	f.Add(byte(8), []byte{0, 0, 0, 0, 99, 0, 0, 0, 99, 0, 99, 0, 0, 0, 0, 0})
	f.Add(byte(0), []byte{1, 2, 3, 4, 1, 2, 3, 4})
	f.Fuzz(func(t *testing.T, class byte, data []byte) {
		c := lineClasses[int(class)%len(lineClasses)]
		var line orb.LineString
		for ; len(data) >= 4; data = data[4:] { // steps of 1e-5 degrees, as neighbours of a road have them
			at := func(i int) float64 { return float64(int16(binary.LittleEndian.Uint16(data[i:]))) * 1e-5 }
			line = append(line, orb.Point{at(0), at(2)})
		}
		before := line.Clone()
		var b Backdrop
		b.addLine(file.Tags{c.key: c.value}, line)
		if !slices.Equal(line, before) {
			t.Fatal("the line that was given is changed")
		}
		if len(b.Lines) == 0 {
			if len(line) >= 2 && c.class != "water" {
				t.Fatalf("%s of %d points is not drawn", c.class, len(line))
			}
			return
		}
		drawn := b.Lines[0].Points
		if b.Lines[0].Class != c.class || len(drawn) < 2 || drawn[0] != line[0] || drawn[len(drawn)-1] != line[len(line)-1] {
			t.Fatalf("%s: %v is drawn as %+v", c.class, line, b.Lines[0])
		}
		for _, p := range drawn {
			if !slices.Contains(line, p) {
				t.Fatalf("%v is drawn and not of the line", p)
			}
		}
		for _, p := range line {
			if d := planar.DistanceFrom(drawn, p); d > toleranceDeg*(1+1e-9) || math.IsNaN(d) {
				t.Fatalf("%v lies %g° from the line drawn", p, d)
			}
		}
	})
}
