package form

import (
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/field"
	"ullage/app/model"
	"ullage/app/show"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A RoadPanel is for the hirer on the road: where, when, gauges and closed
// places, and then a plan from here.
type RoadPanel struct {
	app.Compo
	Road Road
}

func (p *RoadPanel) Render() app.UI {
	m := p.Road
	return app.Section().ID("road").Class("road").Aria("label", m.Say.Text("onroad.title")).Body(
		app.If(m.Report != nil, p.form),
		app.If(len(m.News) > 0, func() app.UI {
			return app.Div().Class("news").Body(app.H3().Text(m.Say.Text("onroad.news")), app.Ul().Body(show.Lines(m.Say.Facts(m.News))...))
		}),
		app.If(m.Back && m.Report == nil, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(m.Say.Text("onroad.back")).OnClick(p.onBack)
		}),
	)
}

func (p *RoadPanel) form() app.UI {
	m := p.Road
	return app.Form().ID("road-form").Class("form").Aria("label", m.Say.Text("onroad.title")).OnSubmit(p.onGo).Body(
		app.P().Class("help").Text(m.Say.Text("onroad.help")),
		group(m.Say.Text("onroad.here"), append([]app.UI{p.device()}, p.here()...)),
		app.If(len(m.Visits) > 0, func() app.UI { return group(m.Say.Text("onroad.behind"), p.behind()) }),
		group(m.Say.Text("onroad.gauges"), p.gauges()),
		group(m.Say.Text("onroad.shut"), p.closed()),
		app.If(!m.Report.Wrong.Nothing(), func() app.UI {
			return app.P().Class("trouble").Role("alert").Text(m.Say.Fact(m.Report.Wrong))
		}),
		app.Button().ID("road-go").Type("submit").Class("main").Text(m.Say.Text("onroad.go")).Disabled(!m.Ready),
	)
}

// device asks the device where it is, if somebody wishes so.
func (p *RoadPanel) device() app.UI {
	r, v := p.Road.Report, p.Road.Say
	said := v.Fact(r.Device)
	if r.Asking {
		said = v.Text("onroad.asking")
	}
	return app.Div().Class("field wide").Body(
		app.Button().ID("here").Type("button").Text(v.Text("onroad.ask")).OnClick(p.onHere),
		app.P().Class("hint").Text(v.Text("onroad.ask_help")),
		app.P().ID("here-said").Class("hint").Role("status").Text(said),
		app.If(!r.Lost.Nothing(), func() app.UI {
			return app.P().ID("here-lost").Class("trouble").Role("alert").Text(v.Fact(r.Lost))
		}),
	)
}

// control is one whose text is what was said.
func (p *RoadPanel) control(key, input, label string) *Control {
	return &Control{Key: key, Input: input, Label: label, Value: p.Road.Report.Said[key]}
}

// choice is a control with options over the whole width.
func (p *RoadPanel) choice(key, label string, options []field.Option) *Control {
	c := p.control(key, "select", label)
	c.Options, c.Wide = options, true
	return c
}

// tick is a control that is on, "true", or off.
func (p *RoadPanel) tick(key, label, value string) *Control {
	c := p.control(key, "checkbox", label)
	c.Value, c.Wide = value, true
	return c
}

// stop names a stop and its place on the route.
func (p *RoadPanel) stop(c trip.Call) string {
	return show.Called(p.Road.Say, c) + " · " + p.Road.Say.Mark(c.Km, -1)
}

func (p *RoadPanel) here() []app.UI {
	m := p.Road
	stops := []field.Option{{Value: "", Label: m.Say.Text("onroad.between")}}
	for i, c := range model.Calls(m.Plan) {
		n := strconv.Itoa(i + 1)
		stops = append(stops, field.Option{Value: n, Label: n + " · " + p.stop(c)})
	}
	km := p.control(model.RoadKm, "number", m.Say.Text("onroad.km"))
	km.Unit = m.Say.Symbol("km")
	if km.Hint = m.Say.Text("onroad.map"); m.Report.At != nil {
		km.Hint = m.Say.Text("onroad.mapped")
	}
	return []app.UI{p.choice(model.RoadWhere, m.Say.Text("onroad.where"), stops), km, p.control(model.RoadTime, "datetime-local", m.Say.Text("onroad.time"))}
}

