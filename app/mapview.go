package page

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/planner/trip"
)

// A MapModel is what the map shows.
type MapModel struct {
	Route    orb.LineString
	Plan     trip.Itinerary
	Backdrop draw.Backdrop
	Cursor   orb.Point // where the vehicle is at the moment shown
	HasPoint bool
	Draft    *Draft
}

func mapModel(m Model) MapModel {
	out := MapModel{Route: m.Route(), Plan: m.Plan, Backdrop: m.Backdrop, Draft: m.Draft}
	if m.HasPlan() {
		out.Cursor, out.HasPoint = along(m.Trip.Route, m.Axis.AtMin(m.Cursor).Km/math.Max(m.Plan.LengthKm, 1e-9))
	}
	return out
}

// A MapView shows the map, or the drawn overview where no map can be.
type MapView struct {
	app.Compo
	Model MapModel
}

const overviewW, overviewH = 900, 560

func (v *MapView) Render() app.UI {
	return app.Section().ID("map").Class("map").Aria("label", say.mapTitle).Body(
		app.Div().Class("drawn").Role("img").Aria("label", say.mapAlt).Body(
			&Overview{Route: v.Model.Route, Plan: v.Model.Plan, Backdrop: v.Model.Backdrop},
			v.here(),
		),
	)
}

func (v *MapView) here() app.UI {
	return app.If(v.Model.HasPoint, func() app.UI {
		x, y := draw.Project(v.Model.Route, v.Model.Plan, overviewW, overviewH, v.Model.Cursor)
		return svg(draw.Here(x, y, overviewW, overviewH))
	})
}

// An Overview is the drawn map without the cursor: it is costly to draw.
type Overview struct {
	app.Compo
	Route    orb.LineString
	Plan     trip.Itinerary
	Backdrop draw.Backdrop
}

func (o *Overview) Render() app.UI {
	return svg(draw.Overview(o.Route, o.Plan, o.Backdrop, overviewW, overviewH))
}
