package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/planner/fact"
)

// A Notice says what this device does not keep, or no longer has, and what to do.
type Notice struct {
	app.Compo
	Say     say.Voice
	Keeping model.Keeping
}

func (n *Notice) Render() app.UI {
	var lines []app.UI
	if n.Keeping.Forgets {
		lines = append(lines, app.P().Text(n.Say.Text("kept.forgets")))
	}
	for _, m := range n.Keeping.Missing {
		key := "kept.missing"
		if m.Full {
			key = "kept.full"
		}
		lines = append(lines, app.P().Text(n.Say.Text(key, fact.V{"file": fact.Text(m.Name)})))
	}
	return app.Div().ID("notice").Class("notice").Role("status").Body(lines...)
}

// keptOffers are what another tab, or another version, asks a person to decide.
func keptOffers(m model.Model) []app.UI {
	var out []app.UI
	if m.Keeping.Overtaken {
		out = append(out, &Offer{ID: "overtaken", Text: m.Say.Text("kept.overtaken"),
			Do: m.Say.Text("kept.take_over"), Msg: model.TakeOver{}, Or: m.Say.Text("kept.copy"), Alt: model.GoOnAsCopy{}})
	}
	for i, u := range m.Unread {
		if !u.Set {
			out = append(out, &Offer{ID: fmt.Sprintf("unread-%d", i), Text: m.Say.Fact(u.Says),
				Do: m.Say.Text("kept.save_unread"), Msg: model.UnreadSaved{ID: u.ID}, Or: m.Say.Text("kept.fresh"), Alt: model.FreshAsked{}})
		}
	}
	return out
}

// Kept says how much this device keeps, and what else there is beside the trip.
type Kept struct {
	app.Compo
	Say     say.Voice
	Keeping model.Keeping
}

func (k *Kept) Render() app.UI {
	v, kept := k.Say, k.Keeping
	if kept.Forgets {
		return app.Div()
	}
	body := []app.UI{app.If(kept.Most > 0, func() app.UI {
		return app.P().ID("room").Text(v.Text("kept.room", fact.V{"bytes": megabytes(kept.Used), "bytes_free": megabytes(kept.Most - kept.Used)}))
	})}
	for _, d := range kept.Desks {
		name := d.Name
		if name == "" {
			name = v.Text("trip.title")
		}
		body = append(body, app.P().Class("desk").Body(app.Text(v.Text("kept.other", fact.V{"name": fact.Text(say.Quoted(name))})+" "),
			&Press{Text: v.Text("kept.open"), Msg: model.DeskOpened{ID: d.ID}},
			&Press{Text: v.Text("kept.remove"), Msg: model.DeskRemoved{ID: d.ID}}))
	}
	for _, u := range kept.Unread {
		if u.Set {
			body = append(body, app.P().Class("desk").Body(app.Text(v.Fact(u.Says)+" "),
				&Press{Text: v.Text("kept.save_unread"), Msg: model.UnreadSaved{ID: u.ID}}))
		}
	}
	body = append(body, &Press{Text: v.Text("kept.everything"), Msg: model.EverythingAsked{}})
	return app.Div().ID("kept").Class("kept").Body(body...)
}

// megabytes is a size as people say it.
func megabytes(bytes float64) fact.Value {
	switch mb := max(bytes, 0) / 1e6; {
	case mb >= 1000:
		return fact.Quantity(mb/1000, "GB", 1)
	case mb >= 10:
		return fact.Quantity(mb, "MB", 0)
	default:
		return fact.Quantity(mb, "MB", 1)
	}
}
