package itinerary

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// crossings are the ferries of a day between the stop before i and stop i.
func crossings(v say.Voice, day trip.Day, i int) []app.UI {
	var out []app.UI
	for _, f := range day.Ferries {
		if i > 0 && day.Calls[i-1].ArriveMin > f.StartMin || i < len(day.Calls) && day.Calls[i].ArriveMin <= f.StartMin {
			continue
		}
		out = append(out, app.Li().Body(&CrossingRow{Say: v, Ferry: f}))
	}
	return out
}

// A CrossingRow is one ferry of the itinerary.
type CrossingRow struct {
	app.Compo
	Say   say.Voice
	Ferry trip.Crossing
}

func (r *CrossingRow) Render() app.UI {
	f := r.Ferry
	v := fact.V{"to": fact.Mark(f.ToKm, -1), "time": fact.Span(f.Min), "name": fact.Text(f.Name)}
	words := r.Say.Text("ferry.to", v)
	if f.Name != "" {
		words = r.Say.Text("ferry.named", v)
	}
	return app.Article().Class("crossing").Body(
		app.P().Body(app.B().Text(r.Say.Clock(f.StartMin)+" · "+words)),
		app.Ul().Body(show.Lines(append([]string{say.Capital(r.Say.Fact(f.Basis))}, r.Say.Facts(f.Mind)...))...))
}
