package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/trip"
)

// A Refusal says which limit stands in the way, where, by how much, and what
// would help.
type Refusal struct {
	app.Compo
	Plan    trip.Itinerary
	Vehicle trip.Vehicle
	Say     say.Voice
}

func (r *Refusal) Render() app.UI {
	var items []app.UI
	for _, why := range r.Plan.Why {
		items = append(items, app.Li().Body(
			app.H3().Body(app.Text(r.limit(why)+" "), app.Span().Class("where").Text(r.stretch(why))),
			text("", prose(r.Say, why.Text)),
			r.cures(why.Cures),
		))
	}
	return app.Section().ID("refusal").Class("refusal").Aria("labelledby", "refusal-title").Body(
		app.H2().ID("refusal-title").Text(word.refusedHead),
		app.Ul().Body(items...),
		r.nearest(),
	)
}

// nearest is marked in words as no plan: it is a list, not the itinerary.
func (r *Refusal) nearest() app.UI {
	return app.If(r.Plan.Nearest != nil, func() app.UI {
		n := r.Plan.Nearest
		return app.Details().Class("nearest").Body(
			app.Summary().Text(word.nearest),
			app.P().Class("mark").Text(word.notValid),
			app.Ul().Class("broken").Body(lines(proses(r.Say, n.Broken))...),
			app.Ul().Body(lines(proses(r.Say, n.Days))...),
		)
	})
}

func (r *Refusal) cures(cures []string) app.UI {
	return app.If(len(cures) > 0, func() app.UI {
		return app.Div().Class("cures").Body(app.B().Text(word.cure), app.Ul().Body(lines(proses(r.Say, cures))...))
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
func (r *Refusal) limit(why trip.Reason) string {
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
	return capital(name) + ": " + fmt.Sprintf(word.refusedMissing, r.Say.Amount(why.Missing, unit))
}

// stretch says between which kilometres.
func (r *Refusal) stretch(why trip.Reason) string {
	return fmt.Sprintf(word.refusedWhere, r.Say.Mark(why.FromKm, -1), r.Say.Bare(why.ToKm, "km"))
}
