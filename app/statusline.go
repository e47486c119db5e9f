package page

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/fact"
)

// A StatusLine says what the page is doing; assistive technology reads it out.
type StatusLine struct {
	app.Compo
	Say      say.Voice
	Phase    model.Phase
	Words    string
	Progress float64
	Offline  bool
	Roads    model.Roads
}

func (s *StatusLine) Render() app.UI {
	return app.Div().Class("status").Body(
		app.P().ID("status").Role("status").Aria("live", "polite").DataSet("state", string(s.Phase)).Body(
			app.Span().Class("mark").Aria("hidden", "true"),
			app.Text(s.Words),
		),
		app.If(s.Phase == model.Loading && s.Progress > 0, func() app.UI {
			return app.Progress().Max(100).Value(math.Round(s.Progress*100)).Aria("label", s.Words)
		}),
		app.If(s.Offline, func() app.UI { return app.P().Class("offline").Text(s.Say.Text("page.offline")) }),
		app.If(s.Roads.State != "", func() app.UI {
			return app.P().ID("roads").DataSet("state", string(s.Roads.State)).Text(s.roads())
		}),
	)
}

// roads say in one line whether detours follow roads.
func (s *StatusLine) roads() string {
	return s.Say.Text("roads."+string(s.Roads.State), fact.V{
		"share": fact.Share(math.Min(math.Max(s.Roads.Share, 0), 1), 0), "why": fact.Text(s.Roads.Why)})
}

// title is the name of the program, in every language.
const title = "Ullage"

// statusOf puts the state of the model in words.
func statusOf(m model.Model) string {
	gap := fact.V{"sum": fact.Money(m.Gap(), m.Plan.Currency)}
	switch m.Phase {
	case model.Loading:
		file := fact.V{"file": fact.Text(m.Reading), "share": fact.Share(m.Progress, 0)}
		switch {
		case m.Reading == "":
			return m.Say.Text("status.reading", fact.V{"file": fact.Text(title)})
		case m.Progress > 0:
			return m.Say.Text("status.reading_share", file)
		}
		return m.Say.Text("status.reading", file)
	case model.Planning:
		if m.Shown == m.Wanted && m.HasPlan() {
			return m.Say.Text("status.improving", gap)
		}
		return m.Say.Text("status.planning")
	case model.Ready:
		if m.Plan.Status == planner.Feasible {
			return m.Say.Text("status.planned_gap", gap)
		}
		if l := m.Plan.Least; l != nil && m.Plan.Cost-l.Cost >= 0.005 {
			return m.Say.Text("status.planned_least", fact.V{"saving": fact.Money(m.Plan.Cost-l.Cost, m.Plan.Currency)})
		}
		return m.Say.Text("status.planned")
	case model.Refused:
		return m.Say.Text("status.refused")
	}
	return m.Say.Fact(m.Failure)
}
