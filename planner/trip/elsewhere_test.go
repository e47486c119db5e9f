package trip

import (
	"context"
	"slices"
	"strings"
	"testing"

	"ullage/planner"
)

// Map data of somewhere else are the reason for a refusal, and not the tanks;
// a trip that needs nothing of them is told so.
func TestMapDataOfSomewhereElse(t *testing.T) {
	places := []Place{at("far", "fuel", 4000, 0, yes("diesel")), at("farther", "fuel", 5000, 0, yes("diesel"))}
	far, err := Plan(context.Background(), eastwards(1500), places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if far.Status != planner.Infeasible || len(far.Why) != 1 || far.Why[0].Limit != "map" {
		t.Fatalf("status %v, why %+v, want one reason, the map", far.Status, far.Why)
	}
	text := far.Why[0].Text
	if !strings.Contains(text, "FAR, ") || !strings.Contains(text, "2500 km away") {
		t.Errorf("reason %q, want FAR at 2500 km", text)
	}
	if slices.Contains(far.Cautions, text) {
		t.Error("the reason is among the cautions as well")
	}

	short, err := Plan(context.Background(), eastwards(40), places, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(short.Days) == 0 || !strings.HasPrefix(short.Cautions[0], "The map data are of somewhere else: FAR") {
		t.Errorf("a short trip: %d days, cautions %q", len(short.Days), short.Cautions[0])
	}
}

// Nothing is said where a wider corridor would find a place, nor where no map
// data are open at all.
func TestMapDataWithinTheWidestCorridor(t *testing.T) {
	for _, places := range [][]Place{nil, {at("beside", "fuel", 50, 49, yes("diesel"))}} {
		if b := mustBuild(t, eastwards(100), places, Options{}); b.apart != "" {
			t.Errorf("%d places: %q", len(places), b.apart)
		}
	}
}
