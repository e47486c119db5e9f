package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"strings"
	"time"

	"ullage/data"
	"ullage/data/demo"
	"ullage/data/hours"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// A planInput names the files of a plan; all empty is the demo.
type planInput struct {
	trip, route, places, start string
	via                        string // points of a route to draw
	snap                       bool   // put the line on roads
	notes                      string // a file of notes on places
}

func (in *planInput) flags(set *flag.FlagSet) {
	set.StringVar(&in.trip, "trip", "", "")
	set.StringVar(&in.route, "route", "", "")
	set.StringVar(&in.places, "places", "", "")
	set.StringVar(&in.start, "start", "", "")
	set.StringVar(&in.via, "via", "", "")
	set.BoolVar(&in.snap, "snap", false, "")
	set.StringVar(&in.notes, "notes", "", "")
}

// A tripInput is a trip with its places.
type tripInput struct {
	trip trip.Trip
	from source
}

func (in planInput) read(ctx context.Context) (read tripInput, err error) {
	var notes []fact.Fact
	if read.trip, notes, err = in.readTrip(); err != nil {
		return read, err
	}
	if in.start != "" {
		read.trip.Start = trip.Date(in.start)
	}
	if in.places == "" {
		read.from, err = demoPlaces(ctx)
	} else {
		read.from, err = readPlaces(ctx, strings.Split(in.places, ","))
		read.from.notes = append(notes, read.from.notes...)
	}
	if err != nil || in.notes == "" {
		return read, err
	}
	return read, in.note(&read)
}

// noteLeft: the note of {date} on {name} fits no place of the map data.
const noteLeft fact.Kind = "note.left"

// note lets notes on places win over the map data.
func (in planInput) note(read *tripInput) error {
	f, err := os.Open(in.notes)
	if err != nil {
		return wrong.In(in.notes, err)
	}
	defer f.Close()
	notes, err := data.ReadNotes(in.notes, f)
	if err != nil {
		return err
	}
	var left []trip.Note
	read.from.places, left = trip.Noted(read.from.places, notes, cmp.Or(read.trip.Currency, "EUR"))
	for _, n := range left {
		read.from.notes = append(read.from.notes, fact.Of(noteLeft, fact.V{"date": n.When.Says(), "name": fact.Text(cmp.Or(n.Name, n.ID, fmt.Sprintf("%.5f, %.5f", n.Point[1], n.Point[0])))}))
	}
	return nil
}

// readTrip also returns what the route's file leaves to be said: gaps, pieces.
func (in planInput) readTrip() (t trip.Trip, notes []fact.Fact, err error) {
	if err := in.enough(); err != nil {
		return trip.Trip{}, nil, err
	}
	if t, notes, err = in.begun(); err != nil || in.places == "" {
		return t, notes, err
	}
	if in.route != "" {
		r, err := readRoute(in.route)
		if err != nil {
			return trip.Trip{}, nil, err
		}
		t.Route, notes = r.Line(), append(notes, r.Notes...)
		t.Points, t.Round = nil, nil
		t.UpM, t.DownM = r.Climb()
		if in.trip == "" && r.Name != "" {
			t.Name = r.Name
		}
	}
	return t, notes, nil
}

// enough says what is missing among the files, or too much.
func (in planInput) enough() error {
	switch demo := in.trip == "" && in.route == "" && in.places == ""; {
	case in.via != "" && (in.route != "" || in.snap):
		return errors.New("-via draws a route: leave out -route and -snap")
	case demo:
		return nil
	case in.places == "":
		return errors.New("no places: add -places F, an OSM extract of the region or a GeoJSON of places")
	case in.trip == "" && in.route == "" && in.via == "":
		return errors.New("no route: add -route F (GPX or GeoJSON), -via \"PLACE; PLACE\" or -trip F")
	}
	return nil
}

// begun is the trip of a file, else the demo's, else what is usual.
func (in planInput) begun() (t trip.Trip, notes []fact.Fact, err error) {
	switch {
	case in.trip != "":
		f, err := os.Open(in.trip)
		if err != nil {
			return trip.Trip{}, nil, wrong.In(in.trip, err)
		}
		defer f.Close()
		return tripfile.Read(in.trip, f)
	case in.places == "":
		t = demo.Trip()
	default:
		t = usualTrip()
	}
	if in.via != "" {
		t.Name, t.Keep = in.via, nil
	}
	return t, nil, nil
}

func readRoute(name string) (data.Route, error) {
	f, err := os.Open(name)
	if err != nil {
		return data.Route{}, wrong.In(name, err)
	}
	defer f.Close()
	return data.ReadRoute(name, f)
}

// usualTrip is what is assumed of a route that comes without a trip: two
// people in the first vehicle of the fleet, from tomorrow on, at an easy pace.
func usualTrip() trip.Trip {
	return trip.Trip{
		Format: trip.Format, Name: "Trip", Start: trip.DateOf(time.Now()).Plus(1),
		Vehicle: trip.Fleet()[0],
		Party:   trip.Party{Adults: 2, Showers: "sites", Toilet: "aboard", Cooking: "aboard"},
		// 200–300 km a day are comfortable, 60 km/h mixed: from memory.
		Day:        trip.DayLimits{MaxKm: 300, MaxMin: 480, DepartMin: 540, SpeedKmh: 60},
		Stays:      trip.StayWishes{Campsites: true, Stopovers: true},
		CorridorKm: 5, ValuePerH: 10, Currency: "EUR",
	}
}

func demoPlaces(ctx context.Context) (source, error) {
	x, err := osm.Read(ctx, "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{NoBackdrop: true})
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
