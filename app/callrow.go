package page

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/trip"
)

// A CallRow is one stop of the itinerary.
type CallRow struct {
	app.Compo
	Call     trip.Call
	N        int
	Current  bool
	Made     bool // ticked off
	Next     bool // of those that are not, after one that is
	Strips   []trip.Strip
	Currency string
	Known    map[string]bool // cautions that an earlier stop has shown
	Say      say.Voice
}

func (r *CallRow) Render() app.UI {
	c := r.Call
	class := "call"
	if c.Night {
		class += " stay"
	}
	if r.Current {
		class += " current"
	}
	if r.Made {
		class += " made"
	}
	return app.Article().Class(class).ID("stop-"+strconv.Itoa(r.N)).
		Aria("labelledby", r.id("name")).
		On("mouseenter", r.onPoint).On("focusin", r.onPoint).On("click", r.onPoint).
		Body(
			app.Div().Class("when").Body(
				svg(draw.El("svg", "class", "number", "viewBox", "-11 -11 22 22", "aria-hidden", "true", "focusable", "false").With(draw.Disc(r.N, c.Night, 0, 0))),
				app.Span().Class("arrive").Body(app.Span().Class("unseen").Text(word.arrive+" "), app.Text(r.Say.Clock(c.ArriveMin))),
				app.Span().Class("leave").Body(app.Span().Class("unseen").Text(word.leave+" "), app.Text(r.Say.Clock(c.LeaveMin))),
				app.Label().Class("tickoff").Body(
					app.Input().Type("checkbox").Name("tick:"+r.tick()).Aria("label", word.made+": "+r.name()).Checked(r.Made).OnChange(r.onMade),
					app.Span().Text(word.made)),
			),
			app.Div().Class("what").Body(
				app.If(r.Next, func() app.UI { return app.P().Class("next").Text(word.next) }),
				app.H4().ID(r.id("name")).Text(r.name()),
				app.P().Class("where").Text(r.where()),
				app.P().Class("place").Body(app.Text(r.driveIn()+" "), app.Span().Class("copy").Text(position(r.entry()))),
				app.Ul().Class("tasks").Body(r.tasks()...),
				app.If(c.Fallback != "", func() app.UI {
					return app.P().Class("fallback").Body(app.B().Text(word.fallback+": "), app.Text(prose(r.Say, c.Fallback)))
				}),
				r.cautions(),
				r.facts(),
				&AvoidButton{Place: c.Place, Label: word.avoid, For: r.name()},
			),
		)
}

func (r *CallRow) id(part string) string { return fmt.Sprintf("stop-%d-%s", r.N, part) }

func (r *CallRow) name() string { return nameOf(r.Call) }

// nameOf is the place's name, or what it is where it has none.
func nameOf(c trip.Call) string {
	if c.Name != "" {
		return c.Name
	}
	return capital(kind(c.Kind))
}

// where says what the place is, where it lies and how far off.
func (r *CallRow) where() string {
	c := r.Call
	var parts []string
	if c.Name != "" {
		parts = append(parts, kind(c.Kind))
	}
	if c.Night {
		parts = append(parts, nights(c.Nights))
	}
	parts = append(parts, r.Say.Mark(c.Km, -1))
	if c.DetourKm < 0.05 {
		parts = append(parts, word.onRoute)
	} else {
		d := fmt.Sprintf(word.detour, r.Say.Km(c.DetourKm), r.Say.Span(c.DetourMin)) + " (" + word.estimate + ")"
		if c.ByRoad {
			d = fmt.Sprintf(word.byRoad, r.Say.Km(c.DetourKm), r.Say.Span(c.DetourMin))
		}
		parts = append(parts, d)
	}
	if c.Cost > 0.004 {
		parts = append(parts, r.Say.Money(c.Cost, r.Currency))
	} else {
		parts = append(parts, word.free)
	}
	return strings.Join(parts, " · ")
}

// entry is where one drives in, as far as it is known.
func (r *CallRow) entry() orb.Point {
	if e := r.Call.Entry; e != nil {
		return e.Point
	}
	return r.Call.Point
}

func (r *CallRow) driveIn() string {
	switch e := r.Call.Entry; {
	case e == nil:
		return word.at
	case e.Road == "":
		return word.driveIn
	default:
		return fmt.Sprintf(word.driveInFrom, e.Road)
	}
}

