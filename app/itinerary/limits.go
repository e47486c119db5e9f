package itinerary

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
)

// Limits says what to mind on the whole trip, and what the plan cannot know.
type Limits struct {
	app.Compo
	Say       say.Voice
	Cautions  []fact.Fact
	Estimated bool
	Planned   bool
}

func (l *Limits) Render() app.UI {
	lines := l.Say.Facts(l.Cautions)
	if l.Estimated {
		lines = append(lines, l.Say.Text("limits.estimated"))
	}
	lines = append(lines, l.Say.Text("limits.data"), l.Say.Text("limits.use"), l.Say.Text("limits.rules"))
	title := l.Say.Text("limits.mind")
	if l.Planned {
		title = l.Say.Text("limits.title")
	}
	return app.Section().Class("limits").Aria("labelledby", "limits-title").Body(
		app.H2().ID("limits-title").Text(title),
		app.Ul().Body(show.Lines(lines)...),
	)
}
