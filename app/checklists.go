package page

import (
	"fmt"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/life/advice"
)

// Checklists are gone through at set-off, arrival, service and return. The
// ticks stay on this machine.
type Checklists struct {
	app.Compo
	Lists  []advice.Checklist
	HowTos []advice.HowTo
	Ticks  []string
	Say    say.Voice
}

func (c *Checklists) Render() app.UI {
	if len(c.Lists) == 0 {
		return app.Div()
	}
	body := []app.UI{app.H2().ID("checklists-title").Text(word.listsTitle), app.P().Class("help").Text(word.listsHelp)}
	for _, l := range c.Lists {
		body = append(body, c.list(l))
	}
	body = append(body, app.H2().Class("how").Text(word.howTitle))
	for _, h := range c.HowTos {
		body = append(body, howTo(h, c.Say))
	}
	return app.Section().ID("checklists").Class("more").Aria("labelledby", "checklists-title").Body(body...)
}

func (c *Checklists) list(l advice.Checklist) app.UI {
	title := c.Say.Fact(l.Title)
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
		app.Summary().Body(app.B().Text(title), app.Text(fmt.Sprintf(word.listDone, done, len(l.Items)))),
		app.Ul().Class("ticks").Body(items...),
		&ClearButton{List: l.ID, Label: word.listClear, For: title},
	)
}

// howTo is how one kind of stop is done; who decides always stands at the end.
func howTo(h advice.HowTo, v say.Voice) app.UI {
	var mind []app.UI
	for _, i := range h.Cautions {
		mind = append(mind, app.Li().Text(v.Fact(i.Says)))
	}
	var steps []app.UI
	for _, i := range h.Steps {
		steps = append(steps, app.Li().Text(v.Fact(i.Says)))
	}
	return app.Details().Class("howto").Body(
		app.Summary().Text(v.Fact(h.Title)),
		app.Ol().Class("steps").Body(steps...),
		app.If(len(mind) > 0, func() app.UI {
			return app.Div().Class("cautions").Body(app.B().Text(word.cautions), app.Ul().Body(mind...))
		}),
		text("help", v.Fact(h.Defer)),
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

func (r *TickRow) onChange(ctx app.Context, e app.Event) { send(ctx, Ticked{r.ID}) }

// A ClearButton takes the ticks of a list away.
type ClearButton struct {
	app.Compo
	List, Label, For string
}

func (b *ClearButton) Render() app.UI {
	return app.Button().Type("button").Class("quiet").Aria("label", b.Label+": "+b.For).Text(b.Label).OnClick(b.onClick)
}

func (b *ClearButton) onClick(ctx app.Context, e app.Event) { send(ctx, TicksCleared{b.List}) }
