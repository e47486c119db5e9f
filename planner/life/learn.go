package life

import (
	"cmp"
	"fmt"
	"math"

	"ullage/planner/fact"
)

// A Factor is what readings have taught about a use: real use ÷ likely use,
// with how sure that is. It belongs to one tank and one party; the next trip starts
// anew or, with the same people and vehicle, goes on.
type Factor struct {
	Tank     string  `json:"tank"`
	Factor   float64 `json:"factor"`
	SD       float64 `json:"sd"`
	Readings int     `json:"readings"`
	PriorSD  float64 `json:"prior_sd"` // before any reading
}

const (
	// MinFactor and MaxFactor bound what is believed: beyond them the gauge, the
	// habits or the vehicle are not what was said, and somebody should look. Our own choice.
	MinFactor, MaxFactor = 0.5, 2.0
	// minPrior: nothing is so sure that readings could not change it.
	minPrior = 0.05
)

// NewFactor is a factor before any reading: 1, as unsure as the part of the use's
// spread that stays the same all trip.
func NewFactor(u Use) Factor {
	sd := max(u.Spread().Trip, minPrior)
	return Factor{Tank: u.Tank, Factor: 1, SD: sd, PriorSD: sd}
}

// An Observation is a tank between two moments without service between
// them. Levels are as the gauges say; Likely is what the model expects to have
// been used (positive, also of a waste tank), of n days or 100 km like it.
type Observation struct {
	From, To Reading // From may come from a service: full, SD 0
	Waste    bool
	Unit     string // of the levels: L, Ah; "": L
	Likely   float64
	Day      float64 // day spread of the use
	N        float64
}

// A Lesson is what a reading changed.
type Lesson struct {
	Before, After Factor
	Used          float64 // as the gauges say; of a lamp, what must have been used at least or at most
	Expected      float64 // with the factor before
	Weight        float64 // how much of the difference was believed, 0 to 1
	Bounded       bool    // the bound was reached: something is not as said
	Says          fact.Fact
}

// Learn updates a factor with an observation. It is the linear Kalman filter
// of one unknown (R. E. Kalman, "A new approach to linear filtering and
// prediction problems", 1960): used = factor × likely + error, where the error
// holds both gauges and the days' own chance. The order of observations does not
// matter for it. A lamp only says on which side the level is: the belief is cut off there and its mean and variance taken (moments of
// the truncated normal distribution: Johnson, Kotz, Balakrishnan, "Continuous
// univariate distributions", vol. 1, ch. 13).
//
// The factor stays within [MinFactor] to [MaxFactor]. An observation of less
// than a thousandth of the capacity teaches nothing. NaN is an error.
func (f Factor) Learn(o Observation) (Lesson, error) {
	l := Lesson{Before: f, After: f, Expected: f.Factor * o.Likely}
	for _, v := range []float64{o.From.Level, o.From.SD, o.To.Level, o.Likely, o.Day, f.Factor, f.SD} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return l, fmt.Errorf("life: observation of %s: %+v holds no numbers to learn from", f.Tank, o)
		}
	}
	if !(o.Likely > 1e-3*max(o.To.High, 1e-9)) {
		l.Says = fact.Of(TooLittleUsed, nil)
		return l, nil
	}
	chance := f.Factor * o.Likely * o.Day / math.Sqrt(max(o.N, 1))
	prior := f.SD * o.Likely
	var mean, sd float64 // of the use, after the reading
	if math.IsInf(o.To.SD, 1) {
		low, high := o.used(o.To.High), o.used(o.To.Low)
		if o.Waste {
			low, high = high, low
		}
		error2 := o.From.SD*o.From.SD + chance*chance
		total := math.Sqrt(prior*prior + error2)
		m, v := truncated(l.Expected, total, low, high)
		// What the cut taught about the sum of both goes to the factor by its part of the variance.
		gain := prior * prior / (total * total)
		mean = l.Expected + gain*(m-l.Expected)
		sd = math.Sqrt(prior*prior - gain*gain*(total*total-v))
		l.Used, l.Weight = min(max(l.Expected, low), high), gain
	} else {
		l.Used = o.used(o.To.Level)
		error2 := o.From.SD*o.From.SD + o.To.SD*o.To.SD + chance*chance
		l.Weight = prior * prior / (prior*prior + error2)
		mean = l.Expected + l.Weight*(l.Used-l.Expected)
		sd = prior * math.Sqrt(1-l.Weight)
	}
	next := mean / o.Likely
	l.After.Factor = min(max(next, MinFactor), MaxFactor)
	l.Bounded = l.After.Factor != next
	l.After.SD = sd / o.Likely
	l.After.Readings++
	l.Says = l.explain(o)
	return l, nil
}

