package page

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner/trip"
)

// A HandBack is the last morning: the stops in order, the keys, and whether
// the tanks are as agreed.
type HandBack struct {
	app.Compo
	Return *trip.Return
	Units  Units
}

func (h *HandBack) Render() app.UI {
	r := h.Return
	if r == nil {
		return app.Div()
	}
	body := []app.UI{
		app.H2().ID("return-title").Text(say.returnTitle),
		app.P().Class("where").Text(date(r.Date)),
		app.Ol().Class("steps").Body(lines(h.Units.proses(r.Steps))...),
	}
	if r.Station != "" {
		body = append(body, app.P().Body(app.B().Text(say.returnStation+": "), app.Text(h.Units.prose(r.Station))))
	}
	if len(r.Agreed) > 0 {
		body = append(body, app.P().Body(app.B().Text(say.returnAgreed+": "), app.Text(h.Units.prose(strings.Join(r.Agreed, "; ")))))
	}
	for _, w := range r.Warnings {
		body = append(body, text("trouble", h.Units.prose(w)))
	}
	return app.Section().ID("return").Class("more").Aria("labelledby", "return-title").Body(body...)
}

// scales says what the vehicle weighs as it sets off, and warns.
func scales(w *trip.Weight, u Units) app.UI {
	return app.If(w != nil, func() app.UI {
		return app.Div().Class("weight").Body(
			app.P().Text(u.prose(fmt.Sprintf(say.weight, w.Kg, w.AllowedKg))),
			text("trouble", u.prose(w.Text)),
		)
	})
}
