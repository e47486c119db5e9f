package file

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// readBytes writes what a file holds that has an amenity or is a site, and what that is made of: r20 of ways, w10 of nodes, n7 lon lat.
func readBytes(data []byte) (string, error) {
	want := Want{{"amenity", ""}, {"tourism", ""}}
	ctx := context.Background()
	var words []string
	err := Read(ctx, bytes.NewReader(data), Options{Want: want}, func(f *File) error {
		words = nil
		var members, refs []int64
		err := f.Relations(ctx, func(r Relation) error {
			word := fmt.Sprintf("r%d", r.ID)
			for _, m := range r.Members {
				word += fmt.Sprintf(" %c%d %s", m.Type, m.ID, m.Role)
				members = append(members, m.ID)
			}
			words = append(words, word)
			return nil
		})
		if err != nil {
			return err
		}
		err = f.Ways(ctx, Collect(members), func(w Way) error {
			words = append(words, strings.TrimSpace(fmt.Sprintf("w%d %v %v", w.ID, w.Refs, w.Tags["amenity"])))
			for _, p := range w.Points {
				words = append(words, fmt.Sprintf("w%d at %.4g %.4g", w.ID, p[0], p[1]))
			}
			refs = append(refs, w.Refs...)
			return nil
		})
		if err != nil {
			return err
		}
		return f.Nodes(ctx, Collect(refs), func(n Node) error {
			words = append(words, strings.TrimSpace(fmt.Sprintf("n%d %.6g %.6g %s", n.ID, n.Point[0], n.Point[1], n.Tags["amenity"])))
			return nil
		})
	})
	slices.Sort(words)
	return strings.Join(words, ", "), err
}

// By hand, see pbf_write_test.go: a square as a closed way and as a relation of two halves, and a node beside it.
const sampleText = "n1 10 50, n2 11 50, n3 11 51, n4 10 51 fuel, n7 -1.5 52.5 fuel, r20 w11 outer w12 outer, " +
	"w10 [1 2 3 4 1] fuel, w11 [1 2 3], w12 [1 4 3]"

func TestSample(t *testing.T) {
	if got, err := readBytes(samplePBF()); err != nil || got != sampleText {
		t.Errorf("got %s (%v), want %s", got, err, sampleText)
	}
}

// Blocks may stand in any order, and one block may hold all kinds.
func TestAnyOrder(t *testing.T) {
	parts := [][]byte{sampleNodes(), sampleWays(), sampleRelations()}
	for _, order := range [][]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		data := headerBlock("DenseNodes")
		for _, i := range order {
			data = append(data, fileBlock("OSMData", rawBlob(parts[i]))...)
		}
		if got, err := readBytes(data); err != nil || got != sampleText {
			t.Errorf("order %v: %s (%v)", order, got, err)
		}
	}
	// The same strings in each, so the groups fit one block: drop the repeated string tables.
	all := append(headerBlock(), fileBlock("OSMData", rawBlob(slices.Concat(sampleNodes(), sampleWays()[len(message{}.data(1, sampleStrings)):],
		sampleRelations()[len(message{}.data(1, sampleStrings)):])))...)
	if got, err := readBytes(all); err != nil || got != sampleText {
		t.Errorf("one block: %s (%v)", got, err)
	}
}

// Unknown block types and fields are passed over, as the format demands.
func TestUnknownIsSkipped(t *testing.T) {
	data := headerBlock()
	data = append(data, fileBlock("Later", rawBlob([]byte("anything")))...)
	data = append(data, fileBlock("OSMData", rawBlob(message(sampleNodes()).number(99, 5).text(98, "later")))...)
	if got, err := readBytes(data); err != nil || got != "n4 10 51 fuel, n7 -1.5 52.5 fuel" {
		t.Errorf("%s, %v", got, err)
	}
}

// Position in nanodegrees = offset + granularity · number (PBF_Format, "Definition of OSMData").
func TestGranularity(t *testing.T) {
	plain := message{}.signed(1, 7).data(2, packed(1)).data(3, packed(2)).signed(8, 5).signed(9, -3)
	data := message{}.data(1, sampleStrings).data(2, message{}.data(1, plain)).number(17, 1_000_000).number(19, 50_000_000_000).number(20, 10_000_000_000)
	got, err := readBytes(append(headerBlock(), fileBlock("OSMData", rawBlob(data))...))
	if err != nil || got != "n7 9.997 50.005 fuel" {
		t.Errorf("%v %v", got, err)
	}
}

