package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/job"
	"ullage/app/model"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// This file asks the worker about roads: for ways between points of a drawing, and
// for the roads that a line follows.

// Ways find legs. It is how the map asks while a point is dragged: past the
// page, whose drawing would cost each step some frames.
type Ways struct {
	*core
	following bool // legs are asked for
}

// Follow asks for the legs of pairs; done gets them, or nil, on the page's
// thread. It returns false if there are no roads to ask.
func (w *Ways) Follow(pairs []model.Pair, done func([]byroad.Leg)) bool {
	return w.ask(job.Follow{Points: ends(pairs)}, func(legs []byroad.Leg, ok bool) {
		if !ok || len(legs) != len(pairs) {
			legs = nil
		}
		done(legs)
	})
}

// ask asks about points of a drawing, on the roads within reach of them.
func (w *Ways) ask(f job.Follow, done func(legs []byroad.Leg, ok bool)) bool {
	if w.m.Roads.State != model.RoadsReady {
		return false
	}
	f.Vehicle, f.WithinM = bare(w.m.Trip.Vehicle), max(leastReachM, reachPx*w.m.Scale)
	w.client.Follow(f, func(f job.Followed, err error) { done(f.Legs, err == nil) })
	return true
}

func ends(pairs []model.Pair) orb.LineString {
	var points orb.LineString
	for _, q := range pairs {
		points = append(points, q[0], q[1])
	}
	return points
}

// A click means the nearest road within so many pixels, which on the map of a
// country are kilometres, and within so many metres in a village.
const (
	reachPx     = 25
	leastReachM = 250
)

// bare is a vehicle without its tanks: roads do not ask for them.
func bare(v trip.Vehicle) trip.Vehicle {
	return trip.Vehicle{HeightM: v.HeightM, WidthM: v.WidthM, LengthM: v.LengthM, MassKg: v.MassKg}
}

// followDraft asks for the legs of the draft that are not known. One question
// is out at a time: what is asked next is what is wanted by then.
func (w *Ways) followDraft(ctx app.Context) {
	if w.m.Draft == nil || w.following {
		return
	}
	pairs := w.m.Legs.Unknown(w.m.Draft.Points)
	if len(pairs) == 0 {
		return
	}
	of := model.SizeOf(w.m.Trip.Vehicle)
	w.following = w.Follow(pairs, func(legs []byroad.Leg) {
		ctx.Dispatch(func(ctx app.Context) {
			w.following = false
			if legs != nil {
				w.tell(ctx, model.Followed{Vehicle: of, Pairs: pairs, Legs: legs})
			}
		})
	})
}

// findOthers asks for the other ways between two points.
func (w *Ways) findOthers(ctx app.Context, of model.Pair) {
	vehicle := model.SizeOf(w.m.Trip.Vehicle)
	asked := w.ask(job.Follow{Others: true, Points: ends([]model.Pair{of})}, func(legs []byroad.Leg, ok bool) {
		ctx.Dispatch(func(ctx app.Context) {
			w.following = false
			w.tell(ctx, model.WaysFound{Vehicle: vehicle, Pair: of, Legs: legs, OK: ok})
		})
	})
	if w.following = asked; !asked { // the roads are being read anew
		w.tell(ctx, model.WaysFound{Vehicle: vehicle, Pair: of})
	}
}

// match puts a line on roads.
func (w *Ways) match(ctx app.Context, line orb.LineString) {
	w.client.Follow(job.Follow{Vehicle: bare(w.m.Trip.Vehicle), Track: true, Points: line}, func(f job.Followed, err error) {
		if err != nil {
			w.later(ctx, model.NotMatched{Why: err.Error()})
			return
		}
		w.later(ctx, model.TrackMatched{Track: line, Legs: f.Legs})
	})
}

// read reads the roads of the places that are open.
func (w *Ways) read(ctx app.Context) {
	w.tell(ctx, model.RoadsReading{})
	w.client.Roads(
		func(done, total int64) {
			w.tell(ctx, model.RoadsReading{Share: float64(done) / float64(max(total, 1))})
		},
		func(r job.RoadsRead, err error) {
			if err != nil {
				w.tell(ctx, model.RoadsFailed{Why: err.Error()})
				return
			}
			w.tell(ctx, model.RoadsRead{Roads: r.Roads, Notes: r.Notes})
		})
}
