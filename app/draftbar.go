package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb/geo"
)

// A DraftBar has the controls of a route being drawn.
type DraftBar struct {
	app.Compo
	Draft Draft
}

func (b *DraftBar) Render() app.UI {
	n := len(b.Draft.Line)
	words := say.drawHelp
	if n > 0 {
		words = fmt.Sprintf(say.drawCount, count(n, say.points), km(geo.LengthHaversine(b.Draft.Line)/1000))
	}
	return app.Div().Class("draftbar").Role("group").Aria("label", say.draw).Body(
		app.P().Aria("live", "polite").Text(words),
		app.Button().Type("button").Text(say.undo).Disabled(len(b.Draft.Before) == 0).OnClick(b.onUndo),
		app.Button().Type("button").Text(say.clear).Disabled(n == 0).OnClick(b.onClear),
		app.Button().Type("button").Class("main").Text(say.use).Disabled(n < 2).OnClick(b.onUse),
		app.Button().Type("button").Text(say.cancel).OnClick(b.onCancel),
	)
}

func (b *DraftBar) onUndo(ctx app.Context, e app.Event)   { send(ctx, DrawUndone{}) }
func (b *DraftBar) onClear(ctx app.Context, e app.Event)  { send(ctx, DrawCleared{}) }
func (b *DraftBar) onUse(ctx app.Context, e app.Event)    { send(ctx, DrawEnded{Keep: true}) }
func (b *DraftBar) onCancel(ctx app.Context, e app.Event) { send(ctx, DrawEnded{}) }
