package trip

import (
	"testing"
)

// What the caution costs is there before anything else that is added to a
// plan; what is said at first is never less than the price that follows.
func TestCareComesFirst(t *testing.T) {
	for _, backup := range []bool{false, true} {
		b, _ := living(t)
		tr := b.Trip
		tr.Backup = backup
		var told []Itinerary
		it, err := mustBuild(t, tr, b.places, Options{}).Plan(t.Context(), Options{Answer: func(it Itinerary) { told = append(told, it) }})
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
