package page

import (
	"fmt"
	"math"
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/byroad"
)

// This file offers other ways between two points of a route being drawn. To
// take one sets a point on it, which can be moved and taken back as any other.

// OtherWays are ways that one may like better than the one that a draft takes.
type OtherWays struct {
	Leg   int  // from point Leg to the next, counted from 0
	Pair  pair // these points
	Known bool // they have been looked for
	List  [][2]byroad.Leg
}

// leg is the leg that is spoken of: to the point that is chosen, else the last;
// -1 if there is none.
func (d Draft) leg() int {
	switch n := len(d.Points); {
	case n < 2:
		return -1
	case d.Chosen > 0:
		return max(d.Chosen-2, 0)
	default:
		return n - 2
	}
}

// forget drops the legs of a draft: they are of other roads, or for another
// vehicle.
func (m Model) forget() Model {
	m.Legs = nil
	if m.Draft != nil && m.Draft.Ways != nil {
		d := *m.Draft
		d.Ways = nil
		m.Draft = &d
	}
	return m
}

// otherWays applies a message about other ways.
func otherWays(m Model, msg Msg) Model {
	d := *m.Draft
	switch msg := msg.(type) {
	case WaysAsked:
		if i := d.leg(); i >= 0 {
			d.Ways = &OtherWays{Leg: i, Pair: pair{d.Points[i], d.Points[i+1]}}
		}
	case WaysFound:
		if d.Ways == nil || d.Ways.Pair != msg.Pair || msg.Vehicle != sizeOf(m.Trip.Vehicle) {
			return m
		}
		if !msg.OK { // something else was asked for
			d.Ways = nil
			break
		}
		ways := OtherWays{Leg: d.Ways.Leg, Pair: msg.Pair, Known: true}
		for i := 1; i < len(msg.Legs); i += 2 {
			ways.List = append(ways.List, [2]byroad.Leg{msg.Legs[i-1], msg.Legs[i]})
		}
		d.Ways = &ways
	case WayTaken:
		if d.Ways == nil || msg.Index < 0 || msg.Index >= len(d.Ways.List) {
			return m
		}
		way := d.Ways.List[msg.Index]
		via := way[1].Line[0]
		m.Legs = m.Legs.with([]pair{{d.Ways.Pair[0], via}, {via, d.Ways.Pair[1]}}, way[:])
		m.Draft = d.insert(d.Ways.Leg+1, via)
		return m
	}
	m.Draft = &d
	return m
}

type (
	// WaysAsked: other ways of a leg of the draft are wanted.
	WaysAsked struct{}
	// WaysFound: two legs for each, for a vehicle of that size; not OK if the
	// question was not answered.
	WaysFound struct {
		Vehicle size
		Pair    pair
		Legs    []byroad.Leg
		OK      bool
	}
	// WayTaken: the draft goes one of them.
	WayTaken struct{ Index int }
)

func (WaysAsked) isMsg() {}
func (WaysFound) isMsg() {}
func (WayTaken) isMsg()  {}

// findOthers asks for the other ways that the draft wants.
func (p *Page) findOthers(ctx app.Context) {
	d := p.m.Draft
	if d == nil || d.Ways == nil || d.Ways.Known {
		return
	}
	of, vehicle := d.Ways.Pair, sizeOf(p.m.Trip.Vehicle)
	asked := p.ways.ask([]pair{of}, true, func(legs []byroad.Leg, ok bool) {
		ctx.Dispatch(func(ctx app.Context) {
			p.following = false
			p.tell(ctx, WaysFound{vehicle, of, legs, ok})
		})
	})
	if p.following = asked; !asked { // the roads are being read anew
		p.tell(ctx, WaysFound{Vehicle: vehicle, Pair: of})
	}
}

// wayLetter names a way on the map and in its button.
func wayLetter(i int) string { return string(rune('A' + i)) }

// wayWords say by which road a way goes and how much more than the leg it is.
func wayWords(i int, way [2]byroad.Leg, than byroad.Leg, v say.Voice) string {
	words := wayLetter(i)
	if way[0].By != "" {
		words = fmt.Sprintf(word.byWay, words, way[0].By)
	}
	km, min := (way[0].M+way[1].M-than.M)/1000, (way[0].S+way[1].S-than.S)/60
	return fmt.Sprintf(word.wayMore, words, signed(km, v.Km), signed(min, v.Span))
}

func signed(v float64, words func(float64) string) string {
	if v < 0 {
		return "−" + words(-v)
	}
	return "+" + words(math.Abs(v))
}

// otherWaysBar has the button that asks, or what was found.
func (b *DraftBar) otherWaysBar() app.UI {
	i := b.Draft.leg()
	if i < 0 || i >= len(b.Legs) || b.Legs[i].Drawn || b.Legs[i].M == 0 {
		return app.Text("")
	}
	w := b.Draft.Ways
	if w == nil || !w.Known {
		return app.Button().ID("other-ways").Type("button").Text(fmt.Sprintf(word.otherWays, i+1, i+2)).Disabled(w != nil).OnClick(b.onWays)
	}
	if len(w.List) == 0 {
		return app.P().Class("ways").Text(fmt.Sprintf(word.noOtherWays, i+1, i+2))
	}
	var buttons []app.UI
	for k, way := range w.List {
		buttons = append(buttons, app.Button().Type("button").Text(wayWords(k, way, b.Legs[i], b.Say)).
			OnClick(func(ctx app.Context, e app.Event) { send(ctx, WayTaken{k}) }, app.EventScope(k)))
	}
	return app.Div().Class("ways").Role("group").Aria("label", fmt.Sprintf(word.otherWays, i+1, i+2)).Body(buttons...)
}

func (b *DraftBar) onWays(ctx app.Context, e app.Event) { send(ctx, WaysAsked{}) }

// othersData has the other ways that are offered, as one line each, and its
// letter at the point that would be set.
func othersData(d *Draft) string {
	if d == nil || d.Ways == nil {
		return collection()
	}
	var out []mapFeature
	for i, way := range d.Ways.List {
		line := slices.Concat(way[0].Line, way[1].Line)
		out = append(out, lineFeature(line, props{"index": i}), pointFeature(way[1].Line[0], props{"letter": wayLetter(i)}))
	}
	return collection(out...)
}