// behind are the stops here and behind, to say which were called at.
func (p *RoadPanel) behind() []app.UI {
	m := p.Road
	out := []app.UI{app.P().Class("help field wide").Text(m.Say.Text("onroad.behind_help"))}
	for _, v := range m.Visits {
		c := v.Call
		var does []string
		for _, t := range c.Tasks {
			does = append(does, show.Task(m.Say, t, tankName(m.Tanks, t.Tank)))
		}
		if c.Night {
			does = append(does, show.Nights(m.Say, c.Nights))
		}
		out = append(out, p.tick(model.RoadMade+c.Stop, p.stop(c)+" · "+strings.Join(does, ", "), strconv.FormatBool(v.Made)))
	}
	return out
}

func tankName(tanks []trip.Tank, id string) string {
	for _, k := range tanks {
		if k.ID == id {
			return k.Name
		}
	}
	return ""
}

// gauges have a kind for each tank, and what the gauge shows if there is one.
func (p *RoadPanel) gauges() []app.UI {
	v := p.Road.Say
	var out []app.UI
	for _, k := range p.Road.Tanks {
		kind := p.choice(model.RoadKind+k.ID, v.Value(fact.Text(k.Name)), []field.Option{
			{Value: "", Label: v.Text("gauge.none")}, {Value: life.LitreGauge, Label: v.Symbol(k.Unit)}, {Value: life.PercentGauge, Label: "%"}, {Value: life.QuarterGauge, Label: v.Text("gauge.quarters")}, {Value: life.LampGauge, Label: v.Text("gauge.lamp")}})
		kind.Wide = false
		out = append(out, kind, p.reading(k))
	}
	return out
}

// reading is the control of what a gauge shows, by its kind.
func (p *RoadPanel) reading(k trip.Tank) app.UI {
	v := p.Road.Say
	c := p.control(model.RoadValue+k.ID, "number", v.Text("gauge.shows", fact.V{"tank": fact.Tank(k.ID, k.Name)}))
	switch p.Road.Report.Said[model.RoadKind+k.ID] {
	case life.LitreGauge:
		c.Unit = v.Symbol(k.Unit)
	case life.PercentGauge:
		c.Unit = "%"
	case life.QuarterGauge:
		c.Input, c.Options = "select", field.Options(v, "quarters.", "", "0", "1", "2", "3", "4")
	case life.LampGauge:
		c.Input, c.Options = "select", field.Options(v, "lamp.", "", "1", "0")
	default:
		return app.Div()
	}
	return c
}

// closed are the stops ahead to tick, and a list of others.
func (p *RoadPanel) closed() []app.UI {
	m := p.Road
	names, shown := map[string]string{}, map[string]bool{}
	others := []field.Option{{Value: "", Label: m.Say.Text("onroad.no_other")}}
	for _, c := range m.Plan.Places {
		names[c.Place] = c.Name
		if !c.Chosen && c.Excluded == nil && c.Km >= m.Km && c.Km < m.Km+aheadKm && c.Name != "" {
			others = append(others, field.Option{Value: c.Place, Label: c.Name + " · " + m.Say.Mark(c.Km, -1)})
		}
	}
	var out []app.UI
	tick := func(place, label string) {
		if !shown[place] {
			shown[place] = true
			out = append(out, p.tick(model.RoadClosed+place, label, strconv.FormatBool(slices.Contains(m.Report.Closed, place))))
		}
	}
	for _, c := range model.Calls(m.Plan) {
		if c.Km >= m.Km {
			tick(c.Place, p.stop(c))
		}
	}
	for _, id := range m.Report.Closed {
		tick(id, names[id])
	}
	return append(out, p.choice(model.RoadOther, m.Say.Text("onroad.other"), others))
}

// aheadKm is how far ahead places are listed.
const aheadKm = 120

func (p *RoadPanel) onGo(ctx app.Context, e app.Event) {
	e.PreventDefault()
	show.Send(ctx, model.WentOn{})
}

func (p *RoadPanel) onHere(ctx app.Context, e app.Event) { show.Send(ctx, model.HereAsked{}) }

func (p *RoadPanel) onBack(ctx app.Context, e app.Event) { show.Send(ctx, model.WentBack{}) }
