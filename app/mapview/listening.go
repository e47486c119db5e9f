package mapview

import (
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/show"
)

// This file is the life of the live map, and turns what happens on it into messages.

func (v *MapView) OnMount(ctx app.Context) {
	v.stops = append(v.stops,
		browser.MapReady(func() { ctx.Dispatch(v.start) }),
		browser.WatchMedia(darkQuery, func(bool) { ctx.Dispatch(func(app.Context) { v.paint() }) }))
}

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
	if v.shown.Draft != v.Model.Draft || !model.Same(v.shown.Plan.Days, v.Model.Plan.Days) {
		v.picked = ""
	}
	first := !v.shown.Answered && v.Model.Answered
	if !first && v.live != nil && !model.Same(v.shown.Plan.Days, v.Model.Plan.Days) {
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
		Sources: mapSources, Layers: mapLayers(v.look()), Bounds: box, Label: v.Model.Say.Text("map.alt"),
	})
	if err != nil {
		v.failed = true
		return
	}
	v.live, v.shown = m, MapModel{}
	v.tellScale = func() {
		if v.Model.Draft != nil {
			ctx.Dispatch(func(app.Context) { show.Send(ctx, model.DrawnScale{Metres: v.live.MetresPerPixel()}) })
		}
	}
	v.listen(ctx)
	v.push()
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
			show.Send(ctx, model.WayTaken{Index: e.Index})
		}
	})
	on("click", "", func(e browser.MapEvent) {
		if took {
			took = false
		} else if v.Model.Draft != nil && !v.dragged {
			show.Send(ctx, model.DrawnPoint{Point: orb.Point{e.Lng, e.Lat}})
		} else if v.Model.Draft == nil && v.Model.Road {
			p := orb.Point{e.Lng, e.Lat}
			show.Send(ctx, model.ReportPointed{Point: p, Km: model.ShareNear(v.Model.Route, p) * v.Model.Plan.LengthKm})
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
		show.Send(ctx, model.PointedKm{Km: model.ShareNear(v.Model.Route, orb.Point{e.Lng, e.Lat}) * v.Model.Plan.LengthKm})
	}
}

func (v *MapView) pointStop(ctx app.Context, index int) {
	stops := draw.Numbers(v.Model.Plan.Days)
	if v.Model.Draft != nil || index < 0 || index >= len(stops) {
		return
	}
	c := stops[index].Call
	v.picked = fmt.Sprintf("%d · %s · %s", stops[index].N, show.Called(v.Model.Say, c), v.Model.Say.Clock(c.ArriveMin))
	show.Send(ctx, model.PointedMin{Min: c.ArriveMin})
}

func (v *MapView) pick(index int) {
	if v.Model.Draft != nil || index < 0 || index >= len(v.Model.Plan.Places) {
		return
	}
	names := map[string]string{}
	for _, s := range v.Model.Plan.Strips {
		names[s.Tank] = s.Name
	}
	v.picked = describe(v.Model.Say, v.Model.Plan.Places[index], names)
}
