package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What has no plan in real map data is told with the true cause first, and with what
// would help. No cure is to stay fewer nights where the data lack a place.
func TestRefusalsOfRealData(t *testing.T) {
	const trip = `{"type":"FeatureCollection","ullage":{"format":"ullage-trip-1","name":"Refused","start":"2026-07-11","vehicle":"ulmar",
"party":{"adults":2,"children":%d,"showers":"aboard","toilet":"aboard","cooking":"aboard"},"day":{"max_km":%v,"max_min":400,"depart_min":540,"speed_kmh":50},
"stays":{"min_nights":%d,"max_nights":14,"campsites":true,"stopovers":true,"hookup":%v},"corridor_km":10,"circuity":1.4,"value_per_h":10,"currency":"EUR"},
"features":[{"type":"Feature","properties":{},"geometry":{"type":"LineString","coordinates":%s}}]}`
	const rhine, andorra, harbour = "[[9.54,47.26],[9.52,47.05]]", "[[1.45,42.44],[1.53,42.51],[1.73,42.54],[1.53,42.55],[1.49,42.46]]", "[[7.40,43.72],[7.45,43.76]]"
	for _, c := range []struct {
		name, file string
		children   int
		maxKm      float64
		nights     int
		hookUp     bool
		route      string
		first      string   // reason
		help       []string // among what would help
	}{
		{"no cassette point, and it must come back empty", "liechtenstein-2013-08-03.osm.pbf", 0, 200, 2, false, rhine,
			"The map data name no place where you can", []string{"Ring Mittagspitze", "Add map data that have", "add it by hand"}},
		{"fuel only", "monaco-2023-11-21.osm.pbf", 0, 200, 2, false, harbour,
			"The map data name no place where you can spend the night.", []string{"Add map data that have places to spend the night"}},
		{"hook-up where there is none", "liechtenstein-2013-08-03.osm.pbf", 0, 200, 1, true, rhine,
			"The map data name no place where you can drain grey water.", []string{"Ring Mittagspitze"}},
		{"days of 10 km", "andorra-2025-01-19.osm.pbf", 0, 10, 0, false, andorra,
			"No place for the night is near enough", []string{"Drive up to"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			extract := filepath.Join("..", "..", "..", "shared", "data", "osm", c.file)
			if _, err := os.Stat(extract); err != nil {
				t.Skip("open data are not beside the project, as ../shared/data/osm: ", err)
			}
			file := write(t, "trip.geojson", fmt.Sprintf(trip, c.children, c.maxKm, c.nights, c.hookUp, c.route))
			code, out, errs := ullage("plan", "-within", patience.String(), "-roads=false", "-trip", file, "-places", extract)
			_, why, _ := strings.Cut(out, "There is no plan for this trip:\n  - ")
			why, _, _ = strings.Cut(why, "NOT A VALID PLAN")
			flat := strings.Join(strings.Fields(why), " ")
			if code != exitInfeasible || !strings.HasPrefix(flat, c.first) {
				t.Errorf("exit %d, want first %q, got %s%s", code, c.first, why, errs)
			}
			for _, want := range c.help {
				if !strings.Contains(flat, want) {
					t.Errorf("want %q in %s", want, why)
				}
			}
			if strings.HasPrefix(c.first, "The map data") && strings.Contains(flat, "fewer") {
				t.Errorf("it is no cure to stay fewer nights: %s", why)
			}
			t.Log(why)
		})
	}
}
