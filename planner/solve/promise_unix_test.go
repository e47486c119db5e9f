//go:build unix

package solve_test

import (
	"context"
	"math/rand/v2"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"

	"ullage/planner"
	"ullage/planner/internal/plantest"
	"ullage/planner/solve"
)

// worked is a context that ends when the processor has worked for so long.
type worked struct {
	context.Context
	end   time.Duration
	ended bool
}

func (c *worked) Err() error {
	if c.ended = c.ended || cpu() > c.end; c.ended {
		return context.DeadlineExceeded
	}
	return nil
}

// cpu is how long the processor has worked for this program.
func cpu() time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		panic(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// TestPromises prints how well time and memory are kept: by how much the end of
// the context is passed, over 200 problems of all sizes, and the most memory in
// use by stops. Time is that of the processor, so that others at work on the machine
// do not count; GOMAXPROCS=1 keeps the gathering of garbage out of it.
//
//	go test ./planner/solve -run TestPromises -v -measure -timeout 60m
func TestPromises(t *testing.T) {
	if !*measured {
		t.Skip("a measurement of minutes: run with -measure")
	}
	var late []float64
	for n := range 200 {
		g := rand.New(rand.NewPCG(uint64(n), 31))
		m := plantest.Made{LengthKm: []float64{300, 1000, 4000}[n%3], Seed: uint64(n), Battery: g.IntN(3) == 0, Open: g.IntN(3) == 0, Backup: g.IntN(3) == 0}
		if g.IntN(2) == 0 {
			m.Nights = 1 + int(m.LengthKm/200) + g.IntN(9)
		}
		m.Dense = 1 + int(float64([]int{50, 500, 5000, 50_000}[n/3%4])/m.LengthKm*5*g.Float64())
		p := m.Problem()
		runtime.GC()
		end := time.Duration(100+g.IntN(1500)) * time.Millisecond
		ctx := &worked{context.Background(), cpu() + end, false}
		plan, err := solve.Solve(ctx, p, solve.Options{})
		over := cpu() - ctx.end
		if err != nil {
			t.Fatal(m, err)
		}
		if ctx.ended {
			late = append(late, over.Seconds()*1e3)
		}
		if over > 100*time.Millisecond {
			t.Logf("%v: %d stops, %v after %v, %s", m, len(p.Stops), over, end, plan.Status)
		}
	}
	slices.Sort(late)
	t.Logf("%d of 200 ended by the clock: late by %.1f ms in the median, 95 of 100 within %.1f, worst %.1f ms", len(late), median(late), late[len(late)*95/100], late[len(late)-1])
	t.Log("stops   MB in use   seconds  status")
	for _, m := range []plantest.Made{{LengthKm: 1000}, {LengthKm: 1000, Battery: true}, {LengthKm: 1000, Nights: 6, Open: true, Backup: true}, {LengthKm: 4000, Nights: 30}, {LengthKm: 4000, Nights: 30, Battery: true}} {
		for _, stops := range []int{100, 300, 1000, 3000, 10_000, 30_000, 50_000} {
			if m.Dense = stops * 5 / int(m.LengthKm); m.Dense == 0 {
				continue
			}
			p := m.Problem()
			var plan planner.Plan
			from := cpu()
			mb := peak(func() {
				plan, _ = solve.Solve(&worked{context.Background(), from + 8*time.Second, false}, p, solve.Options{})
			})
			t.Logf("%5d  %6.0f  %6.2f  %s (%v)", len(p.Stops), mb, (cpu() - from).Seconds(), plan.Status, m)
		}
	}
}

// peak is the most memory in use while f runs beyond what was before, in MB.
func peak(f func()) float64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	before, high := m.HeapInuse, m.HeapInuse
	stop, done := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(done)
		var m runtime.MemStats
		for {
			select {
			case <-stop:
				return
			case <-time.After(20 * time.Millisecond):
			}
			runtime.ReadMemStats(&m)
			high = max(high, m.HeapInuse)
		}
	}()
	f()
	close(stop)
	<-done
	return float64(high-before) / 1e6
}
