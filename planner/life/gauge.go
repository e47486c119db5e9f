package life

import (
	"fmt"
	"math"
	"strconv"

	"ullage/planner/fact"
)

// Gauges as vehicles show them.
const (
	LitreGauge   = "litres"   // a number in the tank's unit
	PercentGauge = "percent"  // 0 to 100
	QuarterGauge = "quarters" // 0 to 4
	LampGauge    = "lamp"     // 1 lit, 0 dark
)

// A Gauge is how a tank shows its level. LampAt is the level (a level, not a
// headroom) at which the lamp changes: a supply's lamp is lit below it, a waste's
// above it.
type Gauge struct {
	Kind     string  `json:"kind"`
	Capacity float64 `json:"capacity"`
	LampAt   float64 `json:"lamp_at,omitempty"`
	Waste    bool    `json:"waste,omitempty"`
}

// Errors of gauges as standard deviations, from memory. A dial of quarters is
// read to the nearest mark: uniform over a quarter, 1/√12 of it; a percentage
// comes from a few probes or a float that leans on slopes.
const (
	litreError   = 0.03 // of the capacity
	percentError = 0.05
)

// A Reading is what a gauge says of the level: between Low and High, and
// within that around Level with a standard deviation of SD. A lamp has only limits: SD is
// infinite.
type Reading struct{ Level, SD, Low, High float64 }

// Kinds of what is wrong with what a gauge is said to show. Its numbers are on its
// own scale: litres, percent or quarters.
const (
	gaugeSize  fact.Kind = "gauge.size"
	gaugeKind  fact.Kind = "gauge.kind"
	gaugeShows fact.Kind = "gauge.range"
	gaugeLamp  fact.Kind = "gauge.lamp_at"
)

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Read turns what the gauge shows into a reading. A value that the gauge
// cannot show is an error.
func (g Gauge) Read(shown float64) (Reading, error) {
	if !(g.Capacity > 0) {
		return Reading{}, fact.Fail(fmt.Errorf("life: gauge of a tank of %v: state the capacity", g.Capacity), gaugeSize, nil)
	}
	top := map[string]float64{LitreGauge: g.Capacity, PercentGauge: 100, QuarterGauge: 4, LampGauge: 1}
	limit, ok := top[g.Kind]
	if !ok {
		err := fmt.Errorf("life: gauge %q is not known: use %s, %s, %s or %s", g.Kind, LitreGauge, PercentGauge, QuarterGauge, LampGauge)
		return Reading{}, fact.Fail(err, gaugeKind, fact.V{"found": fact.Text(g.Kind), "list": fact.Texts([]string{LitreGauge, PercentGauge, QuarterGauge, LampGauge})})
	}
	if !(shown >= 0 && shown <= limit) {
		err := fmt.Errorf("life: the gauge shows %v, which is not between 0 and %v: read it again", shown, limit)
		return Reading{}, fact.Fail(err, gaugeShows, fact.V{"have": fact.Text(number(shown)), "most": fact.Text(number(limit))})
	}
	all := Reading{Low: 0, High: g.Capacity}
	switch g.Kind {
	case LitreGauge:
		all.Level, all.SD = shown, litreError*g.Capacity
	case PercentGauge:
		all.Level, all.SD = shown/100*g.Capacity, percentError*g.Capacity
	case QuarterGauge:
		all.Level, all.SD = shown/4*g.Capacity, g.Capacity/4/math.Sqrt(12)
	case LampGauge:
		if !(g.LampAt >= 0 && g.LampAt <= g.Capacity) {
			err := fmt.Errorf("life: the lamp changes at %v of %v: state a level of the tank", g.LampAt, g.Capacity)
			return Reading{}, fact.Fail(err, gaugeLamp, fact.V{"have": fact.Text(number(g.LampAt)), "most": fact.Text(number(g.Capacity))})
		}
		if lit := shown >= 0.5; lit != g.Waste {
			all.High = g.LampAt
		} else {
			all.Low = g.LampAt
		}
		all.Level, all.SD = (all.Low+all.High)/2, math.Inf(1)
	}
	return all, nil
}
