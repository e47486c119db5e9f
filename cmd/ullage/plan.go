package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"ullage/app/say"
	"ullage/cmd/ullage/sheet"
	"ullage/data"
	"ullage/data/demo"
	"ullage/data/hours"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/planner"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
	"ullage/planner/trip/onward"
)

const planUsage = "ullage plan [-trip F] [-route F] [-places F,…] [-start DATE] [-within TIME] [-units U] [-roads=false] [-at KM|LAT,LON -now TIME [-levels L] [-closed ID,…] [-passed ID,…] [-save F]] [-json|-problem]"

// plan plans a trip and prints it.
func plan(args []string, stdout, stderr io.Writer) int {
	var in planInput
	flags := flag.NewFlagSet("plan", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&in.trip, "trip", "", "trip file")
	flags.StringVar(&in.route, "route", "", "route: GPX or GeoJSON")
	flags.StringVar(&in.places, "places", "", "OSM extracts or GeoJSON, separated by commas")
	flags.StringVar(&in.start, "start", "", "first day: 2026-06-12")
	within := flags.Duration("within", 30*time.Second, "time to look for a better plan")
	byRoad := flags.Bool("roads", true, "follow the roads of the map data; false: estimate ways to places from straight distance")
	var road roadInput
	flags.StringVar(&road.at, "at", "", "on the road: where you are, as km along the route or latitude,longitude")
	flags.StringVar(&road.now, "now", "", "on the road: local time, 2026-06-13T14:20")
	flags.StringVar(&road.gauges, "levels", "", "on the road: what the gauges show: "+gaugeUsage)
	flags.StringVar(&road.closed, "closed", "", "on the road: ids of places that are closed, separated by commas")
	flags.StringVar(&road.passed, "passed", "", "on the road: ids of stops of the plan that were passed without a call, separated by commas")
	flags.StringVar(&road.save, "save", "", "on the road: write the rest of the trip, with what was learnt, to a trip file")
	asProblem := flags.Bool("problem", false, "print the problem as JSON, for ullage solve, instead of planning")
	shown := flags.String("units", "metric", "units that are printed: metric, british, american")
	asJSON := flags.Bool("json", false, "print the itinerary as JSON")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprintln(stdout, "usage:", planUsage)
		return exitOK
	case err != nil:
		return wrong(stderr, "plan: %v; usage: %s", err, planUsage)
	case flags.NArg() > 0:
		return wrong(stderr, "plan: %q is too much; usage: %s", flags.Arg(0), planUsage)
	}
	voice := say.Voice{Units: *shown}
	if !slices.Contains(say.Systems(), *shown) {
		return wrong(stderr, "plan: -units %q: write one of %s", *shown, strings.Join(say.Systems(), ", "))
	}
	t, from, err := in.read()
	if err != nil {
		return wrong(stderr, "plan: %v", err)
	}
	var roads trip.Roads
	if *byRoad {
		if roads, err = in.roads(context.Background()); err != nil {
			return wrong(stderr, "plan: %v", err)
		}
	}
	ctx, cancel := context.WithTimeout(context.Background(), *within)
	defer cancel()
	opt := build.Options{Hours: openingHours(), Roads: roads}
	var rest onward.Rest
	if road.given() {
		if rest, err = road.goOn(ctx, t, from, opt); err != nil {
			return wrong(stderr, "plan: %v", err)
		}
		t = rest.Trip
	}
	built, err := build.Trip(t, from.places, opt)
	if err != nil {
		return wrong(stderr, "plan: %v", err)
	}
	if *asProblem {
		return printed(stderr, printJSON(stdout, built.Problem))
	}
	printedIt := false // the plan is printed as soon as it is there
	show := func(it trip.Itinerary) {
		if !printedIt && !*asJSON {
			printedIt, err = true, sheet.Print(stdout, sheet.Input{Trip: t, Itinerary: it, Onward: rest, Sources: from.lines(voice)}, voice)
		}
	}
	it, planErr := answer.Plan(ctx, built, answer.Options{Answer: show})
	if planErr != nil {
		return wrong(stderr, "plan: %v", planErr)
	}
	show(it)
	if err == nil && *asJSON {
		err = printSaid(stdout, planned{it, rest.Lessons, rest.Notes}, voice)
	} else if err == nil {
		err = sheet.PrintMore(stdout, it, voice)
	}
	if err != nil {
		return printed(stderr, err)
	}
	if it.Status == planner.Infeasible || it.Status == planner.Unknown {
		return exitInfeasible
	}
	return exitOK
}

