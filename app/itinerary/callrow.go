package itinerary

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A CallRow is one stop of the itinerary.
type CallRow struct {
	app.Compo
	Say      say.Voice
	Call     trip.Call
	N        int
	Current  bool
	Made     bool // ticked off
	Next     bool // of those that are not, after one that is
	Strips   []trip.Strip
	Currency string
	Known    map[string]bool // keys of cautions that an earlier stop has shown
}

func (r *CallRow) Render() app.UI {
	class := "call"
	for _, c := range []struct {
		is   bool
		name string
	}{{r.Call.Night, " stay"}, {r.Current, " current"}, {r.Made, " made"}} {
		if c.is {
			class += c.name
		}
	}
	return app.Article().Class(class).ID("stop-"+strconv.Itoa(r.N)).
		Aria("labelledby", r.id("name")).
		On("mouseenter", r.onPoint).On("focusin", r.onPoint).On("click", r.onPoint).
		Body(r.when(), r.what())
}

// when is the number of the stop, its times, and the tick.
func (r *CallRow) when() app.UI {
	c := r.Call
	return app.Div().Class("when").Body(
		show.SVG(draw.El("svg", "class", "number", "viewBox", "-11 -11 22 22", "aria-hidden", "true", "focusable", "false").With(draw.Disc(draw.Number{N: r.N, Call: c}, 0, 0))),
		app.Span().Class("arrive").Body(app.Span().Class("unseen").Text(r.Say.Text("stop.arrive")+" "), app.Text(r.Say.Clock(c.ArriveMin))),
		app.Span().Class("leave").Body(app.Span().Class("unseen").Text(r.Say.Text("stop.leave")+" "), app.Text(r.Say.Clock(c.LeaveMin))),
		app.Label().Class("tickoff").Body(
			app.Input().Type("checkbox").Name("tick:"+r.tick()).Aria("label", r.Say.Text("stop.done_at", fact.V{"place": fact.Text(r.name())})).Checked(r.Made).OnChange(r.onMade),
			app.Span().Text(r.Say.Text("stop.done"))),
	)
}

// what is the place, and what to do there.
func (r *CallRow) what() app.UI {
	c := r.Call
	return app.Div().Class("what").Body(
		app.If(r.Next, func() app.UI { return app.P().Class("next").Text(r.Say.Text("stop.next")) }),
		app.H4().ID(r.id("name")).Text(r.name()),
		app.P().Class("where").Text(r.where()),
		app.If(!c.Here.Nothing(), func() app.UI {
			return app.P().Class("here").Text(r.Say.Text("stop.here", fact.V{"why": fact.Clause(c.Here)}))
		}),
		app.P().Class("place").Body(app.Text(r.entrance()+" "), r.position()),
		app.Range(c.Notes).Slice(func(i int) app.UI {
			n := c.Notes[i]
			return app.P().Class("place").Text(r.Say.Text("sheet.note", fact.V{"date": n.When.Says(), "who": fact.Text(n.Who), "text": fact.Text(n.Text)}))
		}),
		r.contact(),
		app.Ul().Class("tasks").Body(r.tasks()...),
		app.If(len(c.Fallback) > 0, func() app.UI {
			return app.P().Class("fallback").Body(app.B().Text(r.Say.Text("stop.if_closed")+" "), app.Text(strings.Join(r.Say.Facts(c.Fallback), "; ")))
		}),
		r.cautions(),
		r.facts(),
		&AvoidButton{Place: c.Place, Label: r.Say.Text("stop.avoid"), Name: r.Say.Text("stop.avoid_this", fact.V{"place": fact.Text(r.name())})},
	)
}

func (r *CallRow) id(part string) string { return fmt.Sprintf("stop-%d-%s", r.N, part) }

func (r *CallRow) name() string { return show.Called(r.Say, r.Call) }

// where says what the place is, where it lies and how far off.
func (r *CallRow) where() string {
	c := r.Call
	var parts []string
	if c.Name != "" {
		parts = append(parts, r.Say.Place(string(c.Kind)))
	}
	if c.Night {
		parts = append(parts, show.Nights(r.Say, c.Nights))
	}
	parts = append(parts, r.Say.Mark(c.Km, -1), r.detour())
	if c.Cost > 0.004 {
		parts = append(parts, r.Say.Money(c.Cost, r.Currency))
	} else {
		parts = append(parts, r.Say.Text("stop.free"))
	}
	return strings.Join(parts, " · ")
}

// detour says how far off the route the place is.
func (r *CallRow) detour() string {
	c := r.Call
	v := fact.V{"km": fact.Km(c.DetourKm, -1), "time": fact.Span(c.DetourMin)}
	switch {
	case c.DetourKm < trip.BesideKm, c.ByRoad && c.DetourKm/2 < trip.BesideKm && c.DetourMin < 0.5:
		return r.Say.Text("stop.on_route")
	case !c.ByRoad:
		return r.Say.Text("stop.detour_about", v)
	case c.DetourMin < 0.5:
		return r.Say.Text("stop.beside", fact.V{"km": fact.Km(c.DetourKm/2, -1)})
	}
	return r.Say.Text("stop.detour", v)
}