// position is latitude and longitude as satnavs take them, to a metre.
func position(p orb.Point) string { return fmt.Sprintf("%.5f, %.5f", p[1], p[0]) }

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
				app.B().Text(capital(t.Verb)+" "+r.Say.Amount(t.Amount, t.Unit)),
				app.Text(" "+s.Name),
				app.Span().Class("stayed").Text(r.stayed(s, t)),
			),
			svg(draw.Gauge(s, t.Before, t.After)),
			app.Span().Class("levels").Text(r.levels(s, t)),
			app.Span().Class("cost").Text(cost),
		))
	}
	return out
}

// stayed says how much of an amount is what the night itself uses: levels are
// those of coming and going, and more than a tankful may be filled between.
func (r *CallRow) stayed(s trip.Strip, t trip.Task) string {
	used := t.Amount - math.Abs(t.After-t.Before)
	if !r.Call.Night || used < 0.05*s.Capacity {
		return ""
	}
	return fmt.Sprintf(word.stayed, r.Say.Amount(used, t.Unit))
}

// levels says the level before and after: 20 → 58 of 75 L.
func (r *CallRow) levels(s trip.Strip, t trip.Task) string {
	return fmt.Sprintf("%s → %s %s", r.Say.Bare(t.Before, s.Unit), r.Say.Bare(t.After, s.Unit), fmt.Sprintf(word.capacityOf, r.Say.Amount(s.Capacity, s.Unit)))
}

func (r *CallRow) strip(tank string) trip.Strip {
	for _, s := range r.Strips {
		if s.Tank == tank {
			return s
		}
	}
	return trip.Strip{Tank: tank, Name: tank, Kind: planner.Supply}
}

// cautions are shown where they first come up; later they fold away, or
// nobody would read the new ones.
func (r *CallRow) cautions() app.UI {
	var fresh, known []app.UI
	for _, c := range r.Call.Cautions {
		if r.Known[c] {
			known = append(known, app.Li().Text(prose(r.Say, c)))
		} else {
			fresh = append(fresh, app.Li().Text(prose(r.Say, c)))
		}
	}
	return app.Div().Body(
		app.If(len(fresh) > 0, func() app.UI {
			return app.Div().Class("cautions").Body(app.B().Text(word.cautions), app.Ul().Body(fresh...))
		}),
		app.If(len(known) > 0, func() app.UI {
			return app.Details().Class("known").Body(
				app.Summary().Text(fmt.Sprintf(word.known, count(len(known), word.pointsToMind))),
				app.Ul().Body(known...),
			)
		}),
	)
}

// facts fold away: they are for those who doubt.
func (r *CallRow) facts() app.UI {
	return app.If(len(r.Call.Facts) > 0, func() app.UI {
		var lis []app.UI
		for _, f := range r.Call.Facts {
			lis = append(lis, app.Li().Text(prose(r.Say, f)))
		}
		return app.Details().Class("facts").Body(
			app.Summary().Text(word.facts),
			app.Ul().Body(lis...),
		)
	})
}

func (r *CallRow) tick() string { return stopTicks + "/" + r.Call.Stop }

func (r *CallRow) onMade(ctx app.Context, e app.Event) { send(ctx, Ticked{r.tick()}) }

func (r *CallRow) onPoint(ctx app.Context, e app.Event) {
	ctx.PreventUpdate()
	send(ctx, PointedMin{r.Call.ArriveMin})
}

// An AvoidButton plans without a place, or with it again.
type AvoidButton struct {
	app.Compo
	Place, Label, For string
}

func (b *AvoidButton) Render() app.UI {
	button := app.Button().Type("button").Class("quiet").Text(b.Label).OnClick(b.onClick)
	if b.For != "" {
		button = button.Aria("label", b.Label+": "+b.For)
	}
	return button
}

func (b *AvoidButton) onClick(ctx app.Context, e app.Event) { send(ctx, Avoided{b.Place}) }

func kind(k string) string {
	if w, ok := kindWords[k]; ok {
		return w
	}
	return k
}

func nights(n int) string {
	if n <= 1 {
		return word.night
	}
	return fmt.Sprintf(word.nightsMany, n)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
