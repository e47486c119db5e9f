package page

import (
	"bytes"
	"strings"
	"testing"

	"ullage/data"
)

// The file is read back by the reader of routes, and holds every stop.
func TestStopsGPX(t *testing.T) {
	trip, plan := sampleTrip(), samplePlan()
	trip.Name = "Bay <& back>"
	b := stopsGPX(trip, plan)
	r, err := data.ReadRoute("stops.gpx", bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Line()) != len(trip.Route) || r.Line()[2] != trip.Route[2] {
		t.Errorf("route comes back as %v", r.Line())
	}
	for _, want := range []string{"<name>1 Corner pumps</name>", "refuel 20" + thin + "L Diesel", "<name>3 Service point</name>", "Bay &lt;&amp; back&gt;"} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %q in\n%s", want, b)
		}
	}
}
