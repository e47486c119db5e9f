package life

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// Quantiles of the standard normal distribution: 0.90 → 1.2816, 0.95 → 1.6449
// (any table). A log-normal with a relative deviation of 0.2 has σ = √ln 1.04.
func TestFactor(t *testing.T) {
	for _, c := range []struct{ confidence, z float64 }{{0.5, 0}, {0.9, 1.281552}, {0.95, 1.644854}} {
		want := math.Exp(c.z * math.Sqrt(math.Log(1.04)))
		if got := (Spread{Trip: 0.2}).Factor(c.confidence, 3); math.Abs(got-want) > 1e-6 {
			t.Errorf("Factor(%v) = %v, want %v", c.confidence, got, want)
		}
	}
}

// The factor covers what it promises, whether errors add up or multiply
// (20,000 trips each, seed 1).
func TestFactorCovers(t *testing.T) {
	s, days, trips := Spread{Trip: 0.15, Day: 0.30}, 4, 20000
	limit := NewUse("fresh", Part{"all", 10, s}).Planned(0.9, float64(days)) * float64(days)
	for _, c := range []struct {
		name string
		use  func(same, day float64) float64
	}{
		{"adding", func(same, day float64) float64 { return 10 * (1 + s.Trip*same + s.Day*day) }},
		{"multiplying", func(same, day float64) float64 { return 10 * math.Exp(s.Trip*same+s.Day*day) }},
	} {
		r, held := rand.New(rand.NewPCG(1, 1)), 0
		for range trips {
			same, sum := r.NormFloat64(), 0.0
			for range days {
				sum += c.use(same, r.NormFloat64())
			}
			if sum <= limit {
				held++
			}
		}
		share := float64(held) / float64(trips)
		t.Logf("%s: %.3f", c.name, share)
		if share < 0.86 || share > 0.94 {
			t.Errorf("%s: %.3f of the trips stay within the planned use, want 0.90 ± 0.04", c.name, share)
		}
	}
}

func TestSpreadProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(0, 1)
		part := func(name string) Part {
			return Part{name, rapid.Float64Range(-100, 100).Draw(t, name), Spread{share.Draw(t, "trip"), share.Draw(t, "day")}}
		}
		u := NewUse("battery", part("one"), part("two"))
		n := rapid.Float64Range(0, 30).Draw(t, "n")
		lo := rapid.Float64Range(0.5, 0.99).Draw(t, "low")
		hi := rapid.Float64Range(lo, 0.99).Draw(t, "high")
		if u.Planned(hi, n) < u.Planned(lo, n)-1e-12 {
			t.Error("more confidence plans with less")
		}
		if u.Planned(hi, n+5) > u.Planned(hi, n)+1e-9 {
			t.Error("more days need more caution a day")
		}
		b := u.Band(hi, n)
		if !(b.Low <= b.Likely+1e-12 && b.Likely <= b.High+1e-12) {
			t.Errorf("band out of order: %+v", b)
		}
		if math.Abs(u.Planned(0.5, n)-u.Likely) > 1e-9 {
			t.Error("even odds are not the likely use")
		}
	})
}

func TestLasts(t *testing.T) {
	u := NewUse("fresh", Part{"all", 40, waterSpread})
	if got := u.Lasts(100); got != 2.5 {
		t.Errorf("100 L last %v days", got)
	}
	if u.Lasts(10) != 1 || u.Times(-1).Lasts(10) != 1 {
		t.Error("less than a day is counted")
	}
}
