package itinerary

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/show"
)

// An AvoidButton plans without a place, or with it again.
type AvoidButton struct {
	app.Compo
	Place string
	Label string
	Name  string // for who does not see what it belongs to; "": the label
}

func (b *AvoidButton) Render() app.UI {
	button := app.Button().Type("button").Class("quiet").Text(b.Label).OnClick(b.onClick)
	if b.Name != "" {
		button = button.Aria("label", b.Name)
	}
	return button
}

func (b *AvoidButton) onClick(ctx app.Context, e app.Event) {
	show.Send(ctx, model.Avoided{Place: b.Place})
}
