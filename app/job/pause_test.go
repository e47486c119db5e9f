package job

import (
	"context"
	"testing"
	"time"

	"ullage/data/demo"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
)

// A watched context keeps the longest time between two questions to it.
type watched struct {
	context.Context
	last    time.Time
	longest time.Duration
	asked   int
}

func (w *watched) Err() error {
	now := time.Now()
	w.longest = max(w.longest, now.Sub(w.last))
	w.last = now
	w.asked++
	return w.Context.Err()
}

// BenchmarkAsked reports how long the planner works on the demo trip without
// asking its context: a newer request waits that long, in the browser's worker
// about 2.5 times as long.
func BenchmarkAsked(b *testing.B) {
	h := NewHandler()
	collect(h, Request{Open: &Open{Name: "demo", Data: demo.Extract()}})
	d := demo.Trip()
	var longest time.Duration
	asked := 0
	for b.Loop() {
		w := &watched{Context: context.Background(), last: time.Now()}
		if _, err := answer.Trip(w, d, h.places, answer.Options{Build: build.Options{Hours: h.hours}}); err != nil {
			b.Fatal(err)
		}
		longest, asked = max(longest, w.longest), w.asked
	}
	b.ReportMetric(longest.Seconds()*1000, "ms-longest")
	b.ReportMetric(float64(asked), "asked/op")
}
