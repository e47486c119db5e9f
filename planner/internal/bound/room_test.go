package bound

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ullage/planner/internal/model"
	"ullage/planner/internal/plantest"
)

// TestNarrow: a table with fewer rows never says more than before, and as much
// where the day reaches all of it.
func TestNarrow(t *testing.T) {
	g := rand.New(rand.NewPCG(1, 3))
	closer := 0
	for range 200 {
		n, size := 2+g.IntN(40), 1+g.IntN(5)
		b := &Nights{size: size, room: new(store[float64]).take}
		wide := &nightTable{cost: make([]float64, n*size)}
		for range n {
			wide.reach, wide.rowAt = append(wide.reach, 100*g.Float64()), append(wide.rowAt, 100*g.Float64())
		}
		slices.Sort(wide.reach)
		for k := range wide.cost {
			wide.cost[k] = math.Round(50 * g.Float64())
		}
		wide.best()
		wide.settle()
		narrow := *wide
		most := 1 + g.IntN(n)
		b.narrow(&narrow, most)
		narrow.settle()
		if len(narrow.reach) > most {
			t.Fatalf("%d rows, want %d", len(narrow.reach), most)
		}
		for range 50 {
			km, at, class := 110*g.Float64(), 150*g.Float64(), g.IntN(size)
			was, is := math.Inf(1), math.Inf(1)
			if r := wide.find(km, at); r >= 0 {
				was = wide.at(class, r)
			}
			if r := narrow.find(km, at); r >= 0 {
				is = narrow.at(class, r)
			}
			if is > was {
				t.Fatalf("%v after %v rows, %v after %v", is, most, was, n)
			}
			if is == was {
				closer++
			}
		}
	}
	if closer < 5000 {
		t.Errorf("only %d of 10,000 costs are as before", closer)
	}
}

// TestFewer: a function of fewer pieces never rises above what it was, nor falls
// below what that falls to.
func TestFewer(t *testing.T) {
	g := rand.New(rand.NewPCG(2, 3))
	for range 200 {
		var f pieces
		x, y := 0.0, 1000.0
		for range 2 + g.IntN(60) {
			slope := -g.Float64()
			f = append(f, piece{x, y, slope})
			d := []float64{1e-9, 1, 5}[g.IntN(3)]
			x, y = x+d, y+slope*d-[]float64{0, 0, 10}[g.IntN(3)]*g.Float64()
		}
		f[len(f)-1].slope = 0
		most := 3 + g.IntN(20)
		less := slices.Clone(f).fewer(most)
		if len(less) > most {
			t.Fatalf("%d pieces, want %d", len(less), most)
		}
		for range 100 {
			at := (x+1)*g.Float64() - 0.5
			if was, is := f.at(at), less.at(at); is > was+1e-9 || is < y-1e-9 || math.IsInf(was, 1) != math.IsInf(is, 1) {
				t.Fatalf("%v at %v, was %v and falls to %v", is, at, was, y)
			}
		}
	}
}

// TestRoom: what bounds keep grows no faster than the stops.
func TestRoom(t *testing.T) {
	never := func() bool { return false }
	for _, x := range []struct {
		plantest.Made
		counted bool
	}{{plantest.Made{LengthKm: 1000}, true}, {plantest.Made{LengthKm: 1000, Battery: true, Dense: 10}, true},
		{plantest.Made{LengthKm: 1000, Nights: 4, Dense: 12}, true}, {plantest.Made{LengthKm: 500, Dense: 100}, false}, {plantest.Made{LengthKm: 4000, Dense: 20}, false}} {
		m := model.New(x.Problem())
		b := New(m, Recipe{Worth: Worths(m), Tanks: BindingTanks(m), Nights: Tally{Counted: x.counted}, Detail: Rough, Stopped: never})
		numbers, parts := 0, 0
		for i, table := range b.Nights.after {
			if i == 0 || table != b.Nights.after[i-1] {
				numbers += len(table.cost)
			}
		}
		for _, tank := range b.Tanks {
			for i, f := range tank.after {
				if i == 0 || len(f) > 0 && &f[0] != &tank.after[i-1][0] {
					parts += len(f)
				}
			}
		}
		n := len(m.Stops)
		if most := max(mostRoom, leastRoom*(n+1)) * 3 / 2; numbers > most {
			t.Errorf("%v: %d numbers in tables of %d stops, want %d at most", x.Made, numbers, n, most)
		}
		if most := max(mostPieces, leastPieces*(n+1)) * len(b.Tanks); parts > most {
			t.Errorf("%v: %d pieces for %d stops, want %d at most", x.Made, parts, n, most)
		}
		t.Logf("%v: %d stops, %d numbers, %d pieces", x.Made, n, numbers, parts)
	}
}

// TestStopped: bounds ask for every table and now and then for every tank whether to
// stop, and there are none if they are told so at any time.
func TestStopped(t *testing.T) {
	m := model.New(plantest.Made{LengthKm: 1000}.Problem())
	asked, end := 0, math.MaxInt
	r := Recipe{Worth: Worths(m), Tanks: BindingTanks(m), Detail: Sketch, Stopped: func() bool { asked++; return asked >= end }}
	b := New(m, r)
	n := len(m.Stops)
	if want := n + len(b.Tanks)*2*((n+pollEvery-1)/pollEvery); asked != want || len(b.Tanks) == 0 {
		t.Errorf("asked %d times for %d stops and %d tanks, want %d", asked, n, len(b.Tanks), want)
	}
	for _, tank := range b.Tanks {
		if asked, end = 0, 4; tank.Extra(m, r.Stopped) != nil || asked != end {
			t.Errorf("asked %d times, told to stop at %d", asked, end)
		}
	}
	for end = 1; end < n; end += 13 {
		if asked = 0; New(m, r) != nil || asked != end {
			t.Fatalf("asked %d times, told to stop at %d", asked, end)
		}
	}
}
