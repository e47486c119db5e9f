package life

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ullage/planner/fact"
)

var water100 = Gauge{Kind: LitreGauge, Capacity: 100}

func mustRead(t interface{ Fatal(...any) }, g Gauge, shown float64) Reading {
	r, err := g.Read(shown)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestRead(t *testing.T) {
	for _, c := range []struct {
		g           Gauge
		shown       float64
		level, l, h float64
	}{
		{water100, 60, 60, 0, 100},
		{Gauge{Kind: PercentGauge, Capacity: 120}, 50, 60, 0, 120},
		{Gauge{Kind: QuarterGauge, Capacity: 120}, 3, 90, 0, 120},
		{Gauge{Kind: LampGauge, Capacity: 90, LampAt: 12}, 1, 6, 0, 12},
		{Gauge{Kind: LampGauge, Capacity: 90, LampAt: 12}, 0, 51, 12, 90},
		{Gauge{Kind: LampGauge, Capacity: 90, LampAt: 12}, 0.5, 6, 0, 12},
		{Gauge{Kind: LampGauge, Capacity: 90, LampAt: 90}, 1, 45, 0, 90},
		{Gauge{Kind: LampGauge, Capacity: 90}, 0, 45, 0, 90},
		{Gauge{Kind: LampGauge, Capacity: 18, LampAt: 15, Waste: true}, 1, 16.5, 15, 18},
		{Gauge{Kind: LampGauge, Capacity: 18, LampAt: 15, Waste: true}, 0, 7.5, 0, 15},
	} {
		if r := mustRead(t, c.g, c.shown); r.Level != c.level || r.Low != c.l || r.High != c.h {
			t.Errorf("%+v shows %v: %+v", c.g, c.shown, r)
		}
	}
	for _, c := range []struct {
		g     Gauge
		shown float64
		want  string
	}{
		{water100, 101, "not between"}, {water100, math.NaN(), "not between"}, {Gauge{Kind: QuarterGauge, Capacity: 1}, 5, "between 0 and 4"},
		{Gauge{Kind: "smell", Capacity: 1}, 0, "smell"}, {Gauge{Kind: LampGauge, Capacity: 9, LampAt: 10}, 0, "lamp"}, {Gauge{Kind: LampGauge}, 0, "capacity"},
	} {
		if _, err := c.g.Read(c.shown); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v shows %v: %v, want %q", c.g, c.shown, err, c.want)
		}
	}
}

