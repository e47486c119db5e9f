package trip_test

import (
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/trip"
)

// What is written is read back, whatever a place is called.
func TestStopID(t *testing.T) {
	for text, want := range map[string]trip.StopID{
		"n1": {Place: "n1", Pass: 1}, "n1@2": {Place: "n1", Pass: 2}, "n1*3": {Place: "n1", Pass: 1, Nights: 3}, "n1@2*3": {Place: "n1", Pass: 2, Nights: 3},
		"a@2@1": {Place: "a@2", Pass: 1}, "a*2@1*4": {Place: "a*2", Pass: 1, Nights: 4},
	} {
		if got := trip.ParseStop(text); got != want || want.String() != text {
			t.Errorf("%q is %+v, and %+v is %q", text, got, want, want.String())
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		want := trip.StopID{Place: rapid.StringMatching(`[a-z@*0-9]{1,8}`).Draw(t, "place"), Pass: rapid.IntRange(1, 30).Draw(t, "pass"), Nights: rapid.SampledFrom([]int{0, 2, 3, 14}).Draw(t, "nights")}
		if got := trip.ParseStop(want.String()); got != want {
			t.Fatalf("%+v is written %q and read %+v", want, want, got)
		}
	})
}
