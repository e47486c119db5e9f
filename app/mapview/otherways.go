package mapview

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// otherWays has the button that asks for other ways of a leg, or what was found.
func otherWays(v say.Voice, d model.Draft, legs []byroad.Leg) app.UI {
	i := d.Leg()
	if i < 0 || i >= len(legs) || legs[i].Drawn || legs[i].M == 0 {
		return app.Text("")
	}
	between := fact.V{"n": fact.Count(i + 1), "next": fact.Count(i + 2)}
	title := v.Text("draw.other_ways", between)
	if d.Ways == nil || !d.Ways.Known {
		return app.Button().ID("other-ways").Type("button").Text(title).Disabled(d.Ways != nil).OnClick(onWays)
	}
	if len(d.Ways.List) == 0 {
		return app.P().Class("ways").Text(v.Text("draw.no_other_ways", between))
	}
	var buttons []app.UI
	for k, way := range d.Ways.List {
		buttons = append(buttons, &WayButton{Say: v, Index: k, Way: way, Than: legs[i]})
	}
	return app.Div().Class("ways").Role("group").Aria("label", title).Body(buttons...)
}

func onWays(ctx app.Context, e app.Event) { show.Send(ctx, model.WaysAsked{}) }

// A WayButton takes one of the other ways.
type WayButton struct {
	app.Compo
	Say   say.Voice
	Index int
	Way   [2]byroad.Leg
	Than  byroad.Leg // the leg as it is
}

func (b *WayButton) Render() app.UI {
	return app.Button().Type("button").Text(b.words()).OnClick(b.onTake)
}

// words say by which road the way goes and how much more than the leg it is.
func (b *WayButton) words() string {
	km, min := (b.Way[0].M+b.Way[1].M-b.Than.M)/1000, (b.Way[0].S+b.Way[1].S-b.Than.S)/60
	return b.Say.Text("draw.way", fact.V{
		"letter": fact.Text(wayLetter(b.Index)), "road": fact.Text(b.Way[0].By),
		"more_km": fact.Text(signed(km, b.Say.Km)), "more_time": fact.Text(signed(min, b.Say.Span)),
	})
}

func signed(v float64, words func(float64) string) string {
	if v < 0 {
		return "−" + words(-v)
	}
	return "+" + words(v)
}

func (b *WayButton) onTake(ctx app.Context, e app.Event) {
	show.Send(ctx, model.WayTaken{Index: b.Index})
}
