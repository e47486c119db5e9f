package page

import (
	"fmt"
	"math"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/trip"
)

// A MapModel is what the map shows.
type MapModel struct {
	Route    orb.LineString
	Plan     trip.Itinerary
	Ground   string // backdrop as GeoJSON
	Backdrop draw.Backdrop
	Cursor   orb.Point // where the vehicle is at the moment shown
	HasPoint bool
	Draft    *Draft
	Legs     Legs
	OSM      bool // the attribution is due
	Say      say.Voice
	Road     bool       // a click says where somebody is
	Overall  [4]float64 // west, south, east, north of the whole; zeros: nothing is known
	Answered bool       // there is a plan, or a refusal
	Far      bool       // the route is not where the map data are
}

func mapModel(m Model) MapModel {
	out := MapModel{Route: m.Trip.Route, Plan: m.Plan, Ground: m.Ground, Backdrop: m.Backdrop, Draft: m.Draft, Legs: m.Legs, OSM: attributed(m.Files), Say: m.Say, Road: m.Report != nil, Far: elsewhere(m), Answered: m.Shown > 0}
	out.Overall, _ = overall(m)
	if m.HasPlan() {
		out.Cursor, out.HasPoint = along(m.Trip.Route, m.Axis.AtMin(m.Cursor).Km/math.Max(m.Plan.LengthKm, 1e-9))
	}
	return out
}

