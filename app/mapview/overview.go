package mapview

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/show"
	"ullage/planner/trip"
)

// The overview is drawn for this size, and scaled.
const overviewW, overviewH = 900, 560

// A GroundView is the backdrop of the drawn overview: much to draw, drawn
// again only when route or backdrop change.
type GroundView struct {
	app.Compo
	Route    orb.LineString
	Backdrop draw.Backdrop
}

func (g *GroundView) Render() app.UI {
	return show.SVG(draw.Ground(g.Route, g.Backdrop, overviewW, overviewH))
}

// A StopsView is the route of the drawn overview with its places and names.
type StopsView struct {
	app.Compo
	Route    orb.LineString
	Plan     trip.Itinerary
	Backdrop draw.Backdrop
}

func (s *StopsView) Render() app.UI {
	return show.SVG(draw.Stops(s.Route, s.Plan, s.Backdrop.Towns, overviewW, overviewH))
}
