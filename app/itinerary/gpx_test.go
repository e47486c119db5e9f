package itinerary

import (
	"bytes"
	"strings"
	"testing"

	"ullage/app/model/sample"
	"ullage/app/say"
	"ullage/data"
)

// The file is read back by the reader of routes, and holds every stop.
func TestStopsGPX(t *testing.T) {
	tr, plan := sample.Trip(), sample.Plan()
	tr.Name = "Bay <& back>"
	b := StopsGPX(say.Voice{Thin: true}, tr, plan)
	r, err := data.ReadRoute("stops.gpx", bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Line()) != len(tr.Route) || r.Line()[2] != tr.Route[2] {
		t.Errorf("route comes back as %v", r.Line())
	}
	for _, want := range []string{"<name>1 Corner pumps</name>", "Refuel 20\u202fL of diesel", "<name>3 Service area</name>", "Bay &lt;&amp; back&gt;"} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %q in\n%s", want, b)
		}
	}
}
