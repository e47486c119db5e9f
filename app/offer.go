package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/show"
)

// An Offer says what stands in the way, and what can be done about it at a press: one
// thing, or the other.
type Offer struct {
	app.Compo
	ID, Text string
	Do, Or   string // "": there is no other
	Msg, Alt model.Msg
}

func (o *Offer) Render() app.UI {
	return app.Div().ID(o.ID).Class("offer").Role("status").Body(
		app.P().Text(o.Text),
		app.Button().Type("button").Class("main").Text(o.Do).OnClick(o.onDo),
		app.If(o.Or != "", func() app.UI { return app.Button().Type("button").Text(o.Or).OnClick(o.onOr) }),
	)
}

// onDo sends a message: the button is gone before the answer is kept.
func (o *Offer) onDo(ctx app.Context, e app.Event) { show.Send(ctx, o.Msg) }

func (o *Offer) onOr(ctx app.Context, e app.Event) { show.Send(ctx, o.Alt) }

// A Press is a quiet button that sends a message.
type Press struct {
	app.Compo
	Text string
	Msg  model.Msg
}

func (p *Press) Render() app.UI {
	return app.Button().Type("button").Class("quiet").Text(p.Text).OnClick(p.onPress)
}

func (p *Press) onPress(ctx app.Context, e app.Event) { show.Send(ctx, p.Msg) }
