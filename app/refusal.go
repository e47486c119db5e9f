package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
	"ullage/planner"
	"ullage/planner/trip"
)

// A Refusal says which limit stands in the way, where, by how much, and what
// would help.
type Refusal struct {
	app.Compo
	Plan    trip.Itinerary
	Vehicle trip.Vehicle
}

func (r *Refusal) Render() app.UI {
	var items []app.UI
	for _, why := range r.Plan.Why {
		items = append(items, app.Li().Body(
			app.H3().Body(app.Text(limit(r.Vehicle, why)+" "), app.Span().Class("where").Text(stretch(why))),
			text("", why.Text),
			r.cures(why.Cures),
		))
	}
	return app.Section().ID("refusal").Class("refusal").Aria("labelledby", "refusal-title").Body(
		app.H2().ID("refusal-title").Text(say.refusedHead),
		app.Ul().Body(items...),
		r.nearest(),
	)
}

// nearest is marked in words as no plan: it is a list, not the itinerary.
func (r *Refusal) nearest() app.UI {
	return app.If(r.Plan.Nearest != nil, func() app.UI {
		n := r.Plan.Nearest
		return app.Details().Class("nearest").Body(
			app.Summary().Text(say.nearest),
			app.P().Class("mark").Text(say.notValid),
			app.Ul().Class("broken").Body(lines(n.Broken)...),
			app.Ul().Body(lines(n.Days)...),
		)
	})
}

func (r *Refusal) cures(cures []string) app.UI {
	return app.If(len(cures) > 0, func() app.UI {
		return app.Div().Class("cures").Body(app.B().Text(say.cure), app.Ul().Body(lines(cures)...))
	})
}

// lines is a list of texts.
func lines(texts []string) []app.UI {
	var out []app.UI
	for _, s := range texts {
		out = append(out, app.Li().Text(s))
	}
	return out
}

// limit names the limit and how much is missing.
func limit(v trip.Vehicle, why planner.Reason) string {
	name, unit := limitWords[why.Limit], unitWords[why.Limit]
	if name == "" {
		name = why.Limit
	}
	for _, k := range v.Tanks {
		if k.ID == why.Limit {
			name, unit = k.Name, k.Unit
		}
	}
	if !(why.Missing > 0) {
		return capital(name)
	}
	return capital(name) + ": " + fmt.Sprintf(say.refusedMissing, amount(why.Missing, unit))
}

// stretch says between which kilometres.
func stretch(why planner.Reason) string {
	return fmt.Sprintf(say.refusedWhere, draw.Amount(why.FromKm), draw.Amount(why.ToKm))
}
