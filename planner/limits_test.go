package planner_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"ullage/planner"
	"ullage/planner/internal/plantest"
)

// A problem that is too large is refused in one line, before anything is made of it.
func TestTooMany(t *testing.T) {
	for kind, grow := range map[string]func(p *planner.Problem, to int){
		"stops":  func(p *planner.Problem, to int) { p.Stops = slices.Repeat(p.Stops[:1], to) },
		"tanks":  func(p *planner.Problem, to int) { p.Tanks = slices.Repeat(p.Tanks[:1], to) },
		"nights": func(p *planner.Problem, to int) { p.Nights = &planner.Range{Min: to, Max: to} },
	} {
		most := map[string]int{"stops": planner.MostStops, "tanks": planner.MostTanks, "nights": planner.MostNights}[kind]
		for _, more := range []int{0, 1} {
			p := plantest.Tiny(1)
			grow(p, most+more)
			err := p.Validate()
			var many *planner.TooMany
			if told := errors.As(err, &many); told != (more == 1) {
				t.Errorf("%d %s: %v", most+more, kind, err)
			} else if told && (many.Have != most+1 || many.Most != most || !strings.Contains(err.Error(), kind) || strings.Contains(err.Error(), "\n")) {
				t.Errorf("%d %s: %v", most+more, kind, err)
			}
		}
	}
	p := plantest.Made{LengthKm: 300}.Problem()
	i := slices.IndexFunc(p.Stops, func(s planner.Stop) bool { return s.Night != nil })
	if p.Stops[i].Night.Nights = planner.MostNights + 1; p.Validate() == nil {
		t.Error("a stay of too many nights is valid")
	}
}
