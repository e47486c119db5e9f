package model

import (
	"strings"
	"testing"

	"github.com/paulmach/orb"
)

// What the device says of where it is stands in the panel, with the kilometre
// that the plan goes on from; a word more where that is off the route.
func TestDevice(t *testing.T) {
	m := then(underWay(), ReportToggled{"2026-06-13T12:00"}, HereAsked{})
	if !m.Report.Asking {
		t.Error("nobody sees that the device is asked")
	}
	on := orb.Point{11.4, 50.2} // the third point of the sample's route, 112.47 km along
	for _, tc := range []struct {
		name string
		msg  Msg
		said string // by the device
		lost string
		at   bool
	}{
		{"on the route", HereFound{on, 40}, "Your device says km 112, to within 40 m.", "", true},
		{"by a mast", HereFound{on, 1000}, "Your device says km 112, to within 1 km.", "", true},
		{"beside it", HereFound{orb.Point{11.4, 50.19}, 40}, "The route is 1", "", true},
		{"far away", HereFound{orb.Point{0, 0}, 40}, "", "km off your route", false},
		{"not allowed", HereUnknown{NotAllowed}, "", "Allow it in the browser", false},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got := then(m, tc.msg).Report
			device, lost := plain(m.Say.Fact(got.Device)), plain(m.Say.Fact(got.Lost))
			if !strings.Contains(device, tc.said) || tc.said == "" && device != "" {
				t.Errorf("the device says %q, want %q", device, tc.said)
			}
			if !strings.Contains(lost, tc.lost) || tc.lost == "" && lost != "" {
				t.Errorf("lost: %q, want %q", lost, tc.lost)
			}
			if got.Asking || (got.At != nil) != tc.at {
				t.Errorf("still asked: %v; at %v", got.Asking, got.At)
			}
			if tc.at && got.Said[RoadKm] != "112.47" {
				t.Errorf("the plan goes on from km %s", got.Said[RoadKm])
			}
		})
	}
	again := then(m, HereUnknown{NoPosition}, HereAsked{}, HereFound{on, 40}, HereAsked{})
	if r := again.Report; !r.Asking || !r.Lost.Nothing() {
		t.Errorf("asked again: %+v", r)
	}
	if shut := then(m, ReportToggled{}, HereFound{on, 40}, HereUnknown{TooLong}); shut.Report != nil {
		t.Error("an answer that comes late opens the panel again")
	}
}

// plain is a text with spaces as one types them.
func plain(text string) string {
	return strings.NewReplacer(thin, " ", "\u00a0", " ").Replace(text)
}
