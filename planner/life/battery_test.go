package life

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestUsable(t *testing.T) {
	for chem, want := range map[string]float64{LeadAcid: 47.5, AGM: 47.5, LiFePO4: 80.75} {
		if got := (Battery{Chemistry: chem, PlateAh: 95}).UsableAh(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s of 95 Ah: usable %v, want %v", chem, got, want)
		}
	}
	if err := (Battery{Chemistry: "potato", PlateAh: 1}).validate(); err == nil || !strings.Contains(err.Error(), "potato") {
		t.Errorf("potato: %v", err)
	}
}

// The closed form against steps of a second.
func TestChargeAgainstSteps(t *testing.T) {
	for _, b := range []Battery{{Chemistry: LeadAcid, PlateAh: 95}, {Chemistry: LiFePO4, PlateAh: 100}} {
		for _, amps := range []float64{5, 15, 30, 100} {
			deficit, charged := 45.0, 0.0
			const dt = 1.0 / 3600
			for range int(4 / dt) {
				charged += dt * min(amps, (deficit-charged)/chemistries[b.Chemistry].taperH)
			}
			if got := b.ChargeAh(amps, 4, deficit); math.Abs(got-charged) > 0.01 {
				t.Errorf("%s at %v A: %v Ah, in steps %v", b.Chemistry, amps, got, charged)
			}
		}
	}
}

func TestChargeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Battery{Chemistry: rapid.SampledFrom([]string{LeadAcid, AGM, Gel, LiFePO4}).Draw(t, "chemistry"), PlateAh: 100}
		amps, hours, deficit := rapid.Float64Range(0, 60).Draw(t, "A"), rapid.Float64Range(0, 24).Draw(t, "h"), rapid.Float64Range(0, 100).Draw(t, "deficit")
		got := b.ChargeAh(amps, hours, deficit)
		if !(got >= 0 && got <= deficit+1e-9 && got <= amps*hours+1e-9) {
			t.Fatalf("%v Ah into %v at %v A for %v h", got, deficit, amps, hours)
		}
		if b.ChargeAh(amps, hours+1, deficit) < got-1e-9 || b.ChargeAh(amps+1, hours, deficit) < got-1e-9 || b.ChargeAh(amps, hours, deficit+1) < got-1e-9 {
			t.Error("more time, current or room charges less")
		}
	})
}
