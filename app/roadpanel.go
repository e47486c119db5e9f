package page

import (
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner/life"
	"ullage/planner/life/units"
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
	Units  Units
}

func roadOf(m Model) roadModel {
	out := roadModel{m.Plan, m.Report, m.Trip.Vehicle.Tanks, nil, m.News, m.Before != nil, m.HasPlan() && m.Shown == m.Wanted, m.Units}
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
	return app.Section().ID("road").Class("road").Aria("label", say.roadTitle).Body(
		app.If(m.Report != nil, p.form),
		app.If(len(m.News) > 0, func() app.UI {
			return app.Div().Class("news").Body(app.H3().Text(say.roadNews), app.Ul().Body(lines(m.Units.proses(m.News))...))
		}),
		app.If(m.Back && m.Report == nil, func() app.UI {
			return app.Button().Type("button").Class("quiet").Text(say.roadBack).OnClick(p.onBack)
		}),
	)
}

func (p *RoadPanel) form() app.UI {
	m := p.Model
	return app.Form().ID("road-form").Class("form").Aria("label", say.roadTitle).OnSubmit(p.onGo).Body(
		app.P().Class("help").Text(say.roadHelp),
		group(say.roadHere, append([]app.UI{p.device()}, p.here()...)),
		app.If(len(m.Visits) > 0, func() app.UI { return group(say.roadBehind, p.behind()) }),
		group(say.roadGauges, p.gauges()),
		group(say.roadShut, p.closed()),
		app.If(m.Report.Wrong != "", func() app.UI { return app.P().Class("trouble").Role("alert").Text(m.Units.prose(m.Report.Wrong)) }),
		app.Button().ID("road-go").Type("submit").Class("main").Text(say.roadGo).Disabled(!m.Ready),
	)
}

// device asks the device where it is, if somebody wishes so.
func (p *RoadPanel) device() app.UI {
	r := p.Model.Report
	said := r.Device
	if r.Asking {
		said = say.roadAsking
	}
	return app.Div().Class("field wide").Body(
		app.Button().ID("here").Type("button").Text(say.roadAsk).OnClick(p.onHere),
		app.P().Class("hint").Text(say.roadAskHelp),
		app.P().ID("here-said").Class("hint").Role("status").Text(said),
		app.If(r.Lost != "", func() app.UI {
			return app.P().ID("here-lost").Class("trouble").Role("alert").Text(p.Model.Units.prose(r.Lost))
		}),
	)
}

// behind are the stops here and behind, to say which were called at.
func (p *RoadPanel) behind() []app.UI {
	m := p.Model
	out := []app.UI{app.P().Class("help field wide").Text(say.roadBehindHelp)}
	for _, v := range m.Visits {
		c := v.Call
		var does []string
		for _, t := range c.Tasks {
			does = append(does, t.Verb+" "+tankName(m.Tanks, t.Tank))
		}
		if c.Night {
			does = append(does, nights(c.Nights))
		}
		tick := p.control(roadMade+c.Stop, nameOf(c)+" · "+m.Units.mark(c.Km)+" · "+strings.Join(does, ", "), "", "checkbox")
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
	stops := []Option{{"", say.roadBetween}}
	for i, c := range callsOf(m.Plan) {
		n := strconv.Itoa(i + 1)
		stops = append(stops, Option{n, n + " · " + nameOf(c) + " · " + m.Units.mark(c.Km)})
	}
	where := p.control(roadWhere, say.roadWhere, "", "select", stops...)
	where.Wide = true
	km := p.control(roadKm, say.roadKm, m.Units.of(units.Distance).Symbol, "number")
	if km.Hint = say.roadMap; m.Report.At != nil {
		km.Hint = say.roadMapped
	}
	return []app.UI{where, km, p.control(roadTime, say.roadTime, "", "datetime-local")}
}

func (p *RoadPanel) gauges() []app.UI {
	m := p.Model
	var out []app.UI
	for _, k := range m.Tanks {
		unit := m.Units.tank(k.Unit).Symbol
		out = append(out, p.control(roadKind+k.ID, k.Name, "", "select",
			Option{"", say.gaugeNone}, Option{life.LitreGauge, unit}, Option{life.PercentGauge, "%"}, Option{life.QuarterGauge, say.gaugeQuarters}, Option{life.LampGauge, say.gaugeLamp}))
		label := k.Name + say.gaugeShows
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
	km, _ := m.Report.here(Model{Plan: m.Plan, Units: m.Units})
	names, shown := map[string]string{}, map[string]bool{}
	others := []Option{{"", say.roadNoOther}}
	for _, c := range m.Plan.Places {
		names[c.Place] = c.Name
		if !c.Chosen && c.Excluded == "" && c.Km >= km && c.Km < km+roadAheadKm && c.Name != "" {
			others = append(others, Option{c.Place, c.Name + " · " + m.Units.mark(c.Km)})
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
			tick(c.Place, nameOf(c)+" · "+m.Units.mark(c.Km))
		}
	}
	for _, id := range m.Report.Closed {
		tick(id, names[id])
	}
	other := p.control(roadOther, say.roadOther, "", "select", others...)
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