// used is what must have been used for the tank to be at a level now.
func (o Observation) used(level float64) float64 {
	if o.Waste {
		return level - o.From.Level
	}
	return o.From.Level - level
}

// Kinds of what a reading taught.
const (
	TooLittleUsed fact.Kind = "learnt.too_little"
	LampExpected  fact.Kind = "learnt.lamp_expected"
	LampSurprise  fact.Kind = "learnt.lamp"
	GaugeRead     fact.Kind = "learnt.gauge"
)

// explain is what was expected, what the gauge says, and how much more or less
// than usual is planned with from now on.
func (l Lesson) explain(o Observation) fact.Fact {
	lamp := math.IsInf(o.To.SD, 1)
	if lamp && math.Abs(l.After.Factor-l.Before.Factor) < 0.01 {
		return fact.Of(LampExpected, nil)
	}
	change := l.After.Factor - 1
	v := fact.V{"change": fact.Share(math.Abs(change), 0)}
	switch {
	case change >= 0.005:
		v["use"] = fact.Text("more")
	case change <= -0.005:
		v["use"] = fact.Text("less")
	}
	if lamp {
		return fact.Of(LampSurprise, v)
	}
	unit := cmp.Or(o.Unit, "L")
	v["expected"], v["used"] = fact.Quantity(l.Expected, unit, 0), fact.Quantity(l.Used, unit, 0)
	if l.Bounded {
		v["bounded"] = fact.Text("bounded")
	}
	return fact.Of(GaugeRead, v)
}

// truncated is mean and variance of a normal distribution cut off at low and high.
func truncated(mean, sd, low, high float64) (m, v float64) {
	if sd <= 0 {
		return min(max(mean, low), high), 0
	}
	a, b := (low-mean)/sd, (high-mean)/sd
	mass := normal(b) - normal(a)
	if a > 0 { // in the tail the other side is more exact
		mass = normal(-a) - normal(-b)
	}
	if mass < 1e-12 { // as good as impossible: the nearest edge
		return min(max(mean, low), high), sd * sd * 1e-4
	}
	pa, pb := density(a), density(b)
	d := (pa - pb) / mass
	return mean + sd*d, max(sd*sd*(1+(finite(a)*pa-finite(b)*pb)/mass-d*d), 0)
}

func normal(z float64) float64  { return math.Erfc(-z/math.Sqrt2) / 2 }
func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// finite: infinity × density(infinity) is 0.
func finite(z float64) float64 { return min(max(z, -40), 40) }

// Learned is the use as the factor has it: scaled, and as sure as the readings
// have made it.
func (u Use) Learned(f Factor) Use {
	out := Use{Tank: u.Tank, Likely: f.Factor * u.Likely}
	shrink := 1.0
	if f.PriorSD > 0 && f.Factor > 0 {
		shrink = f.SD / f.Factor / f.PriorSD
	}
	for _, p := range u.Parts {
		p.Amount *= f.Factor
		p.Spread.Trip *= min(shrink, 1)
		out.Parts = append(out.Parts, p)
	}
	return out
}
