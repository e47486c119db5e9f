package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/planner/trip"
)

// A GroundView is the backdrop of the drawn overview: much to draw, drawn
// again only when route or backdrop change.
type GroundView struct {
	app.Compo
	Route    orb.LineString
	Backdrop draw.Backdrop
}

func (g *GroundView) Render() app.UI {
	return svg(draw.Ground(g.Route, g.Backdrop, overviewW, overviewH))
}

// A StopsView is the route of the drawn overview with its places and names.
type StopsView struct {
	app.Compo
	Route    orb.LineString
	Plan     trip.Itinerary
	Backdrop draw.Backdrop
}

func (s *StopsView) Render() app.UI {
	return svg(draw.Stops(s.Route, s.Plan, s.Backdrop.Towns, overviewW, overviewH))
}
