package file

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"runtime"
	"strings"
	"testing"
)

// crowd is a block of places, dense or each by itself; few bytes once it is packed.
func crowd(places int, dense bool) []byte {
	group := message{}
	if dense {
		ones, zeros := bytes.Repeat([]byte{2}, places), make([]byte, places)
		group = group.data(2, message{}.data(1, ones).data(8, zeros).data(9, zeros).data(10, bytes.Repeat([]byte{1, 2, 0}, places)))
	} else {
		node := message{}.signed(1, 7).data(2, packed(1)).data(3, packed(2)).signed(8, 0).signed(9, 0)
		for range places {
			group = group.data(1, node)
		}
	}
	return fileBlock("OSMData", zlibBlob(message{}.data(1, sampleStrings).data(2, group)))
}

// counted reads a file and counts its places.
func counted(data []byte, most int64) (n int, err error) {
	ctx := context.Background()
	err = Read(ctx, bytes.NewReader(data), Options{Want: Want{{"amenity", ""}, {"tourism", ""}}, Most: most}, func(f *File) error {
		if err := f.Relations(ctx, func(Relation) error { return nil }); err != nil {
			return err
		}
		if err := f.Ways(ctx, nil, func(Way) error { return nil }); err != nil {
			return err
		}
		return f.Nodes(ctx, nil, func(Node) error { n++; return nil })
	})
	return n, err
}

// What is wanted is counted, and refused before it takes more than may be kept, also
// where a file is small.
func TestTooMuch(t *testing.T) {
	file := headerBlock("OsmSchema-V0.6", "DenseNodes")
	for range 5 {
		file = append(file, crowd(1000, true)...)
	}
	text := "<osm>" + strings.Repeat(`<node id="1" lat="0" lon="0"><tag k="amenity" v="fuel"/></node>`, 5000) + "</osm>"
	for name, data := range map[string][]byte{"PBF": file, "XML": []byte(text)} {
		if n, err := counted(data, 5000*(objectBytes+tagBytes)); n != 5000 || err != nil {
			t.Errorf("%s: %d places, %v", name, n, err)
		}
		n, err := counted(data, 5000*(objectBytes+tagBytes)-1)
		var much *TooMuch
		if !errors.As(err, &much) || n > 4999 || !strings.Contains(err.Error(), "cut out the region") {
			t.Errorf("%s, one byte less: %d places, %v", name, n, err)
		}
	}
}

// A block, or one object, that holds more than any has is damaged, and not read.
func TestCrowded(t *testing.T) {
	list := func(field int, columns ...int) message {
		m := message{}.number(1, 10).data(2, packed(1)).data(3, packed(2))
		for _, c := range columns {
			m = m.data(c, make([]byte, mostObjects+1))
		}
		return message{}.data(1, sampleStrings).data(2, message{}.data(field, m))
	}
	for name, block := range map[string][]byte{
		"dense places":       crowd(mostTagged+1, true),
		"single places":      crowd(mostTagged+1, false),
		"strings":            fileBlock("OSMData", zlibBlob(message{}.data(1, bytes.Repeat([]byte{1<<3 | 2, 0}, mostStrings+1)))),
		"a way of corners":   fileBlock("OSMData", zlibBlob(list(3, 8))),
		"a way of positions": fileBlock("OSMData", zlibBlob(list(3, 9, 10))),
		"a large relation":   fileBlock("OSMData", zlibBlob(list(4, 8, 9, 10))),
	} {
		data := append(headerBlock("OsmSchema-V0.6", "DenseNodes"), block...)
		if _, err := counted(data, 0); !errors.Is(err, errCrowded) {
			t.Errorf("%s, %d bytes packed: %v", name, len(data), err)
		}
	}
	for name, text := range map[string]string{
		"tags":    `<node id="1" lat="0" lon="0">` + strings.Repeat(`<tag k="`+strings.Repeat("k", 200)+`" v="v"/>`, mostText/200),
		"corners": `<way id="1">` + strings.Repeat(`<nd ref="1"/>`, mostObjects+1),
	} {
		if _, err := counted([]byte("<osm>"+text), 0); !errors.Is(err, errCrowded) {
			t.Errorf("XML of %s: %v", name, err)
		}
	}
}

var measured = flag.Bool("measure", false, "print what TestMostMemory measures")

// TestMostMemory reads files of 188 kB and more that hold 32 million places.
func TestMostMemory(t *testing.T) {
	if !*measured {
		t.Skip("a measurement: run with -measure")
	}
	for _, a := range []struct{ blocks, places int }{{4, 8_000_000}, {124, 258_000}, {4000, 8000}} {
		file := headerBlock("OsmSchema-V0.6", "DenseNodes")
		block := crowd(a.places, true)
		for range a.blocks {
			file = append(file, block...)
		}
		ctx := context.Background()
		var kept []Node
		err := Read(ctx, bytes.NewReader(file), Options{Want: Want{{"amenity", ""}}}, func(f *File) error {
			return f.Nodes(ctx, nil, func(n Node) error { kept = append(kept, n); return nil })
		})
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		t.Logf("%d blocks of %d places, %d kB: %.0f MB held, %.0f MB of the system, %d kept, %v", a.blocks, a.places, len(file)/1000, float64(m.HeapInuse)/1e6, float64(m.Sys)/1e6, len(kept), err)
		runtime.KeepAlive(kept)
		kept = nil
		runtime.GC()
	}
}
