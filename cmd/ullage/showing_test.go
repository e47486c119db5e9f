package main

import (
	"bytes"
	"context"
	"io"
	"slices"
	"strings"
	"testing"

	"ullage/cmd/ullage/progress"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
)

// The plan is printed when it is known, whole and before anything that is asked
// next; each of that is printed once, as it comes.
func TestPlanIsShownInOrder(t *testing.T) {
	p := planRun{in: planInput{trip: "testdata/small-trip.geojson", route: "testdata/small-route.gpx", places: "testdata/small.osm"}, within: patience}
	job, err := p.prepare(t.Context(), progress.To(io.Discard))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	show := &showing{w: &out, line: progress.To(io.Discard), job: job}
	var after []string // what was printed after each answer
	tell := func(it trip.Itinerary) {
		show.answer(it)
		after = append(after, out.String())
		out.Reset()
	}
	it, err := answer.Plan(t.Context(), job.built, answer.Options{Answer: tell})
	if err != nil {
		t.Fatal(err)
	}
	if err := show.end(it); err != nil {
		t.Fatal(err)
	}
	after = append(after, out.String())
	if !strings.HasPrefix(after[0], job.trip.Name) || !strings.Contains(after[0], "Day 2, ") || strings.Contains(after[0], "Other plans") {
		t.Errorf("first came %s", after[0])
	}
	if it.Safety == nil {
		t.Fatal("the price of safety is not known")
	}
	rest := strings.Join(strings.Fields(strings.Join(after[1:], "")), " ")
	safety := show.voice.Fact(it.Safety.Says)
	at := slices.IndexFunc(after, func(s string) bool { return strings.Contains(strings.Join(strings.Fields(s), " "), safety) })
	if strings.Count(rest, "Other plans") != 1 || strings.Count(rest, safety) != 1 || at < 1 || at == len(after)-1 {
		t.Errorf("%q came after answer %d of %d, in %s", safety, at, len(after), rest)
	}
}

// A plan that is broken off by Ctrl-C after it was shown stands.
func TestPlanStandsWhenEnded(t *testing.T) {
	ctx, end := context.WithCancel(t.Context())
	var out, errs bytes.Buffer
	code := run(ctx, small(), streams{writer(func(b []byte) (int, error) { end(); return out.Write(b) }), &errs})
	if code != exitOK || errs.Len() > 0 || !strings.Contains(out.String(), "Day 2, ") {
		t.Errorf("exit %d, %s%s", code, out.String(), errs.String())
	}
}

// A writer is a function that takes what is written.
type writer func([]byte) (int, error)

func (w writer) Write(b []byte) (int, error) { return w(b) }
