package page

import (
	"encoding/json"
	"errors"
	"time"

	"ullage/app/browser"
	"ullage/app/keep"
	"ullage/app/model"
	"ullage/data/tripfile"
	"ullage/planner/fact"
)

// This file is about files to open, and what of the last visit they are.

const (
	storeName  = "ullage"
	deskKey    = "desk"          // of this tab, which holds its name while it is open
	lastTrip   = "the last trip" // its file, in what is said of it
	demoPlaces = "/web/demo.osm.pbf"
	demoTrip   = "/web/demo.trip.geojson"
)

// A source is a file to open: its bytes, and what they are to the desk.
type source struct {
	name  string
	bytes func() ([]byte, error) // waits
	hash  string                 // of the bytes, once they are read
	kept  string                 // the part of the last visit that it is; "": it is another
	own   bool                   // the person's: it is to be kept
	add   bool                   // to the places that are there; else they take their place
}

// allUnread is the ID of all that is kept.
const allUnread = "all"

// sourcesOf lists what the desk of a tab holds, or the example in place of what it
// does not.
func sourcesOf(tab *keep.Tab) []source {
	_, desk := tab.Desk()
	var out []source
	if len(desk.Of(keep.Map)) == 0 {
		out = append(out, ofSite(demoPlaces))
	}
	for _, part := range []string{keep.Map, keep.Fleet} {
		for i, e := range desk.Of(part) {
			s := source{name: e.Name, kept: part, add: part == keep.Map && i > 0,
				bytes: func() ([]byte, error) { return tab.Data(e, bites()) }}
			if e.Hash == "" && !e.Lost {
				s.bytes = func() ([]byte, error) { return browser.Fetch(e.Name) }
			}
			out = append(out, s)
		}
	}
	if len(desk.Of(keep.Trip)) == 0 {
		return append(out, ofSite(demoTrip))
	}
	return append(out, source{name: lastTrip, kept: keep.Trip, bytes: func() ([]byte, error) {
		file, err := part(tab, desk, keep.Trip)
		if err != nil {
			return nil, err
		}
		route, err := part(tab, desk, keep.Route)
		if errors.Is(err, keep.ErrMissing) && len(desk.Of(keep.Route)) == 0 {
			return file, nil
		}
		return tripfile.WithRoute(file, route), err
	}})
}

func ofSite(path string) source {
	return source{name: path, bytes: func() ([]byte, error) { return browser.Fetch(path) }}
}

// part are the bytes of a part that a desk has once.
func part(tab *keep.Tab, desk keep.Desk, name string) ([]byte, error) {
	for _, e := range desk.Of(name) {
		return tab.Data(e, bites())
	}
	return nil, keep.ErrMissing
}

// bites is called in the middle of long work, and lets the page breathe.
func bites() (rest func()) {
	began := time.Now()
	return func() {
		if time.Since(began) > 8*time.Millisecond {
			time.Sleep(time.Millisecond)
			began = time.Now()
		}
	}
}

// resumed is what belongs to the trip of the last visit. It waits.
func resumed(tab *keep.Tab) *model.Resumed {
	_, desk := tab.Desk()
	r := &model.Resumed{}
	read := func(name string, into any) bool {
		b, err := part(tab, desk, name)
		return err == nil && json.Unmarshal(b, into) == nil
	}
	if !read(keep.Origin, &r.Origin) {
		r.Origin = model.KeptOrigin{}
	}
	if !read(keep.Work, &r.Work) || r.Work.Format != model.WorkFormat {
		r.Work = model.Work{}
	}
	if b := new(model.KeptBefore); read(keep.Before, b) {
		r.Before = b
	}
	return r
}

// unreadable says why a part of what is kept cannot be read here.
func unreadable(part string, err error) fact.Fact {
	var newer *tripfile.NewerError
	if errors.Is(err, keep.ErrNewer) || errors.As(err, &newer) {
		return fact.Of(fact.Kind("kept.newer."+part), nil)
	}
	return fact.Of(fact.Kind("kept.broken."+part), fact.V{"why": fact.Why(err)})
}
