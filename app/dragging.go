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

// ahead is a drag that the page does not know of before its end.
type ahead struct {
	held   int            // the point under the pointer
	points orb.LineString // as they are under the pointer
	before []byroad.Leg   // at the point, before the drag
	legs   Legs           // found on the way
	asking bool
	number int // of drags so far
}

// piece is what the drag changes: the point held and its neighbours.
func (a ahead) piece() orb.LineString {
	return a.points[max(0, a.held-1):min(len(a.points), a.held+2)]
}

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
		v.ahead.before = v.Model.Legs.of(v.ahead.piece())
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
	end := func(msg Msg) {
		pairs := slices.Collect(maps.Keys(v.ahead.legs))
		legs := make([]byroad.Leg, len(pairs))
		for i, p := range pairs {
			legs[i] = v.ahead.legs[p]
		}
		v.ahead = ahead{number: v.ahead.number}
		ctx.Dispatch(func(app.Context) {
			if len(pairs) > 0 && v.Ways != nil {
				send(ctx, Followed{sizeOf(v.Ways.p.m.Trip.Vehicle), pairs, legs})
			}
			send(ctx, msg)
		})
		ctx.After(50*time.Millisecond, func(app.Context) { v.dragged = false })
	}
	v.live.Drag("draft-points", begin, move, func(e browser.MapEvent) {
		if held := v.ahead.held; moved {
			end(DrawnMove{held, at(e)})
		} else {
			end(DrawnChoice{held})
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
	}, move, func(e browser.MapEvent) { end(DrawnInsert{v.ahead.held, at(e)}) })
}

// lookAhead shows the draft as it would be if the point were let go here. One
// question is out at a time; meanwhile the line stays as it was.
func (v *MapView) lookAhead() {
	if v.ahead.asking || v.Model.Draft == nil {
		return
	}
	piece, known := v.ahead.piece(), Legs{}
	for i := 1; i < len(piece); i++ {
		p := pair{piece[i-1], piece[i]}
		for _, legs := range []Legs{v.Model.Legs, v.ahead.legs} {
			if leg, ok := legs[p]; ok {
				known[p] = leg
			}
		}
	}
	pairs, number := known.unknown(piece), v.ahead.number
	if len(pairs) > 0 {
		v.ahead.asking = v.Ways.follow(pairs, func(legs []byroad.Leg) {
			if v.ahead.number != number || v.ahead.points == nil {
				return // let go
			}
			if v.ahead.asking = false; legs == nil {
				return
			}
			v.ahead.legs = Legs(nil).with(pairs, legs)
			v.showAhead(piece, known.with(pairs, legs))
			if now := v.ahead.piece(); !slices.Equal(piece, now) {
				v.lookAhead()
			}
		})
	}
	if !v.ahead.asking {
		v.showAhead(piece, known)
	}
}

func (v *MapView) showAhead(piece orb.LineString, legs Legs) {
	v.sketched = true
	v.live.Sketch(sketch(v.ahead.points[v.ahead.held], v.ahead.before, legs.of(piece), v.live.Projection())...)
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
