package planner_test

import (
	"encoding/json"
	"reflect"
	"testing"

	"ullage/data/problemfile"
	"ullage/planner/audit"
	"ullage/planner/internal/plantest"
	"ullage/planner/replay"
)

func TestDecodeKeepsEverything(t *testing.T) {
	for seed := range uint64(50) {
		want := plantest.Tiny(seed)
		b, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		got, err := problemfile.Decode("made", b)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("seed %d: decoded\n%+v, want\n%+v", seed, got, want)
		}
	}
}

func TestDecodePlan(t *testing.T) {
	p, visits := plantest.Ruled()
	want, err := replay.Plan(p, visits)
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.MarshalIndent(want, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	got, err := problemfile.DecodePlan("plan", b)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("decoded\n%+v, want\n%+v", got, want)
	}
	if _, err := problemfile.DecodePlan("plan", []byte(`{"format":"ullage-problem-1"}`)); err == nil {
		t.Error("a problem passed for a plan")
	}
}

// FuzzDecodePlan: any plan that can be read can be audited without a panic.
func FuzzDecodePlan(f *testing.F) {
	p, visits := plantest.Ruled()
	plan, err := replay.Plan(p, visits)
	if err != nil {
		f.Fatal(err)
	}
	b, err := json.Marshal(plan)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(b)
	f.Fuzz(func(t *testing.T, b []byte) {
		plan, err := problemfile.DecodePlan("f", b)
		if err != nil {
			return
		}
		audited := audit.Check(p, plan)
		if _, err := replay.Plan(p, plan.Visits); err != nil && audited == nil && len(plan.Visits) > 0 {
			t.Errorf("audit passes what replay refuses: %v", err)
		}
	})
}
