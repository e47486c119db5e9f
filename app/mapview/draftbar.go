package mapview

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// A DraftBar has the controls of a route being drawn, and says what is to be
// said of it.
type DraftBar struct {
	app.Compo
	Say   say.Voice
	Draft model.Draft
	Legs  []byroad.Leg
}

// fewRound is how many roads that are gone round are named.
const fewRound = 4

func (b *DraftBar) Render() app.UI {
	n := len(b.Draft.Points)
	return app.Div().Class("draftbar").Role("group").Aria("label", b.Say.Text("page.draw")).Body(
		app.Div().Class("said").Aria("live", "polite").Body(b.words()...),
		app.Button().Type("button").Text(b.Say.Text("draw.undo")).Disabled(len(b.Draft.Before) == 0).OnClick(b.onUndo),
		app.Button().Type("button").Text(b.Say.Text("draw.redo")).Disabled(len(b.Draft.After) == 0).OnClick(b.onRedo),
		app.Button().Type("button").Text(b.Say.Text("draw.clear")).Disabled(n == 0).OnClick(b.onClear),
		app.If(b.Draft.Chosen > 0, func() app.UI {
			return app.Button().Type("button").Text(b.Say.Text("draw.remove", fact.V{"n": fact.Count(b.Draft.Chosen)})).OnClick(b.onRemove)
		}),
		otherWays(b.Say, b.Draft, b.Legs),
		app.Button().Type("button").Class("main").Text(b.Say.Text("draw.use")).Disabled(n < 2).OnClick(b.onUse),
		app.Button().Type("button").Text(b.Say.Text("draw.cancel")).OnClick(b.onCancel),
	)
}

func (b *DraftBar) words() []app.UI {
	n := len(b.Draft.Points)
	if n == 0 {
		return []app.UI{app.P().Text(b.Say.Text("draw.help"))}
	}
	m, s, off := 0.0, 0.0, false
	for _, l := range b.Legs {
		m, s, off = m+l.M, s+l.S, off || l.Drawn
	}
	out := []app.UI{app.P().Text(b.Say.Text("draw.count", fact.V{"n": fact.Count(n), "km": fact.Km(m/1000, -1), "time": fact.Span(s / 60)}))}
	if off {
		out = append(out, app.P().Class("off").Text(b.Say.Text("draw.off")))
	}
	round := model.GoneRound(b.Say, b.Legs)
	for _, r := range round[:min(len(round), fewRound)] {
		out = append(out, app.P().Class("round").Text(b.Say.Text("draw.round", fact.V{"road": fact.Text(r)})))
	}
	return out
}

func (b *DraftBar) onUndo(ctx app.Context, e app.Event)   { show.Send(ctx, model.DrawUndone{}) }
func (b *DraftBar) onRedo(ctx app.Context, e app.Event)   { show.Send(ctx, model.DrawRedone{}) }
func (b *DraftBar) onClear(ctx app.Context, e app.Event)  { show.Send(ctx, model.DrawCleared{}) }
func (b *DraftBar) onRemove(ctx app.Context, e app.Event) { show.Send(ctx, model.DrawnRemove{}) }
func (b *DraftBar) onUse(ctx app.Context, e app.Event)    { show.Send(ctx, model.DrawEnded{Keep: true}) }
func (b *DraftBar) onCancel(ctx app.Context, e app.Event) { show.Send(ctx, model.DrawEnded{}) }
