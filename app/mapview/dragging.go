package mapview

import (
	"maps"
	"math"
	"slices"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/model"
	"ullage/app/show"
	"ullage/planner/byroad"
)

// tapPx is how far a pointer may move in a tap.
const tapPx = 4

// listenDrag lets points be moved, and points be pulled out of the line
// between two. A tap on a point chooses it.
func (v *MapView) listenDrag(ctx app.Context) {
	var from browser.MapEvent
	moved := false
	at := func(e browser.MapEvent) orb.Point { return orb.Point{e.Lng, e.Lat} }
	begin := func(e browser.MapEvent) bool {
		if v.Model.Draft == nil || e.Index < 0 || v.dragged {
			return false
		}
		from, moved, v.dragged = e, false, true
		v.ahead = ahead{held: e.Index, points: slices.Clone(v.Model.Draft.Points), number: v.ahead.number + 1}
		v.ahead.before = v.Model.Legs.Of(v.ahead.piece())
		return true
	}
	move := func(e browser.MapEvent) {
		if v.ahead.points == nil || v.ahead.held >= len(v.ahead.points) {
			return
		}
		if moved = moved || math.Hypot(e.X-from.X, e.Y-from.Y) > tapPx; !moved {
			return
		}
		v.ahead.points = slices.Clone(v.ahead.points)
		v.ahead.points[v.ahead.held] = at(e)
		v.lookAhead()
	}
	// The click that a tap ends with adds no point.
	end := func(msg model.Msg) {
		pairs := slices.Collect(maps.Keys(v.ahead.legs))
		legs := make([]byroad.Leg, len(pairs))
		for i, p := range pairs {
			legs[i] = v.ahead.legs[p]
		}
		v.ahead = ahead{number: v.ahead.number}
		ctx.Dispatch(func(app.Context) {
			if len(pairs) > 0 && v.Ways != nil {
				show.Send(ctx, model.Followed{Vehicle: v.Model.Vehicle, Pairs: pairs, Legs: legs})
			}
			show.Send(ctx, msg)
		})
		ctx.After(50*time.Millisecond, func(app.Context) { v.dragged = false })
	}
	v.live.Drag("draft-points", begin, move, func(e browser.MapEvent) {
		if held := v.ahead.held; moved {
			end(model.DrawnMove{Index: held, Point: at(e)})
		} else {
			end(model.DrawnChoice{Index: held})
		}
	})
	v.live.Drag("draft-reach", func(e browser.MapEvent) bool {
		if !begin(e) { // a point lies on top
			return false
		}
		v.ahead.before = v.ahead.before[max(0, len(v.ahead.before)-1):]
		v.ahead.held++
		v.ahead.points = slices.Insert(v.ahead.points, v.ahead.held, at(e))
		return true
	}, move, func(e browser.MapEvent) { end(model.DrawnInsert{Index: v.ahead.held, Point: at(e)}) })
}

// lookAhead shows the draft as it would be if the point were let go here. One
// question is out at a time; meanwhile the line stays as it was.
func (v *MapView) lookAhead() {
	if v.ahead.asking || v.Model.Draft == nil {
		return
	}
	piece, known := v.ahead.piece(), model.Legs{}
	for i := 1; i < len(piece); i++ {
		p := model.Pair{piece[i-1], piece[i]}
		for _, legs := range []model.Legs{v.Model.Legs, v.ahead.legs} {
			if leg, ok := legs[p]; ok {
				known[p] = leg
			}
		}
	}
	pairs, number := known.Unknown(piece), v.ahead.number
	if len(pairs) > 0 {
		v.ahead.asking = v.Ways != nil && v.Ways.Follow(pairs, func(legs []byroad.Leg) {
			if v.ahead.number != number || v.ahead.points == nil {
				return // let go
			}
			if v.ahead.asking = false; legs == nil {
				return
			}
			v.ahead.legs = model.Legs(nil).With(pairs, legs)
			v.showAhead(piece, known.With(pairs, legs))
			if now := v.ahead.piece(); !slices.Equal(piece, now) {
				v.lookAhead()
			}
		})
	}
	if !v.ahead.asking {
		v.showAhead(piece, known)
	}
}

func (v *MapView) showAhead(piece orb.LineString, legs model.Legs) {
	v.sketched = true
	v.live.Sketch(sketch(v.ahead.points[v.ahead.held], v.ahead.before, legs.Of(piece), v.live.Projection())...)
}

// land takes the sketch away once the map shows the same.
func (v *MapView) land() {
	if number := v.ahead.number; v.sketched && v.ahead.points == nil {
		v.live.Settled(func() {
			if v.ahead.number == number {
				v.sketched = false
				v.live.Sketch()
			}
		})
	}
}
