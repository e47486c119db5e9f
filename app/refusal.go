package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
	"ullage/planner"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// A Refusal says which limit stands in the way, where, by how much, and what
// would help.
type Refusal struct {
	app.Compo
	Plan    trip.Itinerary
	Vehicle trip.Vehicle
	Units   Units
}

func (r *Refusal) Render() app.UI {
	var items []app.UI
	for _, why := range r.Plan.Why {
		items = append(items, app.Li().Body(
			app.H3().Body(app.Text(r.limit(why)+" "), app.Span().Class("where").Text(r.stretch(why))),
			text("", r.Units.prose(why.Text)),
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
			app.Ul().Class("broken").Body(lines(r.Units.proses(n.Broken))...),
			app.Ul().Body(lines(r.Units.proses(n.Days))...),
		)
	})
}

func (r *Refusal) cures(cures []string) app.UI {
	return app.If(len(cures) > 0, func() app.UI {
		return app.Div().Class("cures").Body(app.B().Text(say.cure), app.Ul().Body(lines(r.Units.proses(cures))...))
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
func (r *Refusal) limit(why planner.Reason) string {
	name, unit := limitWords[why.Limit], unitWords[why.Limit]
	if name == "" {
		name = why.Limit
	}
	for _, k := range r.Vehicle.Tanks {
		if k.ID == why.Limit {
			name, unit = k.Name, k.Unit
		}
	}
	if !(why.Missing > 0) {
		return capital(name)
	}
	missing := r.Units.amount(why.Missing, unit)
	if unit == "km" {
		missing = r.Units.km(why.Missing)
	}
	return capital(name) + ": " + fmt.Sprintf(say.refusedMissing, missing)
}

// stretch says between which kilometres.
func (r *Refusal) stretch(why planner.Reason) string {
	return fmt.Sprintf(say.refusedWhere, r.Units.mark(why.FromKm), draw.Amount(r.Units.of(units.Distance).Show(why.ToKm)))
}
