package planner_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	. "ullage/planner"
)

// publishedCases are problems solved elsewhere: testdata/cases/SOURCES.md
// names the sources. An amount is the published policy, by stop.
var publishedCases = []struct {
	name    string
	optimum float64
	amounts map[string]float64
}{
	{"lin", 75.80, map[string]float64{"s01": 12, "s02": 2, "s03": 4, "s04": 4}},
	{"biola1", 28, map[string]float64{"s01": 1, "s02": 15, "s04": 5}},
	{"biola2", 162, map[string]float64{"s01": 12, "s03": 15, "s04": 7, "s05": 12, "s06": 3}},
	{"kalvelagen", 218.977558, map[string]float64{"s01": 10.811, "s07": 50, "s12": 25.566, "s20": 9.735}},
	{"t1", 282.3296, map[string]float64{"P3": 72.24, "P8": 65.48}},
	{"t1_75_40", 322.3842, map[string]float64{"P1": 10.48, "P3": 67, "P6": 13.82, "P8": 66.78}},
	{"t1_75_60", 285.4234, map[string]float64{"P3": 57.24, "P6": 13.82, "P8": 66.78}},
}

func readCase(t testing.TB, name string) *Problem {
	t.Helper()
	file := filepath.Join("testdata", "cases", name+".json")
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p, err := Decode(file, b)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPublishedCases(t *testing.T) {
	for _, tc := range publishedCases {
		t.Run(tc.name, func(t *testing.T) {
			p := readCase(t, tc.name)
			plan := solve(t, p)
			// The published optima have four decimals, or six.
			if plan.Status != Optimal || plan.Cost-tc.optimum > 5e-5 || tc.optimum-plan.Cost > 5e-5 {
				t.Errorf("%s, cost %v, published optimum %v", plan.Status, plan.Cost, tc.optimum)
			}
			got := map[string]float64{}
			for _, v := range plan.Visits {
				for _, y := range v.Serve {
					if y.Tank == "diesel" {
						got[v.Stop] = y.Amount
					}
				}
			}
			for stop, amount := range got {
				want, ok := tc.amounts[stop]
				if !ok || amount-want > 6e-4 || want-amount > 6e-4 {
					t.Errorf("diesel at %s: %v, published %v", stop, amount, want)
				}
			}
			if len(got) != len(tc.amounts) {
				t.Errorf("diesel at %d stops %v, published %d", len(got), got, len(tc.amounts))
			}
		})
	}
}

// TestKalvelagenFewestStops: with a dear visit the same data ask for the
// fewest stops, then the cheapest. 3 and 239.1635: GLPK (SOURCES.md).
func TestKalvelagenFewestStops(t *testing.T) {
	p := readCase(t, "kalvelagen")
	for i := range p.Stops {
		p.Stops[i].Fee = 1000
	}
	plan := solve(t, p)
	if plan.Status != Optimal || len(plan.Visits) != 3 || plan.Cost-3239.1635 > 5e-5 || 3239.1635-plan.Cost > 5e-5 {
		t.Errorf("%s with %d stops, cost %v; want 3 stops, 3239.1635", plan.Status, len(plan.Visits), plan.Cost)
	}
}

// withSpare sets backup, and the spare of every service of a place to what
// is used up to the next other place (the way out, the way in there) that offers it, the nights on the way
// (at km 300, 600 and 900, before the service there) included. Without a next place
// the service is out of the question.
func withSpare(p *Problem) {
	p.Backup = true
	perNight := map[string]float64{"fresh": 45, "grey": 40, "cassette": 12}
	for i, s := range p.Stops {
		for j, x := range s.Serves {
			next := slices.IndexFunc(p.Stops[i+1:], func(t Stop) bool {
				return strings.TrimRight(t.ID, "bs") != strings.TrimRight(s.ID, "bs") &&
					slices.ContainsFunc(t.Serves, func(y Service) bool { return y.Tank == x.Tank })
			})
			if next < 0 {
				s.Serves[j].Spare = 2 * p.Tanks[bruteTank(p, x.Tank)].Capacity
				continue
			}
			other := p.Stops[i+1+next]
			to := other.Km
			spare := p.Tanks[bruteTank(p, x.Tank)].PerKm * (to - s.Km + s.DetourKm/2 + other.DetourKm/2)
			for _, night := range []float64{300, 600, 900} {
				if s.Km <= night && (night < to || night == to && other.Night != nil) {
					spare += perNight[x.Tank]
				}
			}
			s.Serves[j].Spare = spare
		}
	}
}

// TestBackupOfT1: 340.6810 by GLPK and CBC, infeasible with 75 L.
func TestBackupOfT1(t *testing.T) {
	p := readCase(t, "t1")
	withSpare(p)
	if plan := solve(t, p); plan.Status != Optimal || plan.Cost-340.681 > 5e-5 || 340.681-plan.Cost > 5e-5 {
		t.Errorf("%s, cost %v, want 340.6810", plan.Status, plan.Cost)
	}
	// With 1.44 L more to hand back, the way to and from a fallback 12 km off, every closure is survived: 343.1146.
	p.Tanks[0].End.AtLeast = number(51.44)
	if plan := solve(t, p); plan.Status != Optimal || plan.Cost-343.1146 > 5e-5 || 343.1146-plan.Cost > 5e-5 {
		t.Errorf("%s, cost %v, want 343.1146", plan.Status, plan.Cost)
	}
	for _, name := range []string{"t1_75_40", "t1_75_60"} {
		p := readCase(t, name)
		withSpare(p)
		if plan := solve(t, p); plan.Status != Infeasible {
			t.Errorf("%s with backup: %s, want infeasible", name, plan.Status)
		}
	}
}
