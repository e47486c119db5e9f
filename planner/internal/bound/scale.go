package bound

import (
	"math"

	"ullage/planner/internal/model"
)

// This file divides the headroom of a tank into classes for the bound by
// nights. Headroom is rounded up to its class, so that the bound is never too
// much.

// A scale is the classes of one tank, the highest being a full tank. Of a tank
// that driving leaves alone they are the headrooms that nights can leave. Of
// one that driving restores they are steps of hand = headroom + perKm·km,
// which driving does not change; as a full tank is less by that measure with
// every km, the steps move along. Detours restore, too: those of stops that
// this bound knows nothing of are all taken as made (extra).
type scale struct {
	n      int
	values []float64 // ascending; of a tank that driving leaves alone
	perKm  float64
	cap    float64
	step   float64   // of a tank that driving restores, else 0
	top    []int     // by stop: the highest class before it, in steps
	extra  []float64 // by stop: what detours before it may have restored
}

// class is the lowest one that is not below the hand, before stop i. Of a tank
// that driving restores, hand is less the extra of before.
func (s *scale) class(i int, hand float64) int {
	if s.step > 0 {
		c := int(math.Ceil((hand-model.Slack)/s.step)) - s.top[i] + s.n - 1
		return max(0, min(c, s.n-1))
	}
	n := 0
	for n < s.n-1 && s.values[n] < hand-model.Slack {
		n++
	}
	return n
}

// headroom of class c before stop i, at km.
func (s *scale) headroom(i, c int, km float64) float64 {
	if s.step > 0 {
		return model.Lesser(s.cap, s.step*float64(c+s.top[i]-s.n+1)-s.perKm*km+s.extra[i])
	}
	return s.values[c]
}

// from is the least that goes into the tank between a headroom and a class.
func (s *scale) from(headroom float64, class int) float64 {
	if class == 0 {
		return 0
	}
	return model.Greater(0, s.values[class-1]-headroom)
}

// detour is what the way to a stop and back restores.
func (s *scale) detour(stop *model.Stop) float64 { return -s.perKm * 2 * stop.Half }

// offset is headroom less what class measures, before stop i at km.
func (s *scale) offset(i int, km float64) float64 {
	if s.step == 0 {
		return 0
	}
	return s.extra[i] - s.perKm*km
}