func TestDamaged(t *testing.T) {
	node := func(change func(m message) message) []byte {
		return fileBlock("OSMData", rawBlob(message{}.data(1, sampleStrings).data(2, message{}.data(1, change(message{}.signed(1, 7))))))
	}
	dense := func(m message) []byte {
		return fileBlock("OSMData", rawBlob(message{}.data(1, sampleStrings).data(2, message{}.data(2, m))))
	}
	for _, tc := range []struct {
		name string
		data []byte
		want string
	}{
		{"feature", headerBlock("HistoricalInformation"), `demands the feature "HistoricalInformation"`},
		{"no string", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1, 99)).data(3, packed(2, 2)) })...), "damaged"},
		{"more keys than values", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1, 1)).data(3, packed(2)) })...), "damaged"},
		{"off the earth", append(headerBlock(), node(func(m message) message { return m.data(2, packed(1)).data(3, packed(2)).signed(8, 1e15) })...), "damaged"},
		{"positions missing", append(headerBlock(), dense(message{}.data(1, deltas(1)).data(10, packed(1, 2, 0)))...), "damaged"},
		{"tags not closed", append(headerBlock(), dense(message{}.data(1, deltas(1)).data(8, deltas(1)).data(9, deltas(1)).data(10, packed(1, 2)))...), "damaged"},
		{"LZ4", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(6, "x"))...), "packed with LZ4"},
		{"Zstandard", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(7, "x"))...), "packed with Zstandard"},
		{"no data", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9))...), "no data in a packing"},
		{"too long", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 1<<30).text(3, "x"))...), "1073741824 bytes unpacked, allowed are 33554432"},
		{"not zlib", append(headerBlock(), fileBlock("OSMData", message{}.number(2, 9).text(3, "nonsense"))...), "unpack the block"},
		{"lying size", append(headerBlock(), fileBlock("OSMData", message(bytes.Replace(zlibBlob(make([]byte, 100)), []byte{0x10, 100}, []byte{0x10, 50}, 1)))...), "its header says 50"},
		{"huge header", []byte("\x00\x00\x00\x0d\x0a\x09OSMHeader\x18\x00\x7f\xff\xff\xff"), "byte 17: a block header of 2147483647 bytes"},
	} {
		_, err := readBytes(tc.data)
		var fault *Fault
		if !errors.As(err, &fault) || !strings.HasPrefix(err.Error(), "byte ") || !strings.Contains(err.Error(), tc.want) {
			t.Errorf("%s: error = %v, want … %s", tc.name, err, tc.want)
		}
	}
}

// The block decoder by itself, as zlib keeps a fuzzer from it.
func FuzzBlock(f *testing.F) {
	f.Add(sampleNodes())
	f.Add(sampleWays())
	f.Add(sampleRelations())
	look := newLookup(Want{{"amenity", "fuel"}, {"tourism", ""}})
	f.Fuzz(func(t *testing.T, data []byte) {
		var b block
		b.open(data, look)
		b.nodes(IDs{1, 2, 5})
		b.ways(IDs{11})
		b.relations()
	})
}

// A file of the feature LocationsOnWays needs no nodes.
func TestLocationsOnWays(t *testing.T) {
	way := message{}.number(1, 10).data(2, packed(1)).data(3, packed(2)).data(8, deltas(1, 2, 3, 4, 1)).
		data(9, deltas(50e7, 50e7, 51e7, 51e7, 50e7)).data(10, deltas(10e7, 11e7, 11e7, 10e7, 10e7))
	data := message{}.data(1, sampleStrings).data(2, message{}.data(3, way))
	got, err := readBytes(append(headerBlock("OsmSchema-V0.6"), fileBlock("OSMData", rawBlob(data))...))
	if err != nil || got != "w10 [1 2 3 4 1] fuel, w10 at 10 50, w10 at 10 50, w10 at 10 51, w10 at 11 50, w10 at 11 51" {
		t.Errorf("%s (%v)", got, err)
	}
}
