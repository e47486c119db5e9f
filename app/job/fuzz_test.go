package job

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/json"
	"math"
	"testing"
	"time"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/planner/trip"
)

// FuzzHandle: whatever the page sends, the worker answers each request once to its end, and what it says can be sent. Two
// requests come one after the other, for the first leaves places and files behind.
func FuzzHandle(f *testing.F) {
	var file bytes.Buffer
	if err := tripfile.Write(&file, demo.Trip()); err != nil {
		f.Fatal(err)
	}
	frames := [][]byte{}
	for _, r := range []Request{
		{ID: 1, Open: &Open{Name: "a.osm", Data: []byte(`<osm><node id="1" lat="50" lon="10"><tag k="amenity" v="fuel"/><tag k="opening_hours" v="Mo-Fr 08:00-18:00"/></node></osm>`)}},
		{ID: 2, Open: &Open{Name: "trip.json", Add: true, Data: file.Bytes()}},
		{ID: 3, Open: &Open{Name: "r.gpx", Data: []byte(`<gpx><trk><trkseg><trkpt lat="50" lon="10"/><trkpt lat="50.2" lon="10"/></trkseg></trk></gpx>`)}},
		{ID: 4, Roads: true},
		{ID: 5, Follow: &Follow{Vehicle: trip.Fleet()[0], Points: orb.LineString{{10, 50}, {10.1, 50}}}},
		{ID: 6, Follow: &Follow{Track: true, WithinM: 50, Points: orb.LineString{{10, 50}, {10.1, 50}}}},
		{ID: 7, Plan: &Plan{Trip: trip.Trip{Start: "2026-06-12", Vehicle: trip.Fleet()[0]}, Route: orb.LineString{{10, 50}, {10, 50.2}}}},
		{ID: 8, Cancel: true},
		{},
	} {
		b, err := EncodeRequest(r)
		if err != nil {
			f.Fatal(err)
		}
		frames = append(frames, b)
	}
	for i, a := range frames {
		f.Add(a, frames[(i+1)%len(frames)])
		f.Add(frames[0], a)
	}
	f.Fuzz(func(t *testing.T, a, b []byte) {
		h := NewHandler()
		for _, frame := range [][]byte{a, b} {
			r, err := DecodeRequest(frame)
			if err != nil {
				continue
			}
			ctx, stop := context.WithTimeout(t.Context(), 20*time.Millisecond)
			ends := 0
			h.Handle(ctx, r, func(res Response) {
				if res.ends() {
					ends++
				}
				sent, err := EncodeResponse(res)
				if err != nil {
					t.Fatalf("the answer cannot be sent: %v", err)
				}
				back, err := DecodeResponse(sent)
				if err != nil || back.ID != r.ID {
					t.Fatalf("the answer to %d arrives as one to %d: %v", r.ID, back.ID, err)
				}
			})
			stop()
			if asks := r.Open != nil || r.Plan != nil || r.Roads || r.Follow != nil || !r.Cancel; asks && ends != 1 {
				t.Fatalf("%d answers end the request %s", ends, frame)
			}
		}
	})
}

// FuzzBackdrop: what the worker says of a backdrop, the page reads as it was, to a metre.
func FuzzBackdrop(f *testing.F) {
	f.Add("Altrel", 1, []byte("01234567890123456789012345678901"), true)
	f.Add("<b>\u202e\x00", -1, bytes.Repeat([]byte{0xff}, 64), false)
	f.Fuzz(func(t *testing.T, name string, rank int, data []byte, water bool) {
		var line orb.LineString
		for ; len(data) >= 8; data = data[8:] {
			at := func(i int) float64 { return float64(int32(binary.LittleEndian.Uint32(data[i:]))) / 1e7 }
			line = append(line, point{at(0), at(4)})
		}
		in := osm.Backdrop{Lines: []osm.BackdropLine{{Class: "river", Points: line}}}
		if len(line) > 0 {
			in.Towns = []osm.Town{{Name: name, Rank: rank, Point: line[0]}}
		}
		if water {
			in.Lines[0].Class, in.Lines[0].Points = "water", append(line, line...)
		}
		text := backdropGeoJSON(in)
		if !json.Valid([]byte(text)) {
			t.Fatalf("no JSON: %s", text)
		}
		out, err := readBackdrop(text)
		if err != nil || len(out.Lines) != 1 || len(out.Towns) != len(in.Towns) || len(out.Lines[0].Points) != len(in.Lines[0].Points) {
			t.Fatalf("%+v is read as %+v: %v", in, out, err)
		}
		for i, p := range in.Lines[0].Points {
			if q := out.Lines[0].Points[i]; math.Abs(p[0]-q[0]) > 0.6e-5 || math.Abs(p[1]-q[1]) > 0.6e-5 {
				t.Fatalf("%v is read as %v", p, q)
			}
		}
	})
}
