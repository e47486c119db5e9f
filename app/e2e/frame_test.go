//go:build !js

package e2e_test

import (
	"testing"

	"ullage/app/job"
)

// The frame that a brief visit sends is what the page's own cancel is.
func TestCancelFrame(t *testing.T) {
	p := open(t, 100, 100)
	var frame []byte
	for _, b := range eval[[]int](p, `Array.from((`+cancelFrame+`)(7))`) {
		frame = append(frame, byte(b))
	}
	r, err := job.DecodeRequest(frame)
	if err != nil || r.ID != 7 || !r.Cancel {
		t.Errorf("the frame is %+v, %v, want a cancel of 7", r, err)
	}
}