// A MapView shows the map, or the drawn overview where no map can be. The
// overview is always there: it is what prints.
type MapView struct {
	app.Compo
	Model MapModel
	Ways  *Ways

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

const (
	mapCanvas            = "map-canvas"
	overviewW, overviewH = 900, 560
)

func (v *MapView) Render() app.UI {
	class := "map"
	if v.live != nil {
		class += " live"
	}
	if len(v.Model.Backdrop.Land) > 0 {
		class += " sea"
	}
	return app.Section().ID("map").Class(class).TabIndex(-1).Aria("label", word.mapTitle).Body(
		app.Div().ID(mapCanvas).Class("canvas"),
		app.Div().Class("drawn").Role("img").Aria("label", word.mapAlt).Body(
			&GroundView{Route: v.Model.Route, Backdrop: v.Model.Backdrop},
			&StopsView{Route: v.Model.Route, Plan: v.Model.Plan, Backdrop: v.Model.Backdrop},
			v.here(),
		),
		app.If(v.live != nil, v.zoom),
		app.If(v.Model.Draft != nil, func() app.UI {
			return &DraftBar{Draft: *v.Model.Draft, Legs: v.Model.Legs.of(v.Model.Draft.Points), Say: v.Model.Say}
		}),
		app.If(v.Model.OSM, attribution),
		app.P().Class("picked").Aria("live", "polite").Text(v.words()),
	)
}

func (v *MapView) words() string {
	if v.failed {
		return word.mapDrawn
	}
	return v.picked
}

func (v *MapView) here() app.UI {
	return app.If(v.Model.HasPoint, func() app.UI {
		x, y := draw.Project(v.Model.Route, overviewW, overviewH, v.Model.Cursor)
		return svg(draw.Here(x, y, overviewW, overviewH))
	})
}

func (v *MapView) zoom() app.UI {
	return app.Div().Class("zoom").Body(
		app.Button().Type("button").Aria("label", word.zoomIn).Text("+").OnClick(v.onZoomIn),
		app.Button().Type("button").Aria("label", word.zoomOut).Text("−").OnClick(v.onZoomOut),
		app.Button().Type("button").Text(v.whole()).OnClick(v.onWhole),
		app.If(v.Model.Draft != nil, func() app.UI {
			return app.Button().Type("button").Class("middle").Text(word.middle).OnClick(v.onMiddle)
		}),
	)
}

// whole names what the button shows.
func (v *MapView) whole() string {
	if v.Model.Far {
		return word.wholeMap
	}
	return word.whole
}

func (v *MapView) onZoomIn(ctx app.Context, e app.Event)  { v.live.Zoom(1) }
func (v *MapView) onZoomOut(ctx app.Context, e app.Event) { v.live.Zoom(-1) }
func (v *MapView) onWhole(ctx app.Context, e app.Event)   { v.fit() }

// onMiddle is drawing without a pointer: arrow keys move the map.
func (v *MapView) onMiddle(ctx app.Context, e app.Event) { send(ctx, DrawnPoint{v.live.Middle()}) }

func (v *MapView) OnMount(ctx app.Context) {
	v.stops = append(v.stops,
		browser.MapReady(func() { ctx.Dispatch(v.start) }),
		browser.WatchMedia(darkQuery, func(bool) { ctx.Dispatch(func(app.Context) { v.paint() }) }))
}

const darkQuery = "(prefers-color-scheme: dark)"

func (v *MapView) OnDismount() {
	for _, stop := range v.stops {
		stop()
	}
	if v.live != nil {
		v.live.Close()
		v.live = nil
	}
}

// OnUpdate gives the map what changed since it was last given anything.
// The first answer brings the strips, or words, and with them another size.
func (v *MapView) OnUpdate(ctx app.Context) {
	if v.shown.Draft != v.Model.Draft || !same(v.shown.Plan.Days, v.Model.Plan.Days) {
		v.picked = ""
	}
	first := !v.shown.Answered && v.Model.Answered
	if !first && v.live != nil && !same(v.shown.Plan.Days, v.Model.Plan.Days) {
		// The page has just drawn the plan: the map draws it in a frame of its own.
		ctx.After(mapDelay, func(app.Context) { v.push() })
		return
	}
	v.push()
	if first && v.live != nil {
		ctx.After(50*time.Millisecond, func(app.Context) {
			v.live.Resize()
			v.fit()
		})
	}
}

// mapDelay is a little more than a frame.
const mapDelay = 40 * time.Millisecond

// start makes the live map; without WebGL2 the drawn one stays.
func (v *MapView) start(ctx app.Context) {
	if v.live != nil || v.failed {
		return
	}
	box := v.Model.Overall
	if box == [4]float64{} {
		box = [4]float64{-10, 35, 30, 60}
	}
	m, err := browser.NewMap(app.Window().GetElementByID(mapCanvas), browser.MapOptions{
		Sources: mapSources, Layers: mapLayers(browser.Matches(darkQuery), len(v.Model.Backdrop.Land) > 0), Bounds: box, Label: word.mapAlt,
	})
	if err != nil {
		v.failed = true
		return
	}
	v.live, v.shown = m, MapModel{}
	v.tellScale = func() {
		if v.Model.Draft != nil {
			ctx.Dispatch(func(app.Context) { send(ctx, DrawnScale{v.live.MetresPerPixel()}) })
		}
	}
	v.listen(ctx)
	v.push()
}

func (v *MapView) paint() {
	if v.live != nil {
		v.live.Repaint(mapLayers(browser.Matches(darkQuery), len(v.Model.Backdrop.Land) > 0))
	}
}

// push sets the sources whose values are others than before.
func (v *MapView) push() {
	if v.live == nil {
		return
	}
	was, is := v.shown, v.Model
	set := func(source string, changed bool, data func() string) {
		if changed {
			if err := v.live.SetData(source, data()); err != nil {
				app.Log(err)
			}
		}
	}
	set("backdrop", was.Ground != is.Ground && is.Ground != "", func() string { return is.Ground })
	set("land", !same(was.Backdrop.Land, is.Backdrop.Land), func() string { return landData(is.Backdrop.Land) })
	began := (was.Draft == nil) != (is.Draft == nil)
	// While a route is drawn, the one before makes room.
	unlessDrawn := func(data func() string) func() string {
		if is.Draft != nil {
			return func() string { return collection() }
		}
		return data
	}
	set("route", began || !same(was.Route, is.Route) || !same(was.Plan.OffRoad, is.Plan.OffRoad), unlessDrawn(func() string { return routeData(is.Route, is.Plan.OffRoad, is.Plan.LengthKm) }))
	set("places", !same(was.Plan.Places, is.Plan.Places), func() string { return placesData(is.Plan) })
	set("stops", began || !same(was.Plan.Days, is.Plan.Days), unlessDrawn(func() string { return stopsData(is.Plan) }))
	set("cursor", began || was.Cursor != is.Cursor || was.HasPoint != is.HasPoint, unlessDrawn(func() string { return cursorData(is.Cursor, is.HasPoint) }))
	set("draft", was.Draft != is.Draft || len(was.Legs) != len(is.Legs), func() string {
		if is.Draft == nil {
			return collection()
		}
		return draftData(*is.Draft, is.Legs.of(is.Draft.Points))
	})
	set("others", was.Draft != is.Draft, func() string { return othersData(is.Draft) })
	v.land()
	v.shown = is
	if !same(was.Backdrop.Land, is.Backdrop.Land) {
		v.paint()
	}
	if !same(was.Route, is.Route) || was.Overall != is.Overall && is.Draft == nil {
		v.fit()
	}
	if d := is.Draft; d != nil && len(d.Before) == 0 && len(was.Legs) == 0 && len(is.Legs) > 0 {
		v.fit() // a drawing that is gone on with: its way is known
	}
	if is.Draft != nil || is.Road {
		if is.Draft != nil && was.Draft == nil {
			v.tellScale()
		}
		v.live.SetCursor("crosshair")
	} else if was.Draft != nil || was.Road {
		v.live.SetCursor("")
	}
}

// barHeight is what the controls of a drawing cover of the map, in pixels, on a wide page.
const barHeight = 190

func (v *MapView) fit() {
	box, below := v.Model.Overall, 0
	if v.Model.Draft != nil && browser.Matches("(min-width: 64rem)") {
		below = barHeight
	}
	if d := v.Model.Draft; d != nil && len(d.Points) > 1 {
		box, _ = bounds(joined(v.Model.Legs.of(d.Points)))
	}
	if box != [4]float64{} && v.live != nil {
		v.live.Fit(box, 40, below)
	}
}

// same tells whether two slices are one: values are replaced, never changed.
func same[T any](a, b []T) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// listen turns what happens on the map into messages.
func (v *MapView) listen(ctx app.Context) {
	on := func(event, layer string, f func(browser.MapEvent)) {
		v.live.On(event, layer, func(e browser.MapEvent) {
			ctx.Dispatch(func(app.Context) { f(e) })
		})
	}
	took := false // the click was on another way, and is no point
	on("click", "others-reach", func(e browser.MapEvent) {
		if took = v.Model.Draft != nil && !v.dragged; took {
			send(ctx, WayTaken{e.Index})
		}
	})
	on("click", "", func(e browser.MapEvent) {
		if took {
			took = false
		} else if v.Model.Draft != nil && !v.dragged {
			send(ctx, DrawnPoint{orb.Point{e.Lng, e.Lat}})
		} else if v.Model.Draft == nil && v.Model.Road {
			p := orb.Point{e.Lng, e.Lat}
			send(ctx, ReportPointed{p, shareNear(v.Model.Route, p) * v.Model.Plan.LengthKm})
		}
	})
	on("zoomend", "", func(browser.MapEvent) { v.tellScale() })
	on("mousemove", "route-reach", func(e browser.MapEvent) { v.pointAlong(ctx, e) })
	on("click", "route-reach", func(e browser.MapEvent) { v.pointAlong(ctx, e) })
	on("mousemove", "stops", func(e browser.MapEvent) { v.pointStop(ctx, e.Index) })
	on("click", "stops", func(e browser.MapEvent) { v.pointStop(ctx, e.Index) })
	on("mousemove", "places-reach", func(e browser.MapEvent) { v.pick(e.Index) })
	on("click", "places-reach", func(e browser.MapEvent) { v.pick(e.Index) })
	v.listenDrag(ctx)
}

func (v *MapView) pointAlong(ctx app.Context, e browser.MapEvent) {
	if v.Model.Draft == nil && v.Model.Plan.LengthKm > 0 {
		send(ctx, PointedKm{shareNear(v.Model.Route, orb.Point{e.Lng, e.Lat}) * v.Model.Plan.LengthKm})
	}
}

func (v *MapView) pointStop(ctx app.Context, index int) {
	stops := draw.Numbers(v.Model.Plan.Days)
	if v.Model.Draft != nil || index < 0 || index >= len(stops) {
		return
	}
	c := stops[index].Call
	v.picked = fmt.Sprintf("%d · %s · %s", index+1, nameOf(c), v.Model.Say.Clock(c.ArriveMin))
	send(ctx, PointedMin{c.ArriveMin})
}

func (v *MapView) pick(index int) {
	if v.Model.Draft != nil || index < 0 || index >= len(v.Model.Plan.Places) {
		return
	}
	names := map[string]string{}
	for _, s := range v.Model.Plan.Strips {
		names[s.Tank] = s.Name
	}
	v.picked = describe(v.Model.Plan.Places[index], names, v.Model.Say)
}
