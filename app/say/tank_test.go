package say

import (
	"testing"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// TestTanksSaid: every tank has its word in every language, and so has what is done to it.
func TestTanksSaid(t *testing.T) {
	for code, l := range languages {
		for _, id := range trip.TankIDs() {
			does := trip.KindOfTank(id).Verb.Does(fact.Tank(id, ""), fact.Value{})
			for _, key := range []string{"tank." + id, string(does.Fact.Kind)} {
				if _, ok := l.catalog()[key]; !ok {
					t.Errorf("%s.txt has no line %q", code, key+" = …")
				}
			}
		}
	}
}
