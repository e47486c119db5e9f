package page

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/trip"
)

// A HandBack is the last morning: the stops in order, the keys, and whether
// the tanks are as agreed.
type HandBack struct {
	app.Compo
	Return *trip.Return
	Say    say.Voice
}

func (h *HandBack) Render() app.UI {
	r := h.Return
	if r == nil {
		return app.Div()
	}
	body := []app.UI{
		app.H2().ID("return-title").Text(word.returnTitle),
		app.P().Class("where").Text(h.Say.Date(r.Date)),
		app.Ol().Class("steps").Body(lines(proses(h.Say, r.Steps))...),
	}
	if r.Station != "" {
		body = append(body, app.P().Body(app.B().Text(word.returnStation+": "), app.Text(prose(h.Say, r.Station))))
	}
	if len(r.Agreed) > 0 {
		body = append(body, app.P().Body(app.B().Text(word.returnAgreed+": "), app.Text(prose(h.Say, strings.Join(r.Agreed, "; ")))))
	}
	for _, w := range r.Warnings {
		body = append(body, text("trouble", prose(h.Say, w)))
	}
	return app.Section().ID("return").Class("more").Aria("labelledby", "return-title").Body(body...)
}

// scales says what the vehicle weighs as it sets off, and warns.
func scales(w *trip.Weight, v say.Voice) app.UI {
	return app.If(w != nil, func() app.UI {
		return app.Div().Class("weight").Body(
			app.P().Text(prose(v, fmt.Sprintf(word.weight, w.Kg, w.AllowedKg))),
			text("trouble", prose(v, w.Text)),
		)
	})
}
