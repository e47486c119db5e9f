package job

import (
	"bytes"
	"context"
	"fmt"
	"slices"
	"sort"
	"strings"
	"time"

	"ullage/data"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
)

// Patience is how long a plan may take before the best one so far is the
// answer.
const Patience = 60 * time.Second

// pause is the least time between two better plans shown: each costs the page
// a drawing.
const pause = 250 * time.Millisecond

// A Handler does what requests ask. It holds the places of the files that
// were opened, each place once. It is for one goroutine at a time.
type Handler struct {
	places []trip.Place
	files  []Open // map data among them
	roads  roads
	hours  build.Hours
	now    func() time.Time
	wanted func() bool // something else waits to be done
	first  func() bool // something that roads wait for is being done
}

// NewHandler returns a handler that holds no places.
func NewHandler() *Handler {
	never := func() bool { return false }
	return &Handler{hours: openHours(), now: time.Now, wanted: never, first: never}
}

// handleRoads is the part of Handle that reads roads of files.
func (h *Handler) handleRoads(ctx context.Context, id int, files []Open, emit func(Response)) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	work := paced(ctx, stop)
	work.busy = h.first
	read, err := h.readRoads(work, files, func(done, total int64) {
		emit(Response{ID: id, Progress: &Progress{done, total}})
	})
	if err != nil {
		emit(Response{ID: id, Error: err.Error()})
		return
	}
	emit(Response{ID: id, Roads: &read})
}

// Handle does one request; emit gets its responses. If ctx ends while a plan
// is made, the best one so far is the answer.
func (h *Handler) Handle(ctx context.Context, r Request, emit func(Response)) {
	switch {
	case r.Open != nil:
		o, err := h.open(ctx, *r.Open, func(done, total int64) {
			emit(Response{ID: r.ID, Progress: &Progress{done, total}})
		})
		if err != nil {
			emit(Response{ID: r.ID, Error: err.Error()})
			return
		}
		emit(Response{ID: r.ID, Opened: &o})
	case r.Plan != nil:
		if err := h.plan(ctx, *r.Plan, func(a Answer) { emit(Response{ID: r.ID, Answer: &a}) }); err != nil {
			emit(Response{ID: r.ID, Error: err.Error()})
		}
	case r.Roads:
		h.handleRoads(ctx, r.ID, h.files, emit)
	case r.Follow != nil:
		f, err := h.roads.follow(ctx, *r.Follow)
		if err != nil {
			emit(Response{ID: r.ID, Error: err.Error()})
			return
		}
		emit(Response{ID: r.ID, Followed: &f})
	case !r.Cancel:
		emit(Response{ID: r.ID, Error: "a request that asks for nothing"})
	}
}

func (h *Handler) plan(ctx context.Context, p Plan, show func(Answer)) error {
	t := p.Trip
	t.Route = p.Route
	began := h.now()
	took := func() int { return int(h.now().Sub(began).Milliseconds()) }
	var shown time.Time
	ctx, stop := context.WithTimeout(ctx, Patience)
	defer stop()
	work := paced(ctx, stop)
	it, err := answer.Trip(work, t, h.places, answer.Options{
		Build: build.Options{Hours: h.hours, Roads: h.roads.trip(work)},
		Progress: func(it trip.Itinerary) {
			if n := h.now(); n.Sub(shown) >= pause {
				shown = n
				show(Answer{Itinerary: it, TookMS: took()})
			}
		},
		Answer: func(it trip.Itinerary) {
			work.leave = h.wanted // what else there is to say waits for nobody
			show(Answer{Itinerary: it, Done: true, TookMS: took()})
			h.rest()
		},
	})
	if err != nil {
		return err
	}
	show(Answer{Itinerary: it, Done: true, Last: true, TookMS: took()})
	return nil
}

// rest lets the page draw an answer before it has to share the processor with
// what else there is to say; not while something waits.
func (h *Handler) rest() {
	for range 25 {
		if h.wanted() {
			return
		}
		time.Sleep(pause / 25)
	}
}

func (h *Handler) open(ctx context.Context, o Open, progress func(done, total int64)) (Opened, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	kind, err := kindOf(o.Name, o.Data)
	if err != nil {
		return Opened{}, err
	}
	in := bytes.NewReader(o.Data)
	out := Opened{Name: o.Name, Kind: kind}
	switch kind {
	case "osm":
		x, err := osm.Read(paced(ctx, stop), o.Name, in, osm.Options{Progress: every(1<<20, progress)})
		if err != nil {
			return Opened{}, err
		}
		if len(x.Places) == 0 {
			return Opened{}, fmt.Errorf("open %s: no place in it serves a tank or takes motorhomes for the night", o.Name)
		}
		out.Kind, out.OSM, out.Date, out.Notes = "places", true, x.Date, x.Notes
		out.Backdrop = backdropGeoJSON(x.Backdrop)
		h.take(&out, x.Places, o.Add)
		h.keep(o)
	case "places":
		places, err := data.ReadPlaces(o.Name, in)
		if err != nil {
			return Opened{}, err
		}
		out.OSM = slices.ContainsFunc(places, func(p trip.Place) bool { return strings.HasPrefix(p.ID, "n") || strings.HasPrefix(p.ID, "w") })
		if !o.Add {
			h.files = nil
			h.roads.set(nil)
		}
		h.take(&out, places, o.Add)
	case "route":
		r, err := data.ReadRoute(o.Name, in)
		if err != nil {
			return Opened{}, err
		}
		out.Route, out.Parts, out.Notes = r.Line(), len(r.Parts), r.Notes
		if r.Name != "" {
			out.Name = r.Name
		}
		out.Bounds = bounds(out.Route)
		out.Climb[0], out.Climb[1] = r.Climb()
	case "trip":
		t, err := tripfile.Read(o.Name, in)
		if err != nil {
			return Opened{}, err
		}
		out.Trip, out.Route, out.Bounds = &t, t.Route, bounds(t.Route)
	case "fleet":
		if out.Fleet, err = tripfile.ReadFleet(o.Name, in); err != nil {
			return Opened{}, err
		}
	}
	return out, nil
}

// take holds the places of a file and counts them. A place that was there
// under the same id is replaced.
func (h *Handler) take(out *Opened, places []trip.Place, add bool) {
	out.Places, out.Counts = len(places), map[string]int{}
	points := make([]point, len(places))
	for i, p := range places {
		out.Counts[p.Kind]++
		points[i] = p.Point
	}
	out.Bounds = bounds(points)
	held := slices.Clone(places)
	if add {
		is := make(map[string]bool, len(places))
		for _, p := range places {
			is[p.ID] = true
		}
		for _, p := range h.places {
			if !is[p.ID] {
				held = append(held, p)
			}
		}
	}
	sort.Slice(held, func(i, j int) bool { return held[i].ID < held[j].ID }) // as a function of no type: 10 kB less of program
	h.places = held
}

// every passes progress on in steps of n bytes, and the end.
func every(n int64, f func(done, total int64)) func(done, total int64) {
	var last int64
	return func(done, total int64) {
		if done-last >= n || done == total && done > last {
			last = done
			f(done, total)
		}
	}
}
