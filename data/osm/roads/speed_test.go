package roads

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"ullage/data/osm/file/filetest"
)

// Limits outside towns and on motorways as a general routing engine has them: openrouteservice, Country-Speeds.md, commit
// 23571e65, which names the wiki page "Speed limits". Left out are its 80 for motorways in Czechia and 90 in Slovakia, which
// other sources have at 130, and its 130 for Germany, which is advice.
func TestContextsAgainstOpenrouteservice(t *testing.T) {
	theirs := map[string][2]float32{
		"AT": {100, 130}, "CH": {80, 120}, "CZ": {90, 0}, "DK": {80, 130}, "DE": {100, 0}, "FI": {80, 120}, "FR": {80, 130}, "GR": {90, 130},
		"HU": {90, 130}, "IT": {90, 130}, "PL": {90, 140}, "RO": {90, 130}, "SK": {90, 0}, "SI": {90, 130}, "ES": {90, 120}, "SE": {70, 110},
	}
	for country, want := range theirs {
		ours, ok := contexts[country]
		if !ok || ours[0] != 50 || ours[1] != want[0] || want[1] > 0 && ours[2] != want[1] {
			t.Errorf("%s: %v, want 50 and %v", country, ours, want)
		}
	}
	// 95 and 112 there are 60 and 70 mph, rounded down.
	if gb := contexts["GB"]; int(gb[1]) != 96 || int(gb[2]) != 112 {
		t.Errorf("GB: %v", gb)
	}
}

// Main roads without a limit are capped by that of their country; 47.05 N 8.3 E is Luzern, 48.78 N 9.18 E Stuttgart, the
// Atlantic no country; at 42.58 N 1.46 E Andorra (90) and Spain (90) meet.
func TestUsualLimits(t *testing.T) {
	for _, tc := range []struct {
		tags     string
		lat, lon float64
		want     float32
	}{
		{"highway=trunk", 47.05, 8.3, 80},
		{"highway=trunk", 48.78, 9.18, 100},
		{"highway=primary", 42.58, 1.46, 90},
		{"highway=trunk", 45, -30, 0},
		{"highway=trunk | maxspeed=60", 47.05, 8.3, 60},
		{"highway=trunk | maxspeed=none", 48.78, 9.18, 0},
		{"highway=trunk | oneway=yes", 47.05, 8.3, 0},
		{"highway=trunk | motorroad=yes", 47.05, 8.3, 0},
		{"highway=secondary", 47.05, 8.3, 0}, // drives slower than any limit
		{"highway=motorway", 47.05, 8.3, 0},
	} {
		file := fmt.Sprintf(`<osm version="0.6"><node id="1" lat="%v" lon="%v"/><node id="2" lat="%v" lon="%v"/><way id="1"><nd ref="1"/><nd ref="2"/>%s</way></osm>`,
			tc.lat, tc.lon, tc.lat+0.01, tc.lon, filetest.XML(tc.tags))
		in, err := Read(context.Background(), "road.osm", strings.NewReader(file), Options{})
		if err != nil || len(in.Ways) != 1 {
			t.Fatalf("%s: %d ways, %v", tc.tags, len(in.Ways), err)
		}
		if got := in.Ways[0].Road.Kmh[0]; got != tc.want {
			t.Errorf("%s at %v %v: %v km/h, want %v", tc.tags, tc.lat, tc.lon, got, tc.want)
		}
	}
}
