package page

import (
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/planner"
)

// A StatusLine says what the page is doing; assistive technology reads it out.
type StatusLine struct {
	app.Compo
	Phase    Phase
	Words    string
	Progress float64
	Offline  bool
	Roads    Roads
}

func (s *StatusLine) Render() app.UI {
	return app.Div().Class("status").Body(
		app.P().ID("status").Role("status").Aria("live", "polite").DataSet("state", string(s.Phase)).Body(
			app.Span().Class("mark").Aria("hidden", "true"),
			app.Text(s.Words),
		),
		app.If(s.Phase == Loading && s.Progress > 0, func() app.UI {
			return app.Progress().Max(100).Value(math.Round(s.Progress*100)).Aria("label", s.Words)
		}),
		app.If(s.Offline, func() app.UI { return app.P().Class("offline").Text(word.offline) }),
		app.If(s.Roads.State != "", func() app.UI {
			return app.P().ID("roads").DataSet("state", s.Roads.State).Text(roadsWords(s.Roads))
		}),
	)
}

// statusOf puts the state of the model in words.
func statusOf(m Model) string {
	switch m.Phase {
	case Loading:
		if m.Note == "" {
			return fmt.Sprintf(word.stLoading, word.title)
		}
		if m.Progress > 0 {
			return fmt.Sprintf(word.stLoadingShare, m.Note, int(math.Round(m.Progress*100)))
		}
		return fmt.Sprintf(word.stLoading, m.Note)
	case Planning:
		if m.Shown == m.Wanted && m.HasPlan() {
			return fmt.Sprintf(word.stImproving, m.Say.Money(gap(m), m.Plan.Currency))
		}
		return word.stPlanning
	case Planned:
		if m.Plan.Status == planner.Feasible {
			return fmt.Sprintf(word.stPlannedGap, m.Say.Money(gap(m), m.Plan.Currency))
		}
		return word.stPlanned
	case Refused:
		return word.stRefused
	}
	return fmt.Sprintf(word.stError, m.Note)
}

// gap is how much a better plan could save at most.
func gap(m Model) float64 { return math.Max(m.Plan.Cost-m.Plan.Bound, 0) }