// entrance says where one drives in, as far as it is known.
func (r *CallRow) entrance() string {
	switch e := r.Call.Entry; {
	case e == nil:
		return r.Say.Text("stop.at")
	case e.Road == "":
		return r.Say.Text("stop.entrance")
	default:
		return r.Say.Text("stop.entrance_from", fact.V{"road": fact.Text(e.Road)})
	}
}

// position is a link that a device opens in its own map (RFC 5870). Latitude and
// longitude stand as satnavs take them, to a metre.
func (r *CallRow) position() app.UI {
	p := entry(r.Call)
	text := fmt.Sprintf("%.5f, %.5f", p[1], p[0])
	return app.A().Class("copy").Href(fmt.Sprintf("geo:%.5f,%.5f", p[1], p[0])).Title(r.Say.Text("stop.opens")).Text(text)
}

// contact is how to ask the place, each a link that a device opens.
func (r *CallRow) contact() app.UI {
	c := r.Call.Contact
	body := []app.UI{app.Text(r.Say.Text("stop.ask"))}
	for _, x := range []struct{ scheme, text string }{{"tel:", c.Phone}, {"mailto:", c.Email}, {"", c.Website}} {
		if x.text != "" {
			href := x.scheme + x.text
			if x.scheme == "tel:" {
				href = x.scheme + strings.Map(dialled, x.text)
			}
			body = append(body, app.Text(" "), app.A().Href(href).Rel("noopener noreferrer").Text(strings.TrimPrefix(strings.TrimPrefix(x.text, "https://"), "http://")))
		}
	}
	return app.If(len(body) > 1, func() app.UI { return app.P().Class("place contact").Body(body...) })
}

// dialled drops what parts the digits of a number (RFC 3966).
func dialled(r rune) rune {
	if r == '+' || r >= '0' && r <= '9' {
		return r
	}
	return -1
}

// entry is where one drives in, or the place itself.
func entry(c trip.Call) orb.Point {
	if c.Entry != nil {
		return c.Entry.Point
	}
	return c.Point
}

// tasks say what to do, how much, and the level before and after.
func (r *CallRow) tasks() []app.UI {
	var out []app.UI
	for _, t := range r.Call.Tasks {
		s := r.strip(t.Tank)
		cost := ""
		if t.Cost > 0.004 {
			cost = r.Say.Money(t.Cost, r.Currency)
		}
		out = append(out, app.Li().Class(string(s.Kind)).Body(
			app.Span().Class("do").Body(
				app.B().Text(show.When(r.Say, r.Call, t, show.Task(r.Say, t, s.Name))),
			),
			show.SVG(draw.Gauge(s, t.Before, t.After)),
			app.Span().Class("levels").Text(r.Say.Text("stop.levels", fact.V{
				"before": fact.Text(r.Say.Bare(t.Before, s.Unit)), "after": fact.Text(r.Say.Bare(t.After, s.Unit)), "capacity": fact.Quantity(s.Capacity, s.Unit, -1)})),
			app.Span().Class("cost").Text(cost),
		))
	}
	return out
}

func (r *CallRow) strip(tank string) trip.Strip { return stripOf(r.Strips, tank) }

// stripOf is the strip of a tank; one that is not there has no room.
func stripOf(strips []trip.Strip, tank string) trip.Strip {
	for _, s := range strips {
		if s.Tank == tank {
			return s
		}
	}
	return trip.Strip{Tank: tank, Kind: planner.Supply}
}

// cautions are shown where they first come up; later they fold away, or
// nobody would read the new ones.
func (r *CallRow) cautions() app.UI {
	var fresh, known []string
	for _, c := range r.Call.Cautions {
		if r.Known[c.Key()] {
			known = append(known, r.Say.Fact(c))
		} else {
			fresh = append(fresh, r.Say.Fact(c))
		}
	}
	return app.Div().Body(
		app.If(len(fresh) > 0, func() app.UI {
			return app.Div().Class("cautions").Body(app.B().Text(r.Say.Text("stop.cautions")), app.Ul().Body(show.Lines(fresh)...))
		}),
		app.If(len(known) > 0, func() app.UI {
			return app.Details().Class("known").Body(
				app.Summary().Text(r.Say.Text("stop.known", fact.V{"n": fact.Count(len(known))})),
				app.Ul().Body(show.Lines(known)...),
			)
		}),
	)
}

// facts fold away: they are for those who doubt.
func (r *CallRow) facts() app.UI {
	return app.If(len(r.Call.Facts) > 0, func() app.UI {
		return app.Details().Class("facts").Body(
			app.Summary().Text(r.Say.Text("stop.facts")),
			app.Ul().Body(show.Lines(r.Say.Facts(r.Call.Facts))...),
		)
	})
}

func (r *CallRow) tick() string { return model.StopTicks + "/" + r.Call.Stop }

func (r *CallRow) onMade(ctx app.Context, e app.Event) { show.Send(ctx, model.Ticked{Item: r.tick()}) }

func (r *CallRow) onPoint(ctx app.Context, e app.Event) {
	ctx.PreventUpdate()
	show.Send(ctx, model.PointedMin{Min: r.Call.ArriveMin})
}
