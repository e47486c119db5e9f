package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"ullage/app/say"
	"ullage/cmd/ullage/progress"
	"ullage/cmd/ullage/sheet"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/onward"
)

// A planRun plans a trip and prints it.
type planRun struct {
	in              planInput
	road            roadInput
	within          time.Duration
	byRoad          bool
	units           string
	asProblem, json bool
}

func setUpPlan(set *flag.FlagSet) action {
	p := &planRun{}
	p.in.flags(set)
	p.road.flags(set)
	set.DurationVar(&p.within, "within", 30*time.Second, "")
	set.BoolVar(&p.byRoad, "roads", true, "")
	set.StringVar(&p.units, "units", "metric", "")
	set.BoolVar(&p.asProblem, "problem", false, "")
	set.BoolVar(&p.json, "json", false, "")
	return p.run
}

func (p *planRun) run(ctx context.Context, args []string, to streams) int {
	if len(args) > 0 {
		return to.wrong("plan: %q is too much: files are named by flags, see: ullage help plan", args[0])
	}
	if !slices.Contains(say.Systems(), p.units) {
		return to.wrong("plan: -units %q: write one of %s", p.units, strings.Join(say.Systems(), ", "))
	}
	line := progress.To(to.err)
	defer line.Clear()
	job, err := p.prepare(ctx, line)
	if err != nil {
		line.Clear()
		code := to.failed("plan", err)
		if errors.Is(err, errNoTime) {
			return exitInfeasible
		}
		return code
	}
	if p.asProblem {
		line.Clear()
		return to.printed(printJSON(to.out, job.built.Problem))
	}
	ctx, cancel := context.WithTimeout(ctx, p.within)
	defer cancel()
	line.Show(voice.Text("plan.planning"))
	show := &showing{w: to.out, line: line, json: p.json, job: job, voice: say.Voice{Units: p.units}}
	it, err := answer.Plan(ctx, job.built, answer.Options{Answer: show.answer, Progress: show.progress})
	line.Clear()
	if err != nil {
		return to.failed("plan", err)
	}
	show.cut = errors.Is(ctx.Err(), context.DeadlineExceeded)
	if err := show.end(it); err != nil {
		return to.printed(err)
	}
	if it.Status == planner.Infeasible || it.Status == planner.Unknown {
		return exitInfeasible
	}
	if err := p.road.saved(job.trip); err != nil {
		return to.wrong("plan: -save: %v", err)
	}
	return exitOK
}

// A planJob is a trip that is ready to be planned.
type planJob struct {
	tripInput
	rest  onward.Rest // on the road
	built *build.Built
}

// prepare reads all files and builds the problem.
func (p *planRun) prepare(ctx context.Context, line *progress.Line) (job planJob, err error) {
	line.Show(voice.Text("plan.reading"))
	if job.tripInput, err = p.in.read(ctx); err != nil {
		return job, err
	}
	opt := build.Options{Hours: openingHours()}
	if p.byRoad || p.in.onRoads() {
		line.Show(voice.Text("plan.roads"))
		if opt.Roads, err = p.roads(ctx, &job.tripInput); err != nil {
			return job, err
		}
	}
	if p.road.given() {
		line.Show(voice.Text("plan.before"))
		ctx, cancel := context.WithTimeout(ctx, p.within)
		defer cancel()
		if job.rest, err = p.road.goOn(ctx, job.tripInput, opt); err != nil {
			return job, err
		}
		job.trip = job.rest.Trip
	}
	line.Show(voice.Text("plan.building"))
	if job.built, err = build.Trip(job.trip, job.from.places, opt); err != nil && p.in.trip != "" {
		err = &tripFault{p.in.trip, err}
	}
	return job, err
}

// roads reads the roads, and draws the route on them if that is asked for.
func (p *planRun) roads(ctx context.Context, read *tripInput) (trip.Roads, error) {
	g, omitted, err := p.in.guide(ctx)
	if err != nil {
		return nil, err
	}
	read.from.notes = append(read.from.notes, omitted...)
	if p.in.onRoads() {
		if err := p.in.draw(ctx, g, read); err != nil {
			return nil, err
		}
	}
	if g == nil || !p.byRoad {
		return nil, nil
	}
	return g.Trip(ctx), nil
}

