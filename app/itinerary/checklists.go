package itinerary

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/life/advice"
)

// Checklists are gone through at set-off, arrival, service and return. The
// ticks stay on this machine.
type Checklists struct {
	app.Compo
	Say    say.Voice
	Lists  []advice.Checklist
	HowTos []advice.HowTo
	Ticks  []string
}

func (c *Checklists) Render() app.UI {
	if len(c.Lists) == 0 {
		return app.Div()
	}
	body := []app.UI{app.H2().ID("checklists-title").Text(c.Say.Text("lists.title")), app.P().Class("help").Text(c.Say.Text("lists.help"))}
	for _, l := range c.Lists {
		body = append(body, c.list(l))
	}
	body = append(body, app.H2().Class("how").Text(c.Say.Text("lists.how")))
	for _, h := range c.HowTos {
		body = append(body, c.howTo(h))
	}
	return app.Section().ID("checklists").Class("more").Aria("labelledby", "checklists-title").Body(body...)
}

func (c *Checklists) list(l advice.Checklist) app.UI {
	var items []app.UI
	done := 0
	for _, i := range l.Items {
		row := &TickRow{ID: l.ID + "/" + i.ID, Words: c.Say.Fact(i.Says)}
		if _, row.On = slices.BinarySearch(c.Ticks, row.ID); row.On {
			done++
		}
		items = append(items, row)
	}
	return app.Details().ID("list-"+l.ID).Body(
		app.Summary().Body(app.B().Text(c.Say.Fact(l.Title)), app.Text(c.Say.Text("lists.done", fact.V{"n": fact.Count(done), "of": fact.Count(len(l.Items))}))),
		app.Ul().Class("ticks").Body(items...),
		&ClearButton{Say: c.Say, List: l.ID, Title: c.Say.Fact(l.Title)},
	)
}

// howTo is how one kind of stop is done; who decides always stands at the end.
func (c *Checklists) howTo(h advice.HowTo) app.UI {
	texts := func(items []advice.Item) (out []string) {
		for _, i := range items {
			out = append(out, c.Say.Fact(i.Says))
		}
		return out
	}
	return app.Details().Class("howto").Body(
		app.Summary().Text(c.Say.Fact(h.Title)),
		app.Ol().Class("steps").Body(show.Lines(texts(h.Steps))...),
		app.If(len(h.Cautions) > 0, func() app.UI {
			return app.Div().Class("cautions").Body(app.B().Text(c.Say.Text("stop.cautions")), app.Ul().Body(show.Lines(texts(h.Cautions))...))
		}),
		show.Text("help", c.Say.Fact(h.Defer)),
	)
}

// A TickRow is one item of a checklist.
type TickRow struct {
	app.Compo
	ID    string // list/item
	Words string
	On    bool
}

func (r *TickRow) Render() app.UI {
	return app.Li().Body(app.Label().Body(
		app.Input().Type("checkbox").Name("tick:"+r.ID).Checked(r.On).OnChange(r.onChange),
		app.Span().Text(r.Words)))
}

func (r *TickRow) onChange(ctx app.Context, e app.Event) { show.Send(ctx, model.Ticked{Item: r.ID}) }

// A ClearButton takes the ticks of a list away.
type ClearButton struct {
	app.Compo
	Say         say.Voice
	List, Title string
}

func (b *ClearButton) Render() app.UI {
	return app.Button().Type("button").Class("quiet").Text(b.Say.Text("lists.clear")).
		Aria("label", b.Say.Text("lists.clear_this", fact.V{"list": fact.Text(b.Title)})).OnClick(b.onClick)
}

func (b *ClearButton) onClick(ctx app.Context, e app.Event) {
	show.Send(ctx, model.TicksCleared{List: b.List})
}