// Planned is an itinerary with what a trip on the road taught.
type planned struct {
	trip.Itinerary
	Lessons []onward.Lesson `json:"lessons,omitempty"`
	Notes   []string        `json:"notes,omitempty"`
}

// printSaid prints JSON in which facts have their sentences.
func printSaid(w io.Writer, v any, voice say.Voice) error {
	said, err := voice.JSON(v)
	if err != nil {
		return err
	}
	return printJSON(w, json.RawMessage(said))
}

// printed returns the exit code of a command whose last step was to print.
func printed(stderr io.Writer, err error) int {
	if err != nil {
		return wrong(stderr, "print: %v", err)
	}
	return exitOK
}

// A planInput names the files of a plan; all empty is the demo.
type planInput struct{ trip, route, places, start string }

func (in planInput) read() (trip.Trip, source, error) {
	t, notes, err := in.readTrip()
	if err != nil {
		return trip.Trip{}, source{}, err
	}
	if in.start != "" {
		t.Start = in.start
	}
	if in.places == "" {
		from, err := demoPlaces()
		return t, from, err
	}
	from, err := readPlaces(strings.Split(in.places, ","))
	from.notes = append(notes, from.notes...)
	return t, from, err
}

// readTrip also returns what the route's file leaves to be said: gaps, pieces.
func (in planInput) readTrip() (t trip.Trip, notes []string, err error) {
	switch {
	case in.trip == "" && in.route == "" && in.places == "":
		return demo.Trip(), nil, nil
	case in.places == "":
		return trip.Trip{}, nil, errors.New("no places: add -places F, an OSM extract of the region or a GeoJSON of places")
	case in.trip == "" && in.route == "":
		return trip.Trip{}, nil, errors.New("no route: add -route F (GPX or GeoJSON) or -trip F")
	}
	t = usualTrip()
	if in.trip != "" {
		f, err := os.Open(in.trip)
		if err != nil {
			return trip.Trip{}, nil, err
		}
		defer f.Close()
		if t, err = tripfile.Read(in.trip, f); err != nil {
			return trip.Trip{}, nil, err
		}
	}
	if in.route != "" {
		r, err := readRoute(in.route)
		if err != nil {
			return trip.Trip{}, nil, err
		}
		t.Route, notes = r.Line(), r.Notes
		t.Points, t.Round = nil, nil
		t.UpM, t.DownM = r.Climb()
		if in.trip == "" && r.Name != "" {
			t.Name = r.Name
		}
	}
	return t, notes, nil
}

func readRoute(name string) (data.Route, error) {
	f, err := os.Open(name)
	if err != nil {
		return data.Route{}, err
	}
	defer f.Close()
	return data.ReadRoute(name, f)
}

// usualTrip is what is assumed of a route that comes without a trip: two
// people in the first vehicle of the fleet, from tomorrow on, at an easy pace.
func usualTrip() trip.Trip {
	return trip.Trip{
		Format: trip.Format, Name: "Trip", Start: time.Now().AddDate(0, 0, 1).Format(trip.DateLayout),
		Vehicle: trip.Fleet()[0],
		Party:   trip.Party{Adults: 2, Showers: "sites", Toilet: "aboard", Cooking: "aboard"},
		// 200–300 km a day are comfortable, 60 km/h mixed: from memory.
		Day:        trip.DayLimits{MaxKm: 300, MaxMin: 480, DepartMin: 540, SpeedKmh: 60},
		Stays:      trip.StayWishes{Campsites: true, Stopovers: true},
		CorridorKm: 5, ValuePerH: 10, Currency: "EUR",
	}
}

func demoPlaces() (source, error) {
	x, err := osm.Read(context.Background(), "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{NoBackdrop: true})
	return source{places: x.Places}, err
}

// openingHours reads each opening_hours text once.
func openingHours() build.Hours {
	parsed := map[string]*hours.Schedule{}
	return func(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
		s, done := parsed[p.Hours]
		if !done {
			s, _ = hours.Parse(p.Hours) // nil where it cannot be read: unknown
			parsed[p.Hours] = s
		}
		if s == nil {
			return nil, false
		}
		return s.Windows(from, days, hours.Where{Lat: p.Point.Lat(), Lon: p.Point.Lon()})
	}
}