// A tripFault is what is wrong with the trip of a file.
type tripFault struct {
	file string
	err  error
}

const inFile fact.Kind = "plan.in_file"

func (f *tripFault) Error() string { return f.file + ": " + f.err.Error() }
func (f *tripFault) Unwrap() error { return f.err }
func (f *tripFault) Fact() fact.Fact {
	return fact.Of(inFile, fact.V{"file": fact.Text(f.file), "why": fact.Why(f.err)})
}

// A showing prints a plan as soon as it is proven, and what is asked next as it
// comes; as JSON all at once at the end.
type showing struct {
	w     io.Writer
	line  *progress.Line
	json  bool
	job   planJob
	voice say.Voice
	more  *sheet.More    // nil: the plan was not printed yet
	none  *sheet.Refusal // nil: no refusal was printed yet
	cut   bool           // time ran out before all was known
	err   error
}

func (s *showing) input(it trip.Itinerary) sheet.Input {
	return sheet.Input{Trip: s.job.trip, Itinerary: it, Onward: s.job.rest, Sources: s.job.from.lines(s.voice)}
}

// progress hears of plans on the way, which are not shown, and of a refusal with its reasons as they come.
func (s *showing) progress(it trip.Itinerary) {
	if it.Status == planner.Infeasible && !s.json && s.err == nil {
		s.refusal(it)
		s.line.Show(voice.Text("plan.reasons"))
	}
}

func (s *showing) refusal(it trip.Itinerary) {
	s.line.Clear()
	if s.none == nil {
		s.none, s.err = sheet.NewRefusal(s.w, s.input(it), s.voice)
	} else {
		s.err = s.none.Tell(it)
	}
}

// answer hears of the plan, and again of each thing that comes after it.
func (s *showing) answer(it trip.Itinerary) {
	if s.json || s.err != nil {
		return
	}
	s.line.Clear()
	if s.more == nil {
		s.more = sheet.NewMore(s.w, s.voice)
		s.err = sheet.Print(s.w, s.input(it), s.voice)
	} else {
		s.err = s.more.Tell(it)
	}
	s.line.Show(voice.Text("plan.others"))
}

// end prints what has not been printed yet.
func (s *showing) end(it trip.Itinerary) error {
	if s.json {
		said, err := s.voice.JSON(planned{it, s.job.rest.Lessons, s.job.rest.Notes, s.cut})
		if err != nil {
			return err
		}
		return printJSON(s.w, json.RawMessage(said))
	}
	if s.none == nil && s.more == nil { // no time for a plan, nor for a proof that there is none
		s.refusal(it)
	}
	s.line.Clear()
	switch {
	case s.err != nil:
		return s.err
	case s.none != nil:
		s.err = s.none.End(it)
	default:
		s.err = s.more.End(it)
	}
	if s.err == nil && s.cut && it.Status != planner.Unknown { // that says it already
		_, s.err = fmt.Fprintln(s.w, "\n"+s.voice.Text("plan.cut"))
	}
	return s.err
}

// planned is an itinerary with what a trip on the road taught, as JSON. Each fact in
// it has its kind and values, for programs: names and units of the values stay, in
// km, L and °C. Beside them stands its text, for people, which follows -units and
// changes when a sentence is worded better:
//
//	{"kind": "howto.battery.caution.lithium_cold",
//	 "values": {"freezing": {"is": "quantity", "unit": "°C"}},
//	 "text": "Never charge a lithium battery below 0 °C."}
type planned struct {
	trip.Itinerary
	Lessons []onward.Lesson `json:"lessons,omitempty"`
	Notes   []fact.Fact     `json:"notes,omitempty"`
	Cut     bool            `json:"cut,omitempty"` // time ran out before all was known
}
