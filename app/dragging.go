package page

import (
	"maps"
	"math"
	"slices"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/planner/byroad"
)

// tapPx is how far a pointer may move in a tap.
const tapPx = 4

// ahead is what the map shows of a drag before the page knows of it.
type ahead struct {
	points orb.LineString // as they are under the pointer
	legs   Legs           // found on the way
	asking bool
}

// listenDrag lets points be moved, and points be pulled out of the line
// between two. A tap on a point chooses it.
func (v *MapView) listenDrag(ctx app.Context) {
	var held int
	var from browser.MapEvent
	moved := false
	at := func(e browser.MapEvent) orb.Point { return orb.Point{e.Lng, e.Lat} }
	begin := func(e browser.MapEvent) bool {
		if v.Model.Draft == nil || e.Index < 0 || v.dragged {
			return false
		}
		held, from, moved, v.dragged = e.Index, e, false, true
		v.ahead = ahead{points: v.Model.Draft.Points}
		return true
	}
	move := func(e browser.MapEvent) {
		if moved = moved || math.Hypot(e.X-from.X, e.Y-from.Y) > tapPx; moved && held < len(v.ahead.points) {
			v.ahead.points = slices.Clone(v.ahead.points)
			v.ahead.points[held] = at(e)
			v.lookAhead()
		}
	}
	// The click that a tap ends with adds no point.
	end := func(msg Msg) {
		pairs := slices.Collect(maps.Keys(v.ahead.legs))
		legs := make([]byroad.Leg, len(pairs))
		for i, p := range pairs {
			legs[i] = v.ahead.legs[p]
		}
		v.ahead = ahead{}
		ctx.Dispatch(func(app.Context) {
			if len(pairs) > 0 && v.Ways != nil {
				send(ctx, Followed{sizeOf(v.Ways.p.m.Trip.Vehicle), pairs, legs})
			}
			send(ctx, msg)
		})
		ctx.After(50*time.Millisecond, func(app.Context) { v.dragged = false })
	}
	v.live.Drag("draft-points", begin, move, func(e browser.MapEvent) {
		if moved {
			end(DrawnMove{held, at(e)})
		} else {
			end(DrawnChoice{held})
		}
	})
	v.live.Drag("draft-reach", func(e browser.MapEvent) bool {
		if !begin(e) { // a point lies on top
			return false
		}
		held++
		v.ahead.points = slices.Insert(slices.Clone(v.ahead.points), held, at(e))
		return true
	}, move, func(e browser.MapEvent) { end(DrawnInsert{held, at(e)}) })
}

// lookAhead shows the draft as it would be if the point were let go here. One
// question is out at a time; meanwhile the line stays as it was.
func (v *MapView) lookAhead() {
	if v.ahead.asking || v.Model.Draft == nil {
		return
	}
	known := maps.Clone(v.Model.Legs)
	if known == nil {
		known = Legs{}
	}
	maps.Copy(known, v.ahead.legs)
	points := v.ahead.points
	pairs := known.unknown(points)
	if len(pairs) > 0 {
		v.ahead.asking = v.Ways.follow(pairs, func(legs []byroad.Leg) {
			v.ahead.asking = false
			if v.ahead.points == nil || legs == nil {
				return // let go
			}
			v.ahead.legs = Legs(nil).with(pairs, legs)
			v.showAhead(points, known.with(pairs, legs))
			if !same(points, v.ahead.points) {
				v.lookAhead()
			}
		})
	}
	if !v.ahead.asking {
		v.showAhead(points, known)
	}
}

func (v *MapView) showAhead(points orb.LineString, legs Legs) {
	if err := v.live.SetData("draft", draftData(Draft{Points: points}, legs.of(points))); err != nil {
		app.Log(err)
	}
}
