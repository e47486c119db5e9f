package main

import (
	"fmt"
	"strings"
	"testing"

	"ullage/planner/life"
)

// What -levels says twice, or of no tank, is not taken in silence.
func TestLevelsInSilence(t *testing.T) {
	for _, text := range []string{"fresh=20,fresh=30", "=20", "fresh", "fresh=", "fresh=NaN", "fresh=Inf", "fresh=-1", "fresh=0x1p4", "grey=lamp,grey=dark"} {
		if got, err := gauges(text); err == nil {
			t.Errorf("gauges(%q) = %v", text, got)
		}
	}
}

// FuzzLevels: each part of -levels is one gauge of one tank, and what it shows is a level of it or refused in words.
func FuzzLevels(f *testing.F) {
	for _, text := range []string{"diesel=38,fresh=2/4,grey=60%,cassette=dark", "lpg=lamp", "fresh=1/4/4", "a=1e400,b=-0", "=,=", "fresh=20,fresh=30"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		all, err := gauges(text)
		if err != nil {
			if !strings.Contains(err.Error(), "-levels") {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		parts := 0
		for _, part := range strings.Split(text, ",") {
			if part != "" {
				parts++
			}
		}
		if len(all) != parts {
			t.Fatalf("%q has %d parts and says %v", text, parts, all)
		}
		for tank, s := range all {
			if tank == "" || tank != strings.TrimSpace(tank) {
				t.Fatalf("%q: a tank %q", text, tank)
			}
			r, err := life.Gauge{Kind: s.Kind, Capacity: 80, LampAt: 8}.Read(s.Value)
			if err == nil && !(r.Level >= 0 && r.Level <= 80) {
				t.Fatalf("%q: %s", text, fmt.Sprintf("%+v", r))
			}
		}
	})
}
