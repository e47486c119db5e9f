package page

import (
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A RoadPanel is for the hirer on the road: where, when, gauges and closed
// places, and then a plan from here.
type RoadPanel struct {
	app.Compo
	Model roadModel
}

type roadModel struct {
	Plan   trip.Itinerary
	Report *Report // nil: the panel is shut
	Tanks  []trip.Tank
	Visits []visit // here and behind
	News   []string
	Back   bool // the last plan from the road can be taken back
	Ready  bool // the plan is one of the trip
	Say    say.Voice
}

func roadOf(m Model) roadModel {
	out := roadModel{m.Plan, m.Report, m.Trip.Vehicle.Tanks, nil, m.News, m.Before != nil, m.HasPlan() && m.Shown == m.Wanted, m.Say}
	if m.Report != nil {
		out.Visits = m.Report.visits(m)
	}
	if len(out.News) == 0 {
		out.News = learnt(m.Plan)
	}
	return out
}

func (p *RoadPanel) Render() app.UI {
	m := p.Model
	return app.Section().ID("road").Class("road").Aria("label", word.roadTitle).Body(
		app.If(m.Report != nil, p.form),
		app.If(len(m.News) > 0, func() app.UI {
			return app.Div().Class("news").Body(app.H3().Text(word.roadNews), app.Ul().Body(lines(proses(m.Say, m.News))...))
		}),
		app.If(m.Back && m.Report == nil, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(word.roadBack).OnClick(p.onBack)
		}),
	)
}

func (p *RoadPanel) form() app.UI {
	m := p.Model
	return app.Form().ID("road-form").Class("form").Aria("label", word.roadTitle).OnSubmit(p.onGo).Body(
		app.P().Class("help").Text(word.roadHelp),
		group(word.roadHere, append([]app.UI{p.device()}, p.here()...)),
		app.If(len(m.Visits) > 0, func() app.UI { return group(word.roadBehind, p.behind()) }),
		group(word.roadGauges, p.gauges()),
		group(word.roadShut, p.closed()),
		app.If(m.Report.Wrong != "", func() app.UI { return app.P().Class("trouble").Role("alert").Text(prose(m.Say, m.Report.Wrong)) }),
		app.Button().ID("road-go").Type("submit").Class("main").Text(word.roadGo).Disabled(!m.Ready),
	)
}

// device asks the device where it is, if somebody wishes so.
func (p *RoadPanel) device() app.UI {
	r := p.Model.Report
	said := r.Device
	if r.Asking {
		said = word.roadAsking
	}
	return app.Div().Class("field wide").Body(
		app.Button().ID("here").Type("button").Text(word.roadAsk).OnClick(p.onHere),
		app.P().Class("hint").Text(word.roadAskHelp),
		app.P().ID("here-said").Class("hint").Role("status").Text(said),
		app.If(r.Lost != "", func() app.UI {
			return app.P().ID("here-lost").Class("trouble").Role("alert").Text(prose(p.Model.Say, r.Lost))
		}),
	)
}

// behind are the stops here and behind, to say which were called at.
func (p *RoadPanel) behind() []app.UI {
	m := p.Model
	out := []app.UI{app.P().Class("help field wide").Text(word.roadBehindHelp)}
	for _, v := range m.Visits {
		c := v.Call
		var does []string
		for _, t := range c.Tasks {
			does = append(does, t.Verb+" "+tankName(m.Tanks, t.Tank))
		}
		if c.Night {
			does = append(does, nights(c.Nights))
		}
		tick := p.control(roadMade+c.Stop, nameOf(c)+" · "+m.Say.Mark(c.Km, -1)+" · "+strings.Join(does, ", "), "", "checkbox")
		tick.Value, tick.Wide = strconv.FormatBool(v.Made), true
		out = append(out, tick)
	}
	return out
}

func tankName(tanks []trip.Tank, id string) string {
	for _, k := range tanks {
		if k.ID == id {
			return k.Name
		}
	}
	return id
}

// group is a heading with its fields.
func group(title string, fields []app.UI) app.UI {
	return app.FieldSet().Body(app.Legend().Text(title), app.Div().Class("fields").Body(fields...))
}

