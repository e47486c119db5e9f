package answer

import (
	"context"
	"math"
	"testing"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
	"ullage/planner/trip/triptest/built"
)

// What the caution costs is there before anything else that is added to a
// plan; what is said at first is never less than the price that follows.
func TestCareComesFirst(t *testing.T) {
	for _, backup := range []bool{false, true} {
		b, _ := living(t)
		tr := b.Trip
		tr.Backup = backup
		var told []trip.Itinerary
		it, err := Plan(t.Context(), built.Trip(t, tr, b.Places, build.Options{}), Options{Answer: func(it trip.Itinerary) { told = append(told, it) }})
		if err != nil || len(told) < 3 {
			t.Fatalf("%d answers, %v", len(told), err)
		}
		first := told[1] // the plan itself is told[0]
		if first.Care == nil || first.Safety != nil || told[0].Care != nil {
			t.Fatalf("backup %v: first %+v, then care %+v, safety %+v", backup, told[0].Care, first.Care, first.Safety)
		}
		if it.Care == nil || it.Care.AtMost || first.Care.Price < it.Care.Price-1e-6 || first.Care.AtMost != backup {
			t.Errorf("backup %v: said at first %+v, then %+v", backup, first.Care, it.Care)
		}
	}
}

// The planned level is the worse edge of the band, which the likely level lies
// in; half of a trip's use is exact about itself.
func TestBands(t *testing.T) {
	b, it := living(t)
	wide := false
	for _, s := range it.Strips {
		for _, p := range s.Points {
			edge := p.Low
			if s.Kind == planner.Waste {
				edge = p.High
			}
			if math.Abs(edge-p.L) > 1e-6 || p.Low > p.Likely+1e-9 || p.Likely > p.High+1e-9 || p.Low < 0 || p.High > s.Capacity+1e-9 {
				t.Fatalf("%s at km %.1f: %+v", s.Tank, p.Km, p)
			}
			wide = wide || p.High-p.Low > 1
		}
	}
	if !wide {
		t.Error("no band is wide")
	}
	tr := b.Trip
	tr.Confidence = 0.5
	exact := built.Trip(t, tr, b.Places, build.Options{})
	plan, err := Plan(context.Background(), exact, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range plan.Strips {
		for _, p := range s.Points {
			if math.Abs(p.High-p.Low) > 1e-6 {
				t.Fatalf("%s at confidence 0.5: %+v", s.Tank, p)
			}
		}
	}
	if plan.Care != nil {
		t.Errorf("care at confidence 0.5: %+v", plan.Care)
	}
	if it.Care == nil || it.Care.Price < 0 || it.Confidence != 0.9 || it.Care.Says.Kind != careCosts || it.Care.Says.Values["trips"].N != 90 {
		t.Errorf("care %+v", it.Care)
	}
}
