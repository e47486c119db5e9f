package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/byroad"
)

// A DraftBar has the controls of a route being drawn, and says what is to be
// said of it.
type DraftBar struct {
	app.Compo
	Draft Draft
	Legs  []byroad.Leg
	Say   say.Voice
}

// fewRound is how many roads that are gone round are named.
const fewRound = 4

func (b *DraftBar) Render() app.UI {
	n := len(b.Draft.Points)
	return app.Div().Class("draftbar").Role("group").Aria("label", word.draw).Body(
		app.Div().Class("said").Aria("live", "polite").Body(b.words()...),
		app.Button().Type("button").Text(word.undo).Disabled(len(b.Draft.Before) == 0).OnClick(b.onUndo),
		app.Button().Type("button").Text(word.redo).Disabled(len(b.Draft.After) == 0).OnClick(b.onRedo),
		app.Button().Type("button").Text(word.clear).Disabled(n == 0).OnClick(b.onClear),
		app.If(b.Draft.Chosen > 0, func() app.UI {
			return app.Button().Type("button").Text(fmt.Sprintf(word.remove, b.Draft.Chosen)).OnClick(b.onRemove)
		}),
		b.otherWaysBar(),
		app.Button().Type("button").Class("main").Text(word.use).Disabled(n < 2).OnClick(b.onUse),
		app.Button().Type("button").Text(word.cancel).OnClick(b.onCancel),
	)
}

func (b *DraftBar) words() []app.UI {
	n := len(b.Draft.Points)
	if n == 0 {
		return []app.UI{app.P().Text(word.drawHelp)}
	}
	m, s, off := 0.0, 0.0, false
	for _, l := range b.Legs {
		m, s, off = m+l.M, s+l.S, off || l.Drawn
	}
	out := []app.UI{app.P().Text(fmt.Sprintf(word.drawCount, count(n, word.points), b.Say.Km(m/1000), b.Say.Span(s/60)))}
	if off {
		out = append(out, app.P().Class("off").Text(word.drawOff))
	}
	round := avoided(b.Say, b.Legs)
	for _, r := range round[:min(len(round), fewRound)] {
		out = append(out, app.P().Class("round").Text(fmt.Sprintf(word.round, r)))
	}
	return out
}

func (b *DraftBar) onUndo(ctx app.Context, e app.Event)   { send(ctx, DrawUndone{}) }
func (b *DraftBar) onRedo(ctx app.Context, e app.Event)   { send(ctx, DrawRedone{}) }
func (b *DraftBar) onClear(ctx app.Context, e app.Event)  { send(ctx, DrawCleared{}) }
func (b *DraftBar) onRemove(ctx app.Context, e app.Event) { send(ctx, DrawnRemove{}) }
func (b *DraftBar) onUse(ctx app.Context, e app.Event)    { send(ctx, DrawEnded{Keep: true}) }
func (b *DraftBar) onCancel(ctx app.Context, e app.Event) { send(ctx, DrawEnded{}) }
