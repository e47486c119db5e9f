package itinerary

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A Refusal says which limit stands in the way, where, by how much, and what
// would help.
type Refusal struct {
	app.Compo
	Say     say.Voice
	Plan    trip.Itinerary
	Vehicle trip.Vehicle
}

func (r *Refusal) Render() app.UI {
	var items []app.UI
	for _, why := range r.Plan.Why {
		items = append(items, app.Li().Body(
			app.H3().Body(app.Text(r.limit(why)+" "), app.Span().Class("where").Text(
				r.Say.Text("refusal.where", fact.V{"from": fact.Mark(why.FromKm, -1), "to": fact.Text(r.Say.Bare(why.ToKm, "km"))}))),
			show.Text("", r.Say.Fact(why.Says)),
			r.cures(why.Cures),
		))
	}
	return app.Section().ID("refusal").Class("refusal").Aria("labelledby", "refusal-title").Body(
		app.H2().ID("refusal-title").Text(r.Say.Text("refusal.title")),
		app.Ul().Body(items...),
		r.cures(r.Plan.Cures),
		show.Text("", r.Say.Fact(r.Plan.Tried)),
		r.nearest(),
	)
}

// nearest is marked in words as no plan: it is a list, not the itinerary.
func (r *Refusal) nearest() app.UI {
	return app.If(r.Plan.Nearest != nil, func() app.UI {
		n := r.Plan.Nearest
		return app.Details().Class("nearest").Body(
			app.Summary().Text(r.Say.Text("refusal.nearest")),
			app.P().Class("mark").Text(r.Say.Text("refusal.broken")),
			app.Ul().Class("broken").Body(show.Lines(r.Say.Facts(n.Broken))...),
			app.Ul().Body(show.Lines(r.Say.Facts(n.Days))...),
		)
	})
}

func (r *Refusal) cures(cures []fact.Fact) app.UI {
	return app.If(len(cures) > 0, func() app.UI {
		return app.Div().Class("cures").Body(app.B().Text(r.Say.Text("refusal.cures")), app.Ul().Body(show.Lines(r.Say.Facts(cures))...))
	})
}

// units are those of limits that are no tank.
var units = map[string]string{"km": "km", "min": "min"}

// limit names the limit and how much is missing.
func (r *Refusal) limit(why trip.Reason) string {
	name, unit := fact.Text(why.Limit), units[why.Limit]
	if r.Say.Has("limit." + why.Limit) {
		name = fact.Term("limit." + why.Limit)
	}
	for _, k := range r.Vehicle.Tanks {
		if k.ID == why.Limit {
			name, unit = fact.Tank(k.ID, k.Name), k.Unit
		}
	}
	if !(why.Missing > 0) {
		return say.Capital(r.Say.Value(name))
	}
	missing := fact.Quantity(why.Missing, unit, -1)
	if unit == "" {
		missing = fact.Text(r.Say.Bare(why.Missing, ""))
	}
	return r.Say.Text("refusal.short", fact.V{"limit": name, "missing": missing})
}
