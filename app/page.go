package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/planner"
)

// A Page is the whole page. It holds the model, gives each part what it
// shows, and turns wishes of the model into work. The zero value opens what
// was there on the last visit, or the demo.
type Page struct {
	app.Compo
	m          Model
	client     *job.Client
	store      *browser.Store // nil until it is open
	places     []kept         // the files of places that are open
	wantsNewer bool           // a person asked for the version that waits
	following  bool           // legs are asked for
	ways       *Ways          // for the map
	origin     string         // of the route, as it is kept
	last       Origin         // of the route of the last visit
}

func (p *Page) Render() app.UI {
	m := p.m
	return app.Div().Class("page").On("dragover", p.onDragOver).On("drop", p.onDrop).Body(
		app.A().Class("skip").Href("#itinerary").Text(word.skip),
		app.Header().Class("mast").Body(
			app.H1().Body(app.Text(word.title), app.Span().Class("lead").Text(word.lead)),
			&StatusLine{Phase: m.Phase, Words: statusOf(m), Progress: m.Progress, Offline: m.Offline, Roads: m.Roads},
			p.actions(),
			app.If(m.Waiting, func() app.UI {
				return app.P().Class("newer").Body(app.Text(word.newVersion+" "),
					app.Button().Type("button").Text(word.reload).OnClick(p.onReload))
			}),
			app.If(m.Trouble != "", func() app.UI { return app.P().Class("trouble").Role("alert").Text(m.Trouble) }),
		),
		app.Main().Body(
			app.Div().Class("words").Body(p.words()...),
			app.Div().Class("pictures").Body(
				&MapView{Model: mapModel(m), Ways: p.ways},
				app.If(len(m.Plan.Why) > 0, func() app.UI { return &Refusal{Plan: m.Plan, Vehicle: m.Trip.Vehicle, Say: m.Say} }),
				app.If(m.HasPlan(), func() app.UI { return &Strips{Plan: m.Plan, Axis: m.Axis, Cursor: m.Cursor, Say: m.Say} }),
			),
		),
		app.Nav().Class("jump").Aria("label", word.navLabel).Body(
			app.A().Href("#itinerary").Text(word.navDays),
			app.A().Href("#strips").Text(word.navStrips),
			app.A().Href("#checklists").Text(word.navLists),
			app.A().Href("#map").Text(word.navMap),
			app.A().Href("#trip").Text(word.navTrip),
		),
	)
}

func (p *Page) words() []app.UI {
	m := p.m
	var out []app.UI
	if m.HasTrip() {
		out = append(out, &TripForm{Trip: m.Trip, Fleet: m.Fleet, Typed: m.Typed, Wrong: m.Wrong, Open: m.Editing, Say: m.Say, Planned: m.HasPlan(), Road: m.Report != nil},
			&RoadPanel{Model: roadOf(m)})
	}
	if elsewhere(m) && m.Draft == nil && m.Phase != Loading { // a route may follow the map data
		out = append(out, offerThere())
	}
	if barred(m) {
		out = append(out, p.offer())
	}
	if m.HasPlan() {
		out = append(out, &Verdict{Trip: m.Trip, Plan: m.Plan, Say: m.Say, Kept: m.Phase == Planned && m.Plan.Status == planner.Feasible})
	}
	return append(out,
		&Days{Plan: m.Plan, Avoid: m.Trip.Avoid, Now: stopAt(m.Plan, m.Cursor), Ticks: m.Ticks, Say: m.Say},
		&HandBack{Return: m.Plan.Return, Say: m.Say},
		&Checklists{Lists: m.Plan.Checklists, HowTos: m.Plan.HowTos, Ticks: m.Ticks, Say: m.Say},
		&Counted{Counts: m.Plan.Counts, Confidence: m.Plan.Confidence, Say: m.Say},
		&Others{Plan: m.Plan, Say: m.Say},
		&Limits{Cautions: m.Plan.Cautions, Estimated: m.HasPlan() && m.Plan.Estimated, Say: m.Say, Planned: m.HasPlan()},
		&Sources{Say: m.Say, Files: m.Files},
	)
}

func (p *Page) actions() app.UI {
	return app.Div().Class("actions").Body(
		app.Label().Class("button").For("file").Text(word.open),
		app.Input().ID("file").Class("unseen").Type("file").Multiple(true).OnChange(p.onFiles),
		app.Button().Type("button").Text(word.draw).Disabled(p.m.Draft != nil).OnClick(p.onDraw),
		app.If(p.m.Roads.State == RoadsReady && len(p.m.Track) > 1, func() app.UI {
			words := word.track
			if p.m.Matched {
				words = word.trackAsIs
			}
			return app.Button().ID("track").Type("button").Text(words).Disabled(p.m.Draft != nil).OnClick(p.onTrack)
		}),
		app.Button().Type("button").Text(word.save).Disabled(!p.m.HasTrip()).OnClick(p.onSave),
		app.Button().Type("button").Text(word.print).Disabled(!p.m.HasPlan()).OnClick(p.onPrint),
	)
}
