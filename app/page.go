package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/form"
	"ullage/app/itinerary"
	"ullage/app/mapview"
	"ullage/app/model"
	"ullage/app/strip"
	"ullage/planner"
)

func (p *Page) Render() app.UI {
	m := p.m
	return app.Div().Class("page").On("dragover", p.onDragOver).On("drop", p.onDrop).Body(
		app.A().Class("skip").Href("#itinerary").Text(m.Say.Text("page.skip")),
		app.Header().Class("mast").Body(
			app.H1().Body(app.Text(title), app.Span().Class("lead").Text(m.Say.Text("page.lead"))),
			&StatusLine{Say: m.Say, Phase: m.Phase, Words: statusOf(m), Progress: m.Progress, Offline: m.Offline, Roads: m.Roads},
			p.actions(),
			app.If(m.Waiting, func() app.UI {
				return app.P().Class("newer").Body(app.Text(m.Say.Text("page.newer")+" "),
					app.Button().Type("button").Text(m.Say.Text("page.reload")).OnClick(p.onReload))
			}),
			app.If(!m.Trouble.Nothing(), func() app.UI { return app.P().Class("trouble").Role("alert").Text(m.Say.Fact(m.Trouble)) }),
		),
		app.Main().Body(
			app.Div().Class("words").Body(p.words()...),
			app.Div().Class("pictures").Body(p.pictures()...),
		),
		p.jumps(),
	)
}

func (p *Page) actions() app.UI {
	m := p.m
	return app.Div().Class("actions").Body(
		app.Label().Class("button").For("file").Text(m.Say.Text("page.open")),
		app.Input().ID("file").Class("unseen").Type("file").Multiple(true).OnChange(p.onFiles),
		app.Button().Type("button").Text(m.Say.Text("page.draw")).Disabled(m.Draft != nil).OnClick(p.onDraw),
		app.If(m.Roads.State == model.RoadsReady && len(m.Track) > 1, func() app.UI {
			words := m.Say.Text("track.match")
			if m.Matched {
				words = m.Say.Text("track.as_is")
			}
			return app.Button().ID("track").Type("button").Text(words).Disabled(m.Draft != nil).OnClick(p.onTrack)
		}),
		app.Button().Type("button").Text(m.Say.Text("page.save")).Disabled(!m.HasTrip()).OnClick(p.onSave),
		app.Button().Type("button").Text(m.Say.Text("page.print")).Disabled(!m.HasPlan()).OnClick(p.onPrint),
	)
}

func (p *Page) words() []app.UI {
	m := p.m
	var out []app.UI
	if m.HasTrip() {
		out = append(out, &form.TripForm{Say: m.Say, Trip: m.Trip, Fleet: m.Fleet, Form: m.Form, Planned: m.HasPlan(), Road: m.Report != nil},
			&form.RoadPanel{Road: form.RoadOf(m)})
	}
	out = append(out, keptOffers(m)...)
	if m.Forgets || len(m.Missing) > 0 {
		out = append(out, &Notice{Say: m.Say, Keeping: m.Keeping})
	}
	if m.Elsewhere() && m.Draft == nil && m.Phase != model.Loading { // a route may follow the map data
		out = append(out, &Offer{ID: "elsewhere", Text: m.Say.Text("elsewhere.text"), Do: m.Say.Text("elsewhere.draw"), Msg: model.DrawBegan{}})
	}
	if m.Barred() {
		out = append(out, &Offer{ID: "offer", Text: m.Say.Text("track.barred"), Do: m.Say.Text("track.lead_round"), Msg: model.RoundAsked{}})
	}
	if m.HasPlan() {
		out = append(out, &itinerary.Verdict{Say: m.Say, Trip: m.Trip, Plan: m.Plan, Kept: m.Phase == model.Ready && m.Plan.Status == planner.Feasible})
	}
	return append(out,
		&itinerary.Days{Say: m.Say, Plan: m.Plan, Avoid: m.Trip.Avoid, Now: model.StopAt(m.Plan, m.Cursor), Ticks: m.Ticks},
		&itinerary.HandBack{Say: m.Say, Return: m.Plan.Return},
		&itinerary.Checklists{Say: m.Say, Lists: m.Plan.Checklists, HowTos: m.Plan.HowTos, Ticks: m.Ticks},
		&itinerary.Counted{Say: m.Say, Counts: m.Plan.Counts, Confidence: m.Plan.Confidence},
		&itinerary.Others{Say: m.Say, Plan: m.Plan},
		&itinerary.Limits{Say: m.Say, Cautions: m.Plan.Cautions, Estimated: m.HasPlan() && m.Plan.Estimated, Planned: m.HasPlan()},
		&Sources{Say: m.Say, Files: m.Files, Roads: m.Roads, Keeping: m.Keeping},
	)
}

func (p *Page) pictures() []app.UI {
	m := p.m
	out := []app.UI{&mapview.MapView{Model: mapview.Of(m), Ways: &p.ways}}
	if len(m.Plan.Why) > 0 {
		out = append(out, &itinerary.Refusal{Say: m.Say, Plan: m.Plan, Vehicle: m.Trip.Vehicle})
	}
	if m.HasPlan() {
		out = append(out, &strip.Strips{Say: m.Say, Plan: m.Plan, Axis: m.Axis, Cursor: m.Cursor})
	}
	return out
}

// jumps lead to the parts of the page where the screen is small.
func (p *Page) jumps() app.UI {
	v := p.m.Say
	return app.Nav().Class("jump").Aria("label", v.Text("nav.label")).Body(
		app.A().Href("#itinerary").Text(v.Text("nav.days")),
		app.A().Href("#strips").Text(v.Text("nav.strips")),
		app.A().Href("#checklists").Text(v.Text("nav.lists")),
		app.A().Href("#map").Text(v.Text("nav.map")),
		app.A().Href("#trip").Text(v.Text("nav.trip")),
	)
}
