package page

import (
	"bytes"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/say"
	"ullage/data"
	"ullage/planner/trip"
)

// A stop's waypoint is where one drives in, which its row says too.
func TestDriveIn(t *testing.T) {
	plan := samplePlan()
	plan.Days[0].Calls[0].Entry = &trip.Entry{Point: orb.Point{7.25, 46.5}, Road: "Quay Road"}
	plan.Days[0].Calls[1].Entry = &trip.Entry{Point: orb.Point{7.5, 46.75}}
	if b := string(stopsGPX(say.Voice{Thin: true}, sampleTrip(), plan)); !strings.Contains(b, `<wpt lat="46.5" lon="7.25"><name>1 Corner pumps`) {
		t.Errorf("the first waypoint is elsewhere:\n%s", b)
	}
	m := planned()
	m.Plan = plan
	html := drawn(t, m)
	at := plan.Days[1].Calls[0].Point
	for _, want := range []string{"Drive in from Quay Road at", "46.50000, 7.25000", "Drive in at", "46.75000, 7.50000", position(at)} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// The file is read back by the reader of routes, and holds every stop.
func TestStopsGPX(t *testing.T) {
	tr, plan := sampleTrip(), samplePlan()
	tr.Name = "Bay <& back>"
	b := stopsGPX(say.Voice{Thin: true}, tr, plan)
	r, err := data.ReadRoute("stops.gpx", bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Line()) != len(tr.Route) || r.Line()[2] != tr.Route[2] {
		t.Errorf("route comes back as %v", r.Line())
	}
	for _, want := range []string{"<name>1 Corner pumps</name>", "refuel 20" + thin + "L Diesel", "<name>3 Service point</name>", "Bay &lt;&amp; back&gt;"} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %q in\n%s", want, b)
		}
	}
}
