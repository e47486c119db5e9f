package bound

import (
	"testing"

	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// TestOneTankHasManyClasses: however many tanks driving restores, tables stay
// as large as with one.
func TestOneTankHasManyClasses(t *testing.T) {
	for name, p := range plantest.BoundProblems(t) {
		p = p.Clone()
		for i := range p.Tanks {
			if tank := &p.Tanks[i]; tank.PerKm == 0 {
				tank.PerKm = -0.05
			}
		}
		m := model.New(p)
		tanks := BindingTanks(m)
		if len(tanks) < 2 {
			t.Fatalf("%s: %d tanks that nights use, want two at least", name, len(tanks))
		}
		var scales Nights
		scales.m, scales.Tanks, scales.counts = m, tanks, 1
		scales.classify(Sharp)
		size := 1
		for _, s := range scales.scales {
			size *= s.n
		}
		if size > Sharp.Row*Sharp.Moving {
			t.Errorf("%s: %d classes of %d tanks, want %d at most", name, size, len(tanks), Sharp.Row*Sharp.Moving)
		}
	}
}
