package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner/trip"
)

// Strips show the level of each tank along the trip, and in words at the
// cursor, which moves by pointer and by keys.
type Strips struct {
	app.Compo
	Plan   trip.Itinerary
	Axis   draw.Axis
	Cursor float64
	Say    say.Voice
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
	words := moment(s.Plan, at, s.Say)
	rows = append(rows, app.Div().Class("cursor").Role("slider").TabIndex(0).
		Aria("label", word.stripsLabel).Aria("describedby", "strips-help").Aria("orientation", "horizontal").
		Aria("valuemin", 0).Aria("valuemax", 1000).Aria("valuenow", int(at.X*1000)).Aria("valuetext", words).
		On("keydown", s.onKey).
		On("pointerdown", s.onPointerDown).
		On("pointermove", s.onPointerMove).
		Body(svg(cursor(at.X))))
	return app.Section().ID("strips").Class("strips").Aria("labelledby", "strips-title").Body(
		app.Div().Class("head").Body(
			app.H2().ID("strips-title").Text(word.stripsTitle),
			app.P().ID("strips-help").Class("help").Text(word.stripsHelp),
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
	return app.P().Class("legend").Body(
		app.Text(fmt.Sprintf(word.legend, 100*s.Plan.Confidence)),
		app.If(s.Plan.Care != nil && s.Plan.Care.Price >= 0.005, func() app.UI {
			format := word.care
			if s.Plan.Care.AtMost {
				format = word.careMost
			}
			return app.B().Text(" " + fmt.Sprintf(format, s.Say.Money(s.Plan.Care.Price, s.Plan.Currency)))
		}),
	)
}

func cursor(x float64) draw.Node {
	return draw.El("svg", "class", "needle", "aria-hidden", "true", "focusable", "false").With(draw.Needle(x))
}

// moment says where the cursor is.
func moment(it trip.Itinerary, at draw.Moment, v say.Voice) string {
	for i, d := range it.Days {
		if at.Min <= d.EndMin || i == len(it.Days)-1 {
			return fmt.Sprintf(word.cursorAt, v.Date(d.Date), v.Clock(at.Min), v.Mark(at.Km, -1))
		}
		if at.Min < it.Days[i+1].StartMin {
			return fmt.Sprintf(word.cursorNight, v.Date(d.Date), v.Clock(at.Min), v.Mark(at.Km, -1))
		}
	}
	return ""
}

// stepShare is how far an arrow key moves the cursor.
const stepShare = 1.0 / 120

func (s *Strips) onKey(ctx app.Context, e app.Event) {
	var msg Msg
	switch e.Get("key").String() {
	case "ArrowRight", "ArrowUp":
		msg = Stepped{stepShare}
	case "ArrowLeft", "ArrowDown":
		msg = Stepped{-stepShare}
	case "PageDown":
		msg = Skipped{1}
	case "PageUp":
		msg = Skipped{-1}
	case "Home":
		msg = PointedX{0}
	case "End":
		msg = PointedX{1}
	default:
		return
	}
	e.PreventDefault()
	send(ctx, msg)
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
	box := ctx.JSSrc().Call("getBoundingClientRect")
	if w := box.Get("width").Float(); w > 0 {
		send(ctx, PointedX{(e.Get("clientX").Float() - box.Get("left").Float()) / w})
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
		labels[i] = r.Say.ShortDate(d.Date)
	}
	picture, rows := draw.Ruler(r.Axis, r.Days, labels)
	return app.Div().Class("top", fmt.Sprintf("rows%d", rows)).Body(svg(picture))
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
		likely = fmt.Sprintf(word.likely, w.Say.Bare(draw.Headroom(w.Strip, w.Likely), w.Strip.Unit))
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
		words = fmt.Sprintf(word.stripLow, room(p.Say, p.Strip, low.L), low.Day)
	}
	return app.Div().Class("track").Body(
		svg(draw.Strip(shownIn(p.Say, p.Strip), p.Axis, p.Days)),
		app.Span().Class("unseen").Text(words),
	)
}
