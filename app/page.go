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
		app.A().Class("skip").Href("#itinerary").Text(say.skip),
		app.Header().Class("mast").Body(
			app.H1().Body(app.Text(say.title), app.Span().Class("lead").Text(say.lead)),
			&StatusLine{Phase: m.Phase, Words: statusOf(m), Progress: m.Progress, Offline: m.Offline, Roads: m.Roads},
			p.actions(),
			app.If(m.Waiting, func() app.UI {
				return app.P().Class("newer").Body(app.Text(say.newVersion+" "),
					app.Button().Type("button").Text(say.reload).OnClick(p.onReload))
			}),
			app.If(m.Trouble != "", func() app.UI { return app.P().Class("trouble").Role("alert").Text(m.Trouble) }),
		),
		app.Main().Body(
			app.Div().Class("words").Body(p.words()...),
			app.Div().Class("pictures").Body(
				&MapView{Model: mapModel(m), Ways: p.ways},
				app.If(len(m.Plan.Why) > 0, func() app.UI { return &Refusal{Plan: m.Plan, Vehicle: m.Trip.Vehicle, Units: m.Units} }),
				app.If(m.HasPlan(), func() app.UI { return &Strips{Plan: m.Plan, Axis: m.Axis, Cursor: m.Cursor, Units: m.Units} }),
			),
		),
		app.Nav().Class("jump").Aria("label", say.navLabel).Body(
			app.A().Href("#itinerary").Text(say.navDays),
			app.A().Href("#strips").Text(say.navStrips),
			app.A().Href("#checklists").Text(say.navLists),
			app.A().Href("#map").Text(say.navMap),
			app.A().Href("#trip").Text(say.navTrip),
		),
	)
}

func (p *Page) words() []app.UI {
	m := p.m
	var out []app.UI
	if m.HasTrip() {
		out = append(out, &TripForm{Trip: m.Trip, Fleet: m.Fleet, Typed: m.Typed, Wrong: m.Wrong, Open: m.Editing, Units: m.Units, Planned: m.HasPlan(), Road: m.Report != nil},
			&RoadPanel{Model: roadOf(m)})
	}
	if elsewhere(m) && m.Draft == nil && m.Phase != Loading { // a route may follow the map data
		out = append(out, offerThere())
	}
	if barred(m) {
		out = append(out, p.offer())
	}
	if m.HasPlan() {
		out = append(out, &Verdict{Trip: m.Trip, Plan: m.Plan, Units: m.Units, Kept: m.Phase == Planned && m.Plan.Status == planner.Feasible})
	}
	return append(out,
		&Days{Plan: m.Plan, Avoid: m.Trip.Avoid, Now: stopAt(m.Plan, m.Cursor), Ticks: m.Ticks, Units: m.Units},
		&HandBack{Return: m.Plan.Return, Units: m.Units},
		&Checklists{Lists: m.Plan.Checklists, HowTos: m.Plan.HowTos, Ticks: m.Ticks, Units: m.Units},
		&Counted{Counts: m.Plan.Counts, Confidence: m.Plan.Confidence, Units: m.Units},
		&Others{Plan: m.Plan, Units: m.Units},
		&Limits{Cautions: m.Plan.Cautions, Estimated: m.HasPlan() && m.Plan.Estimated, Units: m.Units, Planned: m.HasPlan()},
		&Sources{Files: m.Files},
	)
}

func (p *Page) actions() app.UI {
	return app.Div().Class("actions").Body(
		app.Label().Class("button").For("file").Text(say.open),
		app.Input().ID("file").Class("unseen").Type("file").Multiple(true).OnChange(p.onFiles),
		app.Button().Type("button").Text(say.draw).Disabled(p.m.Draft != nil).OnClick(p.onDraw),
		app.If(p.m.Roads.State == RoadsReady && len(p.m.Track) > 1, func() app.UI {
			words := say.track
			if p.m.Matched {
				words = say.trackAsIs
			}
			return app.Button().ID("track").Type("button").Text(words).Disabled(p.m.Draft != nil).OnClick(p.onTrack)
		}),
		app.Button().Type("button").Text(say.save).Disabled(!p.m.HasTrip()).OnClick(p.onSave),
		app.Button().Type("button").Text(say.print).Disabled(!p.m.HasPlan()).OnClick(p.onPrint),
	)
}
