package page

import (
	"fmt"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/itinerary"
	"ullage/app/model/sample"
	"ullage/app/say"
	"ullage/planner/trip"
)

// A stop's waypoint is where one drives in, which its row says too.
func TestDriveIn(t *testing.T) {
	plan := sample.Plan()
	plan.Days[0].Calls[0].Entry = &trip.Entry{Point: orb.Point{7.25, 46.5}, Road: "Quay Road"}
	plan.Days[0].Calls[1].Entry = &trip.Entry{Point: orb.Point{7.5, 46.75}}
	if b := string(itinerary.StopsGPX(say.Voice{Thin: true}, sample.Trip(), plan)); !strings.Contains(b, `<wpt lat="46.5" lon="7.25"><name>1 Corner pumps`) {
		t.Errorf("the first waypoint is elsewhere:\n%s", b)
	}
	m := planned()
	m.Plan = plan
	html := drawn(t, m)
	at := plan.Days[1].Calls[0].Point
	for _, want := range []string{"Entrance from Quay Road:", "46.50000, 7.25000", "Entrance:", "46.75000, 7.50000", fmt.Sprintf("%.5f, %.5f", at[1], at[0])} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}
