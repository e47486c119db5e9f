package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/show"
)

// An Offer says what stands in the way, and what can be done about it at a press.
type Offer struct {
	app.Compo
	ID, Text, Do string
	Msg          model.Msg
}

func (o *Offer) Render() app.UI {
	return app.Div().ID(o.ID).Class("offer").Role("status").Body(
		app.P().Text(o.Text),
		app.Button().Type("button").Class("main").Text(o.Do).OnClick(o.onDo),
	)
}

// onDo sends a message: the button is gone before the answer is kept.
func (o *Offer) onDo(ctx app.Context, e app.Event) { show.Send(ctx, o.Msg) }