func (p *RoadPanel) control(key, label, unit, input string, options ...Option) *Control {
	return &Control{Key: key, Label: label, Unit: unit, Input: input, Options: options, Value: p.Model.Report.Said[key]}
}

func (p *RoadPanel) here() []app.UI {
	m := p.Model
	stops := []Option{{"", word.roadBetween}}
	for i, c := range callsOf(m.Plan) {
		n := strconv.Itoa(i + 1)
		stops = append(stops, Option{n, n + " · " + nameOf(c) + " · " + m.Say.Mark(c.Km, -1)})
	}
	where := p.control(roadWhere, word.roadWhere, "", "select", stops...)
	where.Wide = true
	km := p.control(roadKm, word.roadKm, m.Say.Unit("km").Symbol, "number")
	if km.Hint = word.roadMap; m.Report.At != nil {
		km.Hint = word.roadMapped
	}
	return []app.UI{where, km, p.control(roadTime, word.roadTime, "", "datetime-local")}
}

func (p *RoadPanel) gauges() []app.UI {
	m := p.Model
	var out []app.UI
	for _, k := range m.Tanks {
		unit := m.Say.Unit(k.Unit).Symbol
		out = append(out, p.control(roadKind+k.ID, k.Name, "", "select",
			Option{"", word.gaugeNone}, Option{life.LitreGauge, unit}, Option{life.PercentGauge, "%"}, Option{life.QuarterGauge, word.gaugeQuarters}, Option{life.LampGauge, word.gaugeLamp}))
		label := k.Name + word.gaugeShows
		switch m.Report.Said[roadKind+k.ID] {
		case "":
			out = append(out, app.Div())
		case life.LitreGauge:
			out = append(out, p.control(roadValue+k.ID, label, unit, "number"))
		case life.PercentGauge:
			out = append(out, p.control(roadValue+k.ID, label, "%", "number"))
		case life.QuarterGauge:
			out = append(out, p.control(roadValue+k.ID, label, "", "select", quarterWords...))
		case life.LampGauge:
			out = append(out, p.control(roadValue+k.ID, label, "", "select", lampWords...))
		}
	}
	return out
}

// closed are the stops ahead to tick, and a list of others.
func (p *RoadPanel) closed() []app.UI {
	m := p.Model
	km, _ := m.Report.here(Model{Plan: m.Plan, Say: m.Say})
	names, shown := map[string]string{}, map[string]bool{}
	others := []Option{{"", word.roadNoOther}}
	for _, c := range m.Plan.Places {
		names[c.Place] = c.Name
		if !c.Chosen && c.Excluded == "" && c.Km >= km && c.Km < km+roadAheadKm && c.Name != "" {
			others = append(others, Option{c.Place, c.Name + " · " + m.Say.Mark(c.Km, -1)})
		}
	}
	var out []app.UI
	tick := func(place, label string) {
		if !shown[place] {
			shown[place] = true
			c := p.control(roadClosed+place, label, "", "checkbox")
			c.Value, c.Wide = "", true
			for _, id := range m.Report.Closed {
				if id == place {
					c.Value = "true"
				}
			}
			out = append(out, c)
		}
	}
	for _, c := range callsOf(m.Plan) {
		if c.Km >= km {
			tick(c.Place, nameOf(c)+" · "+m.Say.Mark(c.Km, -1))
		}
	}
	for _, id := range m.Report.Closed {
		tick(id, names[id])
	}
	other := p.control(roadOther, word.roadOther, "", "select", others...)
	other.Wide = true
	return append(out, other)
}

// roadAheadKm is how far ahead places are listed.
const roadAheadKm = 120

func (p *RoadPanel) onGo(ctx app.Context, e app.Event) {
	e.PreventDefault()
	send(ctx, WentOn{})
}

func (p *RoadPanel) onHere(ctx app.Context, e app.Event) { send(ctx, HereAsked{}) }

func (p *RoadPanel) onBack(ctx app.Context, e app.Event) { send(ctx, WentBack{}) }

// onRoad opens or shuts the panel, with the time of this machine.
func onRoad(ctx app.Context, e app.Event) { send(ctx, ReportToggled{time.Now().Format(nowLayout)}) }
