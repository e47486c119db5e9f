package planner

import "testing"

// TestOneTankHasManyClasses: however many tanks driving restores, tables stay
// as large as with one.
func TestOneTankHasManyClasses(t *testing.T) {
	for name, p := range boundProblems(t) {
		p = copyOf(p)
		for i := range p.Tanks {
			if tank := &p.Tanks[i]; tank.PerKm == 0 {
				tank.PerKm = -0.05
			}
		}
		m := newModel(p)
		tanks := m.bindingTanks()
		if len(tanks) < 2 {
			t.Fatalf("%s: %d tanks that nights use, want two at least", name, len(tanks))
		}
		var scales nightsBound
		scales.m, scales.tanks, scales.counts = m, tanks, 1
		scales.classify(sharp)
		size := 1
		for _, s := range scales.scales {
			size *= s.n
		}
		if size > sharp.row*sharp.moving {
			t.Errorf("%s: %d classes of %d tanks, want %d at most", name, size, len(tanks), sharp.row*sharp.moving)
		}
	}
}
