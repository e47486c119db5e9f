package strip

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/draw"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Strips show the level of each tank along the trip, and in words at the
// cursor, which moves by pointer and by keys.
type Strips struct {
	app.Compo
	Say    say.Voice
	Plan   trip.Itinerary
	Axis   draw.Axis
	Cursor float64
}

func (s *Strips) Render() app.UI {
	at := s.Axis.AtMin(s.Cursor)
	rows := []app.UI{&StripRuler{Say: s.Say, Axis: s.Axis, Days: s.Plan.Days}}
	for _, strip := range s.Plan.Strips {
		rows = append(rows,
			s.words(strip),
			&StripPicture{Say: s.Say, Strip: strip, Axis: s.Axis, Days: s.Plan.Days},
		)
	}
	words := moment(s.Say, s.Plan, at)
	rows = append(rows, app.Div().Class("cursor").Role("slider").TabIndex(0).
		Aria("label", s.Say.Text("strips.label")).Aria("describedby", "strips-help").Aria("orientation", "horizontal").
		Aria("valuemin", 0).Aria("valuemax", 1000).Aria("valuenow", int(at.X*1000)).Aria("valuetext", words).
		On("keydown", s.onKey).
		On("pointerdown", s.onPointerDown).
		On("pointermove", s.onPointerMove).
		Body(show.SVG(cursor(at.X))))
	return app.Section().ID("strips").Class("strips").Aria("labelledby", "strips-title").Body(
		app.Div().Class("head").Body(
			app.H2().ID("strips-title").Text(s.Say.Text("strips.title")),
			app.P().ID("strips-help").Class("help").Text(s.Say.Text("strips.help")),
			app.P().Class("moment").Text(words),
		),
		app.Div().Class("tracks").Body(rows...),
		s.legend(),
	)
}

func (s *Strips) words(strip trip.Strip) app.UI {
	w := &StripWords{Say: s.Say, Strip: strip, Level: draw.LevelAt(strip, s.Cursor)}
	w.Likely, w.Band = draw.LikelyAt(strip, s.Cursor)
	return w
}

// legend says what the band is, and what the caution costs. That comes after
// the plan: the style sheet keeps room for it.
func (s *Strips) legend() app.UI {
	care := ""
	if c := s.Plan.Care; c != nil && c.Price >= 0.005 {
		care = s.Say.Text("strips.care", fact.V{"sum": fact.Money(c.Price, s.Plan.Currency)})
		if c.AtMost {
			care = s.Say.Text("strips.care_most", fact.V{"sum": fact.Money(c.Price, s.Plan.Currency)})
		}
	}
	return app.P().Class("legend").Body(
		app.Text(s.Say.Text("strips.legend", show.Times(s.Plan.Confidence))),
		app.If(care != "", func() app.UI { return app.B().Text(" " + care) }),
	)
}

func cursor(x float64) draw.Node {
	return draw.El("svg", "class", "needle", "aria-hidden", "true", "focusable", "false").With(draw.Needle(x))
}

// stepShare is how far an arrow key moves the cursor.
const stepShare = 1.0 / 120

func (s *Strips) onKey(ctx app.Context, e app.Event) {
	var msg model.Msg
	switch e.Get("key").String() {
	case "ArrowRight", "ArrowUp":
		msg = model.Stepped{By: stepShare}
	case "ArrowLeft", "ArrowDown":
		msg = model.Stepped{By: -stepShare}
	case "PageDown":
		msg = model.Skipped{By: 1}
	case "PageUp":
		msg = model.Skipped{By: -1}
	case "Home":
		msg = model.PointedX{X: 0}
	case "End":
		msg = model.PointedX{X: 1}
	default:
		return
	}
	e.PreventDefault()
	show.Send(ctx, msg)
}

func (s *Strips) onPointerDown(ctx app.Context, e app.Event) {
	ctx.JSSrc().Call("setPointerCapture", e.Get("pointerId"))
	s.point(ctx, e)
}

// onPointerMove follows a mouse without a button and a finger that is down.
func (s *Strips) onPointerMove(ctx app.Context, e app.Event) {
	ctx.PreventUpdate()
	s.point(ctx, e)
}

func (s *Strips) point(ctx app.Context, e app.Event) {
	if x, ok := browser.Across(ctx.JSSrc(), e.Value); ok {
		show.Send(ctx, model.PointedX{X: x})
	}
}

// A StripRuler names days and stops above the strips.
type StripRuler struct {
	app.Compo
	Say  say.Voice
	Axis draw.Axis
	Days []trip.Day
}

func (r *StripRuler) Render() app.UI {
	labels := make([]string, len(r.Days))
	for i, d := range r.Days {
		labels[i] = r.Say.ShortDate(string(d.Date))
	}
	picture, rows := draw.Ruler(r.Axis, r.Days, labels)
	return app.Div().Class("top", fmt.Sprintf("rows%d", rows)).Body(show.SVG(picture))
}

// StripWords is the name of a tank and what is in it at the cursor.
type StripWords struct {
	app.Compo
	Say    say.Voice
	Strip  trip.Strip
	Level  float64
	Likely float64
	Band   bool // there is a likely level
}

func (w *StripWords) Render() app.UI {
	likely := ""
	if w.Band {
		likely = w.Say.Text("strips.expect", fact.V{"amount": fact.Quantity(draw.Headroom(w.Strip, w.Likely), w.Strip.Unit, -1)})
	}
	return app.Div().Class("tank", string(w.Strip.Kind)).Body(
		app.H3().Body(app.Text(w.Strip.Name+" "), app.Span().Class("of").Text(w.Say.Amount(w.Strip.Capacity, w.Strip.Unit))),
		app.P().Class("now").Text(room(w.Say, w.Strip, w.Level)),
		app.P().Class("likely").Text(likely),
	)
}

// A StripPicture is the strip itself, and its lowest point in words.
type StripPicture struct {
	app.Compo
	Say   say.Voice
	Strip trip.Strip
	Axis  draw.Axis
	Days  []trip.Day
}

func (p *StripPicture) Render() app.UI {
	words := ""
	if low, ok := draw.Lowest(p.Strip); ok {
		words = p.Say.Text("strips.low", fact.V{"room": fact.Text(room(p.Say, p.Strip, low.L)), "n": fact.Count(low.Day)})
	}
	return app.Div().Class("track").Body(
		show.SVG(draw.Strip(shown(p.Say, p.Strip), p.Axis, p.Days)),
		app.Span().Class("unseen").Text(words),
	)
}
