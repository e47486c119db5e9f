package osm_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/osm/osmtest"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// open opens open data, see [osmtest.Bytes].
func open(t testing.TB, path string) *bytes.Reader { return bytes.NewReader(osmtest.Bytes(t, path)) }

func read(t testing.TB, path string, opt osm.Options) osm.Extract {
	t.Helper()
	f := open(t, path)
	x, err := osm.Read(context.Background(), path, f, opt)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Counts by osmium-tool 1.15.0 (libosmium 2.19.0), another program, as
//
//	osmium tags-filter -R -f opl FILE amenity=fuel | cut -c1 | sort | uniq -c
//
// for each tag, summed over nodes, ways and relations. An object with two of the tags counts as the first kind of
// kindRules: in Andorra 2018 the third dump station is a property of a stopover (dump 2), in Andorra 2025 one of two
// taps is amenity=drinking_water. Service areas count only if they serve a tank: none here does.
func TestCounts(t *testing.T) {
	for _, tc := range []struct {
		path string
		date string
		want map[trip.PlaceKind]int
	}{
		{"module:andorra-latest.osm.bz2", "2018-03-01", map[trip.PlaceKind]int{"fuel": 28 + 10, "dump": 2, "water": 17, "stopover": 2, "campsite": 4 + 6}},
		{"module:delaware-latest.osm.pbf", "2016-08-10", map[trip.PlaceKind]int{"fuel": 37 + 45 + 1, "water": 9, "campsite": 1 + 5 + 1, "gas": 4}},
		{"osm/andorra-2025-01-19.osm.pbf", "2025-01-19", map[trip.PlaceKind]int{"fuel": 34 + 25, "dump": 7, "water": 5 + 53, "tap": 1, "stopover": 4, "campsite": 2 + 6}},
		{"osm/gibraltar.osm.pbf", "2017-09-03", map[trip.PlaceKind]int{"fuel": 3 + 3, "water": 5, "stopover": 1}},
		{"osm/monaco-2023-11-21.osm.pbf", "2023-11-21", map[trip.PlaceKind]int{"fuel": 3, "water": 21, "tap": 1}},
		{"osm/liechtenstein-2013-08-03.osm.pbf", "2013-08-03", map[trip.PlaceKind]int{"fuel": 15 + 1, "water": 10, "campsite": 1}},
		{"osm/liechtenstein-2013-08-03.osm.bz2", "2013-08-03", map[trip.PlaceKind]int{"fuel": 15 + 1, "water": 10, "campsite": 1}},
		{"osm/north-bayreuth-2014.osm.gz", "2014-11-05", map[trip.PlaceKind]int{"fuel": 1, "campsite": 1}},
		{"osm/saint_barthelemy.osm.pbf", "2014-01-15", map[trip.PlaceKind]int{}},                                 // no date stated: of the newest object, as osmium fileinfo -e
		{"places/italy-treviso-fuel-overpass-2019-02-11.osm", "2019-02-11", map[trip.PlaceKind]int{"fuel": 357}}, // grep -c 'v="fuel"'
	} {
		t.Run(filepath.Base(tc.path), func(t *testing.T) {
			x := read(t, tc.path, osm.Options{NoBackdrop: true})
			got := map[trip.PlaceKind]int{}
			for _, p := range x.Places {
				got[p.Kind]++
			}
			if !reflect.DeepEqual(got, tc.want) {
				t.Errorf("places by kind = %v, want %v (notes %v)", got, tc.want, x.Notes)
			}
			if string(x.Date) != tc.date {
				t.Errorf("date = %q, want %q", x.Date, tc.date)
			}
		})
	}
}

// Outlines and gates by osmium tags-filter FILE a/amenity=fuel a/tourism=camp_site,caravan_site, then n/barrier n/entrance of
// that: of Andorra's sites of 2018 one has a lift gate on its outline, n3415627491.
func TestOutlines(t *testing.T) {
	gates, outlines := 0, 0
	for _, p := range read(t, "module:andorra-latest.osm.bz2", osm.Options{NoBackdrop: true}).Places {
		if strings.HasPrefix(p.ID, "w") && p.Outline != nil {
			outlines++
		}
		for _, g := range p.Gates {
			gates++
			if g != (orb.Point{1.5153617, 42.5019279}) {
				t.Errorf("%s has a gate at %v", p.ID, g)
			}
		}
	}
	if outlines != 10+6 || gates != 1 { // the ways of TestCounts
		t.Errorf("%d outlines, %d gates, want 16 and 1", outlines, gates)
	}
}

// By osmium tags-filter as above: sanitary_dump_station=yes is on one stopover in Andorra 2018, so 3 take cassettes.
// Andorra 2025: 7 stations, 1 stopover, 1 campsite; 1 of the 7 says grey_water only and takes cassettes by definition; and
// the campsite w334466953, which has three of the stations inside its outline.
// fuel:adblue=yes is on 2, fuel:lpg=yes on 83 of Treviso (grep -c).
func TestServices(t *testing.T) {
	for _, tc := range []struct {
		path, tank string
		want       int
	}{
		{"module:andorra-latest.osm.bz2", "cassette", 3},
		{"osm/andorra-2025-01-19.osm.pbf", "cassette", 10},
		{"osm/andorra-2025-01-19.osm.pbf", "def", 2},
		{"osm/andorra-2025-01-19.osm.pbf", "fresh", 7}, // 5 water points, 1 dump with water_point=yes, 1 campsite with drinking_water=yes
		{"places/italy-treviso-fuel-overpass-2019-02-11.osm", "lpg", 83},
	} {
		yes := 0
		for _, p := range read(t, tc.path, osm.Options{NoBackdrop: true}).Places {
			if o, ok := p.Offer(tc.tank); ok && o.Answer == trip.Yes {
				yes++
			}
		}
		if yes != tc.want {
			t.Errorf("%s: %d places serve %s, want %d", tc.path, yes, tc.tank, tc.want)
		}
	}
}

// The same data in two encodings, packed by other programs, give the same.
func TestEncodingsAgree(t *testing.T) {
	for _, pair := range [][2]string{
		{"osm/liechtenstein-2013-08-03.osm.pbf", "osm/liechtenstein-2013-08-03.osm.bz2"},
		{"osm/saint_barthelemy.osm.pbf", "osm/saint_barthelemy.osm.bz2"},
		{"osm/saint_barthelemy.osm.gz", "osm/saint_barthelemy.osm.bz2"},
	} {
		a, b := read(t, pair[0], osm.Options{}), read(t, pair[1], osm.Options{})
		if !reflect.DeepEqual(a.Places, b.Places) {
			t.Errorf("%v: different places\n%v\n%v", pair, a.Places, b.Places)
		}
		if !reflect.DeepEqual(a.Backdrop, b.Backdrop) {
			t.Errorf("%v: different backdrops, %d and %d lines", pair, len(a.Backdrop.Lines), len(b.Backdrop.Lines))
		}
		if a.Date != b.Date || a.Date == "" {
			t.Errorf("%v: dates %q and %q", pair, a.Date, b.Date)
		}
		if a.Objects != b.Objects {
			t.Errorf("%v: %d and %d objects", pair, a.Objects, b.Objects)
		}
	}
}

// Two places of Andorra, read once by hand from osmium's output.
func TestAndorraByHand(t *testing.T) {
	byID := map[string]trip.Place{}
	for _, p := range read(t, "osm/andorra-2025-01-19.osm.pbf", osm.Options{}).Places {
		byID[p.ID] = p
	}
	stop := byID["n4810150911"]
	if stop.Kind != "stopover" || stop.Point != [2]float64{1.5327254, 42.5557695} || stop.Fee != trip.Yes || stop.Stay == nil ||
		stop.Stay.Capacity != 5 || stop.Stay.HookUp != trip.Yes || !strings.HasPrefix(stop.Charge, "2€/100l water") {
		t.Errorf("stopover = %+v, stay %+v", stop, stop.Stay)
	}
	camp := byID["w330823764"]
	if camp.Kind != "campsite" || camp.Name != "Càmping Casal" || camp.Stay == nil || camp.Stay.Showers != trip.Yes ||
		camp.Stay.Toilets != trip.Yes || camp.Stay.Tents != trip.Yes || camp.Hours != "Jan-Dez" {
		t.Errorf("campsite = %+v, stay %+v", camp, camp.Stay)
	}
	if grey, _ := byID["w334466953"].Offer("grey"); grey.Answer != trip.Yes || !grey.Guests || grey.Tag != "sanitary_dump_station:grey_water=yes at n9701153599" {
		t.Errorf("grey water at the campsite with a drain inside = %+v", grey)
	}
}

func TestErrors(t *testing.T) {
	for _, tc := range []struct{ name, data, want string }{
		{"empty", "", "the file is empty"},
		{"text", "hello", "not an OpenStreetMap file"},
		{"other xml", "<gpx><trk/></gpx>", "byte 0: the first element is <gpx>"},
		{"cut xml", "<osm><node id='1' lat='1' lon='1'/>", "byte 35: the file is cut off"},
		{"bad number", "<osm><node id='x' lat='1' lon='1'/></osm>", `byte 5: <node id="x">: want`},
		{"bad degrees", "<osm><node id='1' lat='91' lon='1'/></osm>", `lat="91"`},
		{"cut tag", "<osm><node id='1' lat='1", "byte 5: the file is cut off inside a tag"},
		{"not gzip", "\x1f\x8bnonsense", "gzip"},
		{"not bzip2", "BZhnonsense", "bzip2"},
		{"pbf without end", "\x00\x00\x00\x0d\x0a\x09OSMHeader\x18\x05", "byte 0: the block ends at byte 22"},
	} {
		_, err := osm.Read(context.Background(), "map.osm", strings.NewReader(tc.data), osm.Options{})
		if err == nil || !strings.Contains(err.Error(), tc.want) || !strings.HasPrefix(err.Error(), "read map.osm: ") {
			t.Errorf("%s: error = %v, want read map.osm: … %s", tc.name, err, tc.want)
		}
	}
}

func TestLZ4IsNamed(t *testing.T) {
	f := open(t, "osm/monaco-2021-lz4.osm.pbf")
	_, err := osm.Read(context.Background(), "monaco-2021-lz4.osm.pbf", f, osm.Options{})
	if err == nil || !strings.Contains(err.Error(), "monaco-2021-lz4.osm.pbf: byte 18: the block is packed with LZ4") {
		t.Errorf("error = %v", err)
	}
}

// A packed text cut off says so.
func TestCutOffText(t *testing.T) {
	for _, path := range []string{"osm/saint_barthelemy.osm.gz", "osm/saint_barthelemy.osm.bz2"} {
		data, err := io.ReadAll(open(t, path))
		if err != nil {
			t.Fatal(err)
		}
		_, err = osm.Read(context.Background(), "cut", bytes.NewReader(data[:len(data)/2]), osm.Options{})
		if err == nil || !strings.Contains(err.Error(), "read cut: unpacked text, byte ") || !strings.Contains(err.Error(), "the file is cut off") {
			t.Errorf("%s: error = %v", path, err)
		}
	}
}

// A file cut off anywhere is an error or, at the border of two blocks, a shorter file; never a panic.
func TestCutOff(t *testing.T) {
	f := open(t, "osm/saint_barthelemy.osm.pbf")
	data, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	whole := 0
	for n := 0; n < len(data); n += 97 {
		if _, err := osm.Read(context.Background(), "cut.osm.pbf", bytes.NewReader(data[:n]), osm.Options{}); err == nil {
			whole++
		}
	}
	if whole > 0 {
		t.Errorf("%d cut files were read without an error", whole)
	}
}

func TestProgressAndCancel(t *testing.T) {
	f := open(t, "osm/gibraltar.osm.pbf")
	size := f.Size()
	var last int64
	_, err := osm.Read(context.Background(), "g", f, osm.Options{Progress: func(done, total int64) {
		if done < last || done > total || total != size {
			t.Fatalf("progress %d of %d after %d, size %d", done, total, last, size)
		}
		last = done
	}})
	if err != nil || last < size*9/10 {
		t.Errorf("progress ended at %d of %d, error %v", last, size, err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := osm.Read(ctx, "g", f, osm.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
}

// A file with more than may be kept is refused in words, by its name.
func TestReadTooMuch(t *testing.T) {
	_, err := osm.Read(t.Context(), "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{Most: 50_000})
	if says := fact.Why(err).Fact; says == nil || says.Values["why"].Fact == nil || says.Values["why"].Fact.Kind != "osm.too_much" || !strings.Contains(err.Error(), "demo.osm.pbf") {
		t.Errorf("%v", err)
	}
}
