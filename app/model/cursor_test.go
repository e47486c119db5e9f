package model

import (
	"testing"
)

// The stop that one comes to is brought into sight, from the minute of arrival on.
func TestTheStopIsShown(t *testing.T) {
	for _, tc := range []struct {
		name string
		at   float64 // the cursor before, minutes
		msg  Msg
		want int // number of the stop; 0 none
	}{
		{"arriving at the first", 540, Skipped{1}, 1},
		{"on the way to the first", 540, PointedKm{89}, 0},
		{"arriving at the second", 540, PointedKm{150}, 2},
		{"still at the second", 720, PointedKm{151}, 0},
		{"back at the first", 720, Skipped{-1}, 1},
		{"back before all", 630, PointedX{0}, 0},
	} {
		m := planned()
		m.Cursor = tc.at
		got := todo[ShowStop](m, tc.msg)
		if n := len(got); n > 1 || (n == 1) != (tc.want > 0) || n == 1 && got[0].N != tc.want {
			t.Errorf("%s: brings %v into sight, want %d", tc.name, got, tc.want)
		}
	}
}
