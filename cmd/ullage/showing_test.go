package main

import (
	"bytes"
	"context"
	"io"
	"os"
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

// A proven refusal is printed at once, then its reasons, then what would help; nothing twice.
func TestRefusalIsShownAsItComes(t *testing.T) {
	text, err := os.ReadFile("testdata/small-trip.geojson")
	if err != nil {
		t.Fatal(err)
	}
	short := write(t, "short.geojson", strings.Replace(string(text), `"max_km": 150`, `"max_km": 60`, 1))
	var came []string
	var errs bytes.Buffer
	out := writer(func(b []byte) (int, error) { came = append(came, string(b)); return len(b), nil })
	code := run(t.Context(), []string{"plan", "-within", patience.String(), "-trip", short, "-route", "testdata/small-route.gpx", "-places", "testdata/small.osm"}, streams{out, &errs})
	all := strings.Join(came, "")
	first := came[0]
	why, _, _ := strings.Cut(all, "NOT A VALID PLAN") // what comes nearest breaks the same
	if code != exitInfeasible || !strings.Contains(first, "There is no plan for this trip") || strings.Contains(first, "No place for the night") {
		t.Errorf("exit %d, first came %s", code, first)
	}
	if at := strings.Index(all, "No place for the night"); at < 0 || strings.Count(all, "There is no plan for this trip") != 1 || strings.Count(why, "No place for the night is near enough") != 1 || strings.Index(all, "What would help") < at {
		t.Errorf("in all %s", all)
	}
}

// Time that ran out is said, and is no refusal: at home, on the road, for a problem.
func TestTimeRanOut(t *testing.T) {
	for _, args := range [][]string{
		without(), without("-at", "150", "-now", "2026-06-13T10:15"),
		{"solve", "-within", "0s", write(t, "p.json", lin)},
	} {
		code, out, errs := ullage(args...)
		said := strings.ToLower(strings.Join(strings.Fields(out+errs), " "))
		if code != exitInfeasible || !strings.Contains(said, "-within 5m") || strings.Contains(said, "there is no plan for") || strings.Contains(said, "plan it first") {
			t.Errorf("ullage %q: exit %d, %s%s", args, code, out, errs)
		}
	}
}

// without is the small trip without a moment to plan it.
func without(args ...string) []string {
	all := small(args...)
	all[slices.Index(all, "-within")+1] = "0s"
	return all
}

// A writer is a function that takes what is written.
type writer func([]byte) (int, error)

func (w writer) Write(b []byte) (int, error) { return w(b) }
