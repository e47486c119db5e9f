package solve_test

import (
	"context"
	"flag"
	"math"
	"runtime"
	"testing"
	"time"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/internal/plantest"
	"ullage/planner/solve"
)

var measured = flag.Bool("measure", false, "print what TestMeasure measures (minutes)")

// TestMeasure prints how the solver does on made problems, five of each
// length: time to the first audited plan and to the proof (of each problem the
// least of three, and the median of these), most memory in use and largest gap
// after a second; how that grows with the length; what backup and opening hours
// cost; a replan of the size that a slider asks for. The same command under
// wasm gives the ratio to native.
//
//	go test ./planner/solve -run TestMeasure -v -measure
func TestMeasure(t *testing.T) {
	if !*measured {
		t.Skip("a measurement of minutes: run with -measure")
	}
	for range 10 { // where the page runs, the program gets faster in its first second
		measureMade(t, plantest.Made{LengthKm: 1000})
	}
	lengths := []float64{500, 1000, 2000, 3000, 4000}
	var x, y []float64
	t.Log("km      stops  first ms  proof ms   gap at 1 s   memory MB")
	for _, km := range lengths {
		m := measureMade(t, plantest.Made{LengthKm: km})
		x, y = append(x, math.Log(km)), append(y, math.Log(m.proof))
		t.Logf("%-7.0f %5d %9.1f %9.1f %10.4f %% %9.0f", km, m.stops, m.first, m.proof, 100*m.gap, m.memory)
	}
	t.Logf("growth from 500 to 4,000 km: exponent %.2f; up to 1,000 km %.2f, from 2,000 km %.2f: between them gas begins to run out",
		slope(x, y), slope(x[:2], y[:2]), slope(x[2:], y[2:]))
	y = y[:0]
	for _, km := range lengths {
		y = append(y, math.Log(measureMade(t, plantest.Made{LengthKm: km}, littleGas).proof))
	}
	t.Logf("growth with gas to be bought from the first days on: exponent %.2f (%.1f to %.1f ms)", slope(x, y), math.Exp(y[0]), math.Exp(y[len(y)-1]))
	for _, km := range []float64{500, 1000, 2000} {
		plain := measureMade(t, plantest.Made{LengthKm: km}).proof
		t.Logf("%4.0f km: backup × %.2f, opening hours × %.2f, both × %.2f", km,
			measureMade(t, plantest.Made{LengthKm: km, Backup: true}).proof/plain,
			measureMade(t, plantest.Made{LengthKm: km, Open: true}).proof/plain,
			measureMade(t, plantest.Made{LengthKm: km, Backup: true, Open: true}).proof/plain)
	}
	slider := measureMade(t, plantest.Made{LengthKm: 2900, Nights: 14})
	t.Logf("14 nights, %d candidates: first %.0f ms, proof %.0f ms, gap at 1 s %.4f %%", slider.stops, slider.first, slider.proof, 100*slider.gap)
	shown, done := measureSlider(t)
	t.Logf("a slider step on that trip: a plan after %.0f ms, the answer within 10 s after %.0f ms", shown, done)
}

// measureSlider plans 14 nights, takes 5 km off the day, and plans again with
// the plan in use: median times to the first plan and to the answer, in ms.
func measureSlider(t *testing.T) (shown, done float64) {
	t.Helper()
	var first, last []float64
	for seed := range uint64(5) {
		p := plantest.Made{LengthKm: 2900, Seed: seed, Nights: 14}.Problem()
		plan, err := solve.Solve(within(10*time.Second), p, solve.Options{})
		if err != nil || plan.End == nil {
			t.Fatal(plan.Status, err)
		}
		use := backup.Steady{Within: 0.02}
		for _, v := range plan.Visits {
			use.Stops = append(use.Stops, v.Stop)
		}
		p.Drive.MaxKmPerDay -= 5
		shown, done := math.Inf(1), math.Inf(1)
		for range 3 {
			from, seen := time.Now(), false
			_, err = backup.SolveSteady(within(10*time.Second), p, use, solve.Options{Progress: func(planner.Plan) {
				if !seen {
					shown = min(shown, time.Since(from).Seconds()*1e3)
					seen = true
				}
			}})
			if err != nil {
				t.Fatal(err)
			}
			done = min(done, time.Since(from).Seconds()*1e3)
		}
		first, last = append(first, shown), append(last, done)
	}
	return median(first), median(last)
}

// clocked is a context that ends by the clock, read when it is asked: where
// the page runs, no timer fires while the solver works.
type clocked struct {
	context.Context
	end time.Time
}

func within(d time.Duration) context.Context { return clocked{context.Background(), time.Now().Add(d)} }

func (c clocked) Err() error {
	if time.Now().After(c.end) {
		return context.DeadlineExceeded
	}
	return nil
}

// A measurement holds medians over seeds, of memory and gap the largest.
type measurement struct {
	stops        int
	first, proof float64 // ms
	memory       float64 // MB
	gap          float64 // share of the cost, after one second
}

// littleGas lets gas run out on the second night.
func littleGas(p *planner.Problem) { p.Tanks[2].Start = 12 }

func measureMade(t *testing.T, m plantest.Made, changes ...func(*planner.Problem)) measurement {
	t.Helper()
	var out measurement
	var first, proof []float64
	for seed := range uint64(5) {
		m.Seed = seed
		p := m.Problem()
		for _, change := range changes {
			change(p)
		}
		out.stops = len(p.Stops)
		runtime.GC()
		var plan planner.Plan
		var err error
		shown, done := math.Inf(1), math.Inf(1)
		at1s, best := 0.0, 0.0
		for range 3 {
			at1s, best = 0, 0
			seen := false
			from := time.Now()
			plan, err = solve.Solve(within(20*time.Second), p, solve.Options{Progress: func(plan planner.Plan) {
				if !seen {
					shown = min(shown, time.Since(from).Seconds()*1e3)
					seen = true
				}
				if time.Since(from) < time.Second {
					at1s, best = plan.Bound, plan.Cost
				}
			}})
			done = min(done, time.Since(from).Seconds()*1e3)
			if done > 1000 { // once will do
				break
			}
		}
		if err != nil {
			t.Fatal(err)
		}
		if plan.Status == planner.Infeasible {
			continue
		}
		first, proof = append(first, shown), append(proof, done)
		if plan.Status != planner.Optimal {
			t.Logf("%v: %v, gap %.2f %% after %.0f s", m, plan.Status, 100*(plan.Cost-plan.Bound)/plan.Cost, proof[len(proof)-1]/1e3)
		}
		if best > 0 {
			out.gap = max(out.gap, (best-at1s)/best)
		}
		var mem runtime.MemStats
		runtime.ReadMemStats(&mem)
		out.memory = max(out.memory, float64(mem.HeapSys-mem.HeapReleased)/1e6)
	}
	out.first, out.proof = median(first), median(proof)
	return out
}

// slope is that of the least-squares line.
func slope(x, y []float64) float64 {
	n, sx, sy, sxx, sxy := float64(len(x)), 0.0, 0.0, 0.0, 0.0
	for i := range x {
		sx, sy, sxx, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], sxy+x[i]*y[i]
	}
	return (n*sxy - sx*sy) / (n*sxx - sx*sx)
}