func learn(t interface{ Fatal(...any) }, f Factor, o Observation) Lesson {
	l, err := f.Learn(o)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// By hand: prior 1 ± 0.2, 50 L expected, so 50 ± 10; the gauge says 70 ± 3 from
// full. Weight 100/109 = 0.917; use 68.35, factor 1.367, SD 0.2 × √(9/109) = 0.0575.
func TestLearnByHand(t *testing.T) {
	f := Factor{Factor: 1, SD: 0.2, PriorSD: 0.2}
	l := learn(t, f, Observation{From: Reading{Level: 100}, To: mustRead(t, water100, 30), Likely: 50, N: 2})
	if math.Abs(l.Weight-0.9174) > 1e-4 || math.Abs(l.After.Factor-1.36697) > 1e-4 || math.Abs(l.After.SD-0.05747) > 1e-4 || l.Bounded {
		t.Errorf("lesson %+v", l)
	}
	want := fact.Of(GaugeRead, fact.V{"expected": fact.Quantity(50, "L", 0), "used": fact.Quantity(70, "L", 0), "change": fact.Share(l.After.Factor-1, 0), "use": fact.Text("more")})
	if !l.Says.Equal(want) {
		t.Errorf("says %+v, want %+v", l.Says, want)
	}
	// As expected: no more and no less than usual; 0.5 % of the use is 0.25 L × 0.917.
	for _, c := range []struct {
		left float64
		use  string
	}{{50, ""}, {49.8, ""}, {49.7, "more"}, {50.2, ""}, {50.3, "less"}} {
		if l := learn(t, f, Observation{From: Reading{Level: 100}, To: mustRead(t, water100, c.left), Likely: 50, N: 2}); l.Says.Values["use"].S != c.use {
			t.Errorf("%v L left: %+v, want use %q", c.left, l.Says, c.use)
		}
	}
	// A quarter dial is believed less than litres.
	q := learn(t, f, Observation{From: Reading{Level: 100}, To: mustRead(t, Gauge{Kind: QuarterGauge, Capacity: 100}, 1), Likely: 50})
	if q.Weight >= l.Weight || q.After.SD <= l.After.SD {
		t.Errorf("quarters weigh %v, litres %v", q.Weight, l.Weight)
	}
}

func TestLearnIsBounded(t *testing.T) {
	f := Factor{Tank: "fresh", Factor: 1, SD: 0.5, PriorSD: 0.5}
	l := learn(t, f, Observation{From: Reading{Level: 100}, To: mustRead(t, water100, 0), Likely: 20})
	if l.After.Factor != MaxFactor || !l.Bounded || l.Says.Kind != GaugeRead || l.Says.Values["bounded"].S == "" || l.Says.Values["change"].N != 1 {
		t.Errorf("lesson %+v", l)
	}
	if l := learn(t, f, Observation{From: Reading{Level: 50}, To: mustRead(t, water100, 100), Likely: 20}); l.After.Factor != MinFactor || !l.Bounded || l.Says.Values["use"].S != "less" || l.Says.Values["change"].N != 0.5 {
		t.Errorf("a tank that fills itself: %+v", l)
	}
	if l := learn(t, f, Observation{From: Reading{Level: 50}, To: mustRead(t, water100, 50)}); l.After != f || !l.Says.Equal(fact.Of(TooLittleUsed, nil)) {
		t.Errorf("nothing expected teaches %+v", l)
	}
	if _, err := f.Learn(Observation{From: Reading{Level: math.NaN()}, To: mustRead(t, water100, 0), Likely: 20}); err == nil {
		t.Error("NaN teaches")
	}
}

func TestLearnFromLamp(t *testing.T) {
	cassette := Gauge{Kind: LampGauge, Capacity: 18, LampAt: 15, Waste: true}
	f := Factor{Factor: 1, SD: 0.2, PriorSD: 0.2}
	o := Observation{To: mustRead(t, cassette, 0), Waste: true, Likely: 5}
	if l := learn(t, f, o); math.Abs(l.After.Factor-1) > 1e-6 || !l.Says.Equal(fact.Of(LampExpected, nil)) {
		t.Errorf("an expected dark lamp teaches %+v", l)
	}
	o.To = mustRead(t, cassette, 1)
	if l := learn(t, f, o); l.After.Factor < 1.3 || l.Says.Kind != LampSurprise || l.Says.Values["use"].S != "more" {
		t.Errorf("an unexpected lit lamp teaches %+v", l)
	}
	o.Likely = 25
	o.To = mustRead(t, cassette, 0)
	if l := learn(t, f, o); l.After.Factor > 0.75 {
		t.Errorf("a lamp that stays dark teaches %+v", l)
	}
}

// What was used is counted from the level before, of a waste tank upwards; of a lamp
// it is what must have been used at least or at most.
func TestLearnCountsFromTheLevelBefore(t *testing.T) {
	f := Factor{Factor: 1, SD: 0.2, PriorSD: 0.2}
	tank := Gauge{Kind: LitreGauge, Capacity: 100}
	for _, c := range []struct {
		name     string
		from, to float64
		waste    bool
		want     float64
	}{{"supply", 80, 50, false, 30}, {"waste", 20, 50, true, 30}} {
		l := learn(t, f, Observation{From: Reading{Level: c.from}, To: mustRead(t, tank, c.to), Waste: c.waste, Likely: 30, N: 1})
		if math.Abs(l.Used-c.want) > 1e-9 || math.Abs(l.After.Factor-1) > 1e-9 {
			t.Errorf("%s: used %v, factor %v, want %v and 1", c.name, l.Used, l.After.Factor, c.want)
		}
	}
	lamp := Gauge{Kind: LampGauge, Capacity: 18, LampAt: 15, Waste: true}
	for _, c := range []struct{ shown, likely, want float64 }{{1, 5, 13}, {0, 25, 13}, {0, 5, 5}} { // lit from 15: 13 more than the 2 before
		l := learn(t, f, Observation{From: Reading{Level: 2}, To: mustRead(t, lamp, c.shown), Waste: true, Likely: c.likely})
		if math.Abs(l.Used-c.want) > 1e-9 {
			t.Errorf("lamp %v, %v likely: used %v, want %v", c.shown, c.likely, l.Used, c.want)
		}
	}
	little := Observation{From: Reading{Level: 100}, To: mustRead(t, tank, 99), Likely: 0.09, N: 1} // a thousandth of 100 is 0.1
	if l := learn(t, f, little); l.After != f || l.Says.Kind != TooLittleUsed {
		t.Errorf("next to nothing teaches %+v", l)
	}
	if little.Likely = 0.11; learn(t, f, little).After == f {
		t.Error("a little more teaches nothing")
	}
}

// A use that was learnt is as sure as the readings have made it, never less sure
// than before; without a prior nothing is known of that.
func TestLearnedSpread(t *testing.T) {
	u := NewUse("fresh", Part{"all", 50, Spread{Trip: 0.2, Day: 0.1}})
	for _, c := range []struct {
		f    Factor
		want float64
	}{
		{Factor{Factor: 1, SD: 0.1, PriorSD: 0.2}, 0.1}, {Factor{Factor: 2, SD: 0.1, PriorSD: 0.2}, 0.05},
		{Factor{Factor: 1, SD: 0.4, PriorSD: 0.2}, 0.2}, {Factor{Factor: 1, SD: 0.1}, 0.2}, {Factor{SD: 0.1, PriorSD: 0.2}, 0.2},
	} {
		if got := u.Learned(c.f).Parts[0].Spread; math.Abs(got.Trip-c.want) > 1e-12 || got.Day != 0.1 {
			t.Errorf("%+v: %+v, want ± %v of the trip", c.f, got, c.want)
		}
	}
}

// The cut-off belief against counting draws (seed 2).
func TestTruncated(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for _, c := range []struct{ mean, sd, low, high float64 }{{10, 3, 12, 18}, {10, 3, 0, 9}, {10, 3, -50, 50}, {10, 2, 14, math.Inf(1)}} {
		var n, sum, sum2 float64
		for range 400000 {
			if x := c.mean + c.sd*r.NormFloat64(); x >= c.low && x <= c.high {
				n, sum, sum2 = n+1, sum+x, sum2+x*x
			}
		}
		m, v := truncated(c.mean, c.sd, c.low, c.high)
		if math.Abs(m-sum/n) > 0.03 || math.Abs(v-(sum2/n-sum/n*sum/n)) > 0.05 {
			t.Errorf("%+v: %v ± %v², drawn %v ± %v²", c, m, v, sum/n, sum2/n-sum/n*sum/n)
		}
	}
}

// Without doubt, or where the cut leaves as good as nothing, it is the nearest edge.
func TestTruncatedToAnEdge(t *testing.T) {
	for _, c := range []struct{ mean, sd, low, high, m, v float64 }{
		{10, 0, 12, 18, 12, 0}, {10, 0, 0, 9, 9, 0}, {10, 0, 0, 20, 10, 0}, {10, 0, 10, 20, 10, 0}, {10, 0, 0, 10, 10, 0}, {10, 2, 40, 50, 40, 4e-4}, {10, 2, -30, -20, -20, 4e-4},
	} {
		if m, v := truncated(c.mean, c.sd, c.low, c.high); m != c.m || math.Abs(v-c.v) > 1e-15 {
			t.Errorf("%+v: %v ± %v²", c, m, v)
		}
	}
}

// Without the days' own chance one reading after the other is the same as both at once,
// in any order, and equal to weighted least squares.
func TestLearnInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Factor{Factor: 1, SD: 0.2, PriorSD: 0.2}
		draw := func(name string) Observation {
			likely := rapid.Float64Range(20, 50).Draw(t, name)
			return Observation{From: Reading{Level: 100}, To: Reading{Level: 100 - likely*rapid.Float64Range(0.8, 1.2).Draw(t, name+" used"), SD: 3, High: 100}, Likely: likely}
		}
		a, b := draw("a"), draw("b")
		ab := learn(t, learn(t, f, a).After, b).After
		ba := learn(t, learn(t, f, b).After, a).After
		weights, sum := 1/(f.SD*f.SD), 1/(f.SD*f.SD)
		for _, o := range []Observation{a, b} {
			weights += o.Likely * o.Likely / 9
			sum += o.Likely * (o.From.Level - o.To.Level) / 9
		}
		want, sd := sum/weights, math.Sqrt(1/weights)
		for _, got := range []Factor{ab, ba} {
			if math.Abs(got.Factor-want) > 1e-9 || math.Abs(got.SD-sd) > 1e-9 {
				t.Errorf("learned %+v, least squares %v ± %v", got, want, sd)
			}
		}
	})
}

func TestLearnProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Gauge{Kind: rapid.SampledFrom([]string{LitreGauge, PercentGauge, QuarterGauge, LampGauge}).Draw(t, "gauge"), Capacity: 100, LampAt: 15, Waste: rapid.Bool().Draw(t, "waste")}
		top := map[string]float64{LitreGauge: 100, PercentGauge: 100, QuarterGauge: 4, LampGauge: 1}[g.Kind]
		to := mustRead(t, g, math.Round(rapid.Float64Range(0, top).Draw(t, "shown")))
		f := Factor{Factor: rapid.Float64Range(MinFactor, MaxFactor).Draw(t, "factor"), SD: rapid.Float64Range(0.01, 0.5).Draw(t, "sd"), PriorSD: 0.5}
		o := Observation{From: Reading{Level: rapid.Float64Range(0, 100).Draw(t, "from"), SD: rapid.Float64Range(0, 10).Draw(t, "from sd"), High: 100},
			To: to, Waste: g.Waste, Likely: rapid.Float64Range(0, 100).Draw(t, "likely"), Day: rapid.Float64Range(0, 0.5).Draw(t, "day"), N: 2}
		l := learn(t, f, o)
		if !(l.After.Factor >= MinFactor && l.After.Factor <= MaxFactor) {
			t.Errorf("factor %v", l.After.Factor)
		}
		if !(l.After.SD <= f.SD+1e-12 && l.After.SD >= 0) {
			t.Errorf("a reading made it less sure: %v to %v", f.SD, l.After.SD)
		}
		if l.Says.Nothing() {
			t.Error("not explained")
		}
		u := NewUse("fresh", Part{"all", 50, Spread{Trip: 0.5, Day: 0.1}}).Learned(l.After)
		if math.Abs(u.Likely-50*l.After.Factor) > 1e-9 {
			t.Errorf("learned use %v", u.Likely)
		}
	})
}

// Ten days of a party that uses 30 % more: the factor comes near it and its
// doubt covers the truth (seed 3).
func TestLearnFindsTheTruth(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	u := NewUse("fresh", Part{"all", 60, waterSpread})
	covered := 0
	for range 200 {
		truth := 1 + waterSpread.Trip*r.NormFloat64()
		f := NewFactor(u)
		for range 10 {
			used := 60 * truth * (1 + waterSpread.Day*r.NormFloat64())
			f = learn(t, f, Observation{From: Reading{Level: 100}, To: Reading{Level: 100 - used + 3*r.NormFloat64(), SD: 3, High: 100}, Likely: 60, Day: waterSpread.Day, N: 1}).After
		}
		if math.Abs(f.Factor-truth) < 1.645*f.SD {
			covered++
		}
		if f.SD > 0.06 {
			t.Fatalf("after ten days still ± %v", f.SD)
		}
	}
	if covered < 160 || covered > 199 {
		t.Errorf("%d of 200 within the 90 %% band, want about 180", covered)
	}
}
