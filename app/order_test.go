package page

import (
	"slices"
	"testing"
)

// Whatever wakes first, what was given first runs first.
func TestInOrder(t *testing.T) {
	var timers []func()
	var ran []int
	run := inOrder(func(f func()) { timers = append(timers, f) })
	for n := range 3 {
		run(func() { ran = append(ran, n) })
	}
	slices.Reverse(timers)
	for _, wake := range timers {
		wake()
	}
	if !slices.Equal(ran, []int{0, 1, 2}) {
		t.Errorf("ran %v", ran)
	}
}
