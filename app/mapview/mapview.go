package mapview

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/show"
	"ullage/planner/byroad"
)

// A Follower finds the legs of pairs of points, past the page, whose drawing would
// cost each step of a drag some frames. done gets them, or nil, on the page's thread.
// It is false if there are no roads to ask.
type Follower interface {
	Follow(pairs []model.Pair, done func([]byroad.Leg)) bool
}

// ahead is a drag that the page does not know of before its end.
type ahead struct {
	held   int            // the point under the pointer
	points orb.LineString // as they are under the pointer
	before []byroad.Leg   // at the point, before the drag
	legs   model.Legs     // found on the way
	asking bool
	number int // of drags so far
}

// piece is what the drag changes: the point held and its neighbours.
func (a ahead) piece() orb.LineString {
	return a.points[max(0, a.held-1):min(len(a.points), a.held+2)]
}

// A MapView shows the map, or the drawn overview where no map can be. The
// overview is always there: it is what prints.
type MapView struct {
	app.Compo
	Model MapModel
	Ways  Follower // nil: nobody to ask

	live      *browser.Map
	shown     MapModel // what the map has been given
	failed    bool
	picked    string // words about the place pointed at
	dragged   bool   // a point of the draft is held, or was until a moment ago
	ahead     ahead
	sketched  bool // there is something of a drag above the map
	tellScale func()
	stops     []func()
}

const mapCanvas = "map-canvas"

func (v *MapView) Render() app.UI {
	class := "map"
	if v.live != nil {
		class += " live"
	}
	if len(v.Model.Backdrop.Land) > 0 {
		class += " sea"
	}
	return app.Section().ID("map").Class(class).TabIndex(-1).Aria("label", v.Model.Say.Text("map.title")).Body(
		app.Div().ID(mapCanvas).Class("canvas"),
		app.Div().Class("drawn").Role("img").Aria("label", v.Model.Say.Text("map.alt")).Body(
			&GroundView{Route: v.Model.Route, Backdrop: v.Model.Backdrop},
			&StopsView{Route: v.Model.Route, Plan: v.Model.Plan, Backdrop: v.Model.Backdrop},
			v.here(),
		),
		app.If(v.live != nil, v.zoom),
		app.If(v.Model.Draft != nil, func() app.UI {
			return &DraftBar{Say: v.Model.Say, Draft: *v.Model.Draft, Legs: v.Model.Legs.Of(v.Model.Draft.Points)}
		}),
		app.If(v.Model.OSM, func() app.UI { return show.Attribution(v.Model.Say) }),
		app.P().Class("picked").Aria("live", "polite").Text(v.words()),
	)
}

func (v *MapView) words() string {
	if v.failed {
		return v.Model.Say.Text("map.drawn")
	}
	return v.picked
}

func (v *MapView) here() app.UI {
	return app.If(v.Model.HasPoint, func() app.UI {
		x, y := draw.Project(v.Model.Route, overviewW, overviewH, v.Model.Cursor)
		return show.SVG(draw.Here(x, y, overviewW, overviewH))
	})
}

func (v *MapView) zoom() app.UI {
	return app.Div().Class("zoom").Body(
		app.Button().Type("button").Aria("label", v.Model.Say.Text("map.closer")).Text("+").OnClick(v.onZoomIn),
		app.Button().Type("button").Aria("label", v.Model.Say.Text("map.farther")).Text("−").OnClick(v.onZoomOut),
		app.Button().Type("button").Text(v.whole()).OnClick(v.onWhole),
		app.If(v.Model.Draft != nil, func() app.UI {
			return app.Button().Type("button").Class("middle").Text(v.Model.Say.Text("draw.middle")).OnClick(v.onMiddle)
		}),
	)
}

// whole names what the button shows.
func (v *MapView) whole() string {
	if v.Model.Far {
		return v.Model.Say.Text("map.whole_map")
	}
	return v.Model.Say.Text("map.whole")
}

func (v *MapView) onZoomIn(ctx app.Context, e app.Event)  { v.live.Zoom(1) }
func (v *MapView) onZoomOut(ctx app.Context, e app.Event) { v.live.Zoom(-1) }
func (v *MapView) onWhole(ctx app.Context, e app.Event)   { v.fit() }

// onMiddle is drawing without a pointer: arrow keys move the map.
func (v *MapView) onMiddle(ctx app.Context, e app.Event) {
	show.Send(ctx, model.DrawnPoint{Point: v.live.Middle()})
}

// barHeight is what the controls of a drawing cover of the map, in pixels, on a wide page.
const barHeight = 190

func (v *MapView) fit() {
	box, below := v.Model.Overall, 0
	if v.Model.Draft != nil && browser.Matches("(min-width: 64rem)") {
		below = barHeight
	}
	if d := v.Model.Draft; d != nil && len(d.Points) > 1 {
		box, _ = model.Bounds(model.Joined(v.Model.Legs.Of(d.Points)))
	}
	if box != [4]float64{} && v.live != nil {
		v.live.Fit(box, 40, below)
	}
}
