package plantest

import (
	"cmp"
	"embed"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"ullage/planner"
)

//go:embed testdata
var kept embed.FS

// ReadCase reads a problem solved elsewhere: testdata/cases/SOURCES.md names the sources.
func ReadCase(t testing.TB, name string) *planner.Problem {
	t.Helper()
	return read(t, "testdata/cases/"+name+".json")
}

// BoundProblems are problems kept to test bounds, by file.
func BoundProblems(t testing.TB) map[string]*planner.Problem {
	t.Helper()
	files, err := kept.ReadDir("testdata/bounds")
	if err != nil || len(files) < 3 {
		t.Fatalf("%d problems, %v; want 3 at least", len(files), err)
	}
	out := make(map[string]*planner.Problem)
	for _, file := range files {
		out[file.Name()] = read(t, "testdata/bounds/"+file.Name())
	}
	return out
}

func read(t testing.TB, file string) *planner.Problem {
	t.Helper()
	b, err := kept.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p := new(planner.Problem)
	if err := json.Unmarshal(b, p); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	p.Upgrade()
	if err := p.Validate(); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	return p
}

// WithSpare sets backup, and the spare of every service of a place to what
// is used up to the next other place (the way out, the way in there) that offers it, the nights on the way
// (at km 300, 600 and 900, before the service there) included. Without a next place
// the service is out of the question.
func WithSpare(p *planner.Problem) {
	p.Backup = true
	perNight := map[string]float64{"fresh": 45, "grey": 40, "cassette": 12}
	for i, s := range p.Stops {
		for j, x := range s.Serves {
			next := slices.IndexFunc(p.Stops[i+1:], func(t planner.Stop) bool {
				return strings.TrimRight(t.ID, "bs") != strings.TrimRight(s.ID, "bs") &&
					slices.ContainsFunc(t.Serves, func(y planner.Service) bool { return y.Tank == x.Tank })
			})
			if next < 0 {
				s.Serves[j].Spare = 2 * p.Tanks[BruteTank(p, x.Tank)].Capacity
				continue
			}
			other := p.Stops[i+1+next]
			to := other.Km
			spare := p.Tanks[BruteTank(p, x.Tank)].PerKm * (to - s.Km + s.DetourKm/2 + other.DetourKm/2)
			for _, night := range []float64{300, 600, 900} {
				if s.Km <= night && (night < to || night == to && other.Night != nil) {
					spare += perNight[x.Tank]
				}
			}
			s.Serves[j].Spare = spare
		}
	}
}

// Near compares costs with the relative tolerance of the model.
func Near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-6*max(1, math.Abs(a), math.Abs(b))
}

func Number(x float64) *float64 { return &x }

// Round keeps decimals, so that problems read well and survive a file.
func Round(x float64, decimals int) float64 {
	f := math.Pow10(decimals)
	return math.Round(x*f) / f
}

func SortByKm(stops []planner.Stop) {
	slices.SortStableFunc(stops, func(a, b planner.Stop) int { return cmp.Compare(a.Km, b.Km) })
}

// Ruled is a problem with a plan that keeps every rule, some of them barely:
// two days of 100 km, a night at km 100 where water is filled and the cassette
// emptied, fuel before and after it.
func Ruled() (*planner.Problem, []planner.Visit) {
	p := &planner.Problem{
		Format: planner.ProblemFormat, LengthKm: 200, TimeCostPerH: 60, Backup: true, Nights: &planner.Range{Min: 1, Max: 1},
		Drive: planner.Drive{MaxKmPerDay: 110, MaxMinPerDay: 200, DepartMin: 540, Pace: []planner.Pace{{ToKm: 50, MinPerKm: 1}, {ToKm: 200, MinPerKm: 1.2}}},
		Tanks: []planner.Tank{
			{ID: "fuel", Kind: planner.Supply, Capacity: 30, Reserve: 3, Start: 12, PerKm: 0.1, End: &planner.End{AtLeast: Number(20), RefillPrice: Number(3)}},
			{ID: "water", Kind: planner.Supply, Capacity: 100, Reserve: 10, Start: 60, End: &planner.End{AtLeast: Number(50)}},
			{ID: "cassette", Kind: planner.Waste, Capacity: 20, Reserve: 2, Start: 10, PerKm: 0.01, End: &planner.End{AtMost: Number(5)}},
			{ID: "battery", Kind: planner.Supply, Capacity: 90, Reserve: 30, Start: 80, PerKm: -0.2},
		},
		Stops: []planner.Stop{
			{ID: "a", Km: 50, DetourKm: 4, DetourMin: 6, StopMin: 3, Fee: 1, Open: [][2]float64{{0, 500}, {600, 660}},
				Serves: []planner.Service{{Tank: "fuel", Price: 2, Min: 5, Spare: 6}, {Tank: "water", Min: 9}}},
			{ID: "b", Km: 100, DetourKm: 2, DetourMin: 4, StopMin: 2, Required: true,
				Serves: []planner.Service{{Tank: "water", Price: 0.1, Min: 10}, {Tank: "cassette", Min: 8, Fee: 2, GuestsOnly: true}},
				Night:  &planner.Night{Fee: 20, Nights: 1, Use: map[string]float64{"water": 45, "cassette": 8, "battery": 50}}},
			{ID: "c", Km: 150, Serves: []planner.Service{{Tank: "fuel", Price: 1.5, Min: 5}}},
			{ID: "d", Km: 150, Night: &planner.Night{Nights: 1}},
		},
	}
	visits := []planner.Visit{
		{Stop: "a", Serve: []planner.Serve{{Tank: "fuel", Amount: 10}}},
		{Stop: "b", Night: true, Serve: []planner.Serve{{Tank: "water", Amount: 85}, {Tank: "cassette", Amount: 19.05}}},
		{Stop: "c", Serve: []planner.Serve{{Tank: "fuel", Amount: 15}}},
	}
	return p, visits
}

// Scarcer takes something away, another thing for each seed.
func Scarcer(p *planner.Problem, seed uint64) {
	switch i := int(seed / 6 % uint64(len(p.Tanks))); seed % 6 {
	case 0: // no place serves one of the tanks
		for j, s := range p.Stops {
			p.Stops[j].Serves = nil
			for _, x := range s.Serves {
				if x.Tank != p.Tanks[i].ID {
					p.Stops[j].Serves = append(p.Stops[j].Serves, x)
				}
			}
		}
	case 1: // half the tank
		t := &p.Tanks[i]
		t.Capacity /= 2
		t.Start, t.Reserve = min(t.Start, t.Capacity), min(t.Reserve, t.Capacity)
		t.End = nil
	case 2:
		p.Drive.MaxKmPerDay *= 0.6
	case 3:
		p.Drive.MaxMinPerDay *= 0.6
	case 4:
		p.Nights = &planner.Range{Min: 3, Max: 3}
	case 5:
		p.Nights = &planner.Range{Max: 1}
		p.Drive.MaxKmPerDay *= 0.7
	}
}

func BruteTank(p *planner.Problem, id string) int {
	for i, t := range p.Tanks {
		if t.ID == id {
			return i
		}
	}
	return -1
}
