package itinerary

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/trip"
)

// A HandBack is the last morning: the stops in order, the keys, and whether
// the tanks are as agreed.
type HandBack struct {
	app.Compo
	Say    say.Voice
	Return *trip.Return
}

func (h *HandBack) Render() app.UI {
	r := h.Return
	if r == nil {
		return app.Div()
	}
	body := []app.UI{
		app.H2().ID("return-title").Text(h.Say.Text("return.title")),
		app.P().Class("where").Text(h.Say.Date(string(r.Date))),
		app.Ol().Class("steps").Body(show.Lines(h.Say.Facts(r.Steps))...),
	}
	if len(r.Station) > 0 {
		body = append(body, app.P().Body(app.B().Text(h.Say.Text("return.station")+" "), app.Text(strings.Join(h.Say.Facts(r.Station), "; "))))
	}
	if len(r.Agreed) > 0 {
		body = append(body, app.P().Body(app.B().Text(h.Say.Text("return.agreed")+" "), app.Text(strings.Join(h.Say.Facts(r.Agreed), "; "))))
	}
	for _, w := range r.Warnings {
		body = append(body, show.Text("trouble", h.Say.Fact(w)))
	}
	return app.Section().ID("return").Class("more").Aria("labelledby", "return-title").Body(body...)
}
