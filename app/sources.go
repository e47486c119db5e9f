package page

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/fact"
)

// Sources lists the files in use, and whose data they are.
type Sources struct {
	app.Compo
	Say     say.Voice
	Files   []model.File
	Roads   model.Roads
	Keeping model.Keeping
}

func (s *Sources) Render() app.UI {
	var lis []app.UI
	for _, f := range s.Files {
		lis = append(lis, app.Li().Body(app.B().Text(f.Name), app.Text(" "+s.about(f))))
		for _, n := range f.Notes {
			lis = append(lis, app.Li().Class("note").Text(s.Say.Fact(n)))
		}
	}
	for _, n := range s.Roads.Notes {
		lis = append(lis, app.Li().Class("note").Text(s.Say.Fact(n)))
	}
	return app.Section().Class("sources").Aria("labelledby", "sources-title").Body(
		app.H2().ID("sources-title").Text(s.Say.Text("files.title")),
		app.Ul().Body(lis...),
		app.P().Class("help").Text(s.Say.Text("files.help")),
		&Kept{Say: s.Say, Keeping: s.Keeping},
		app.If(model.Attributed(s.Files), func() app.UI { return show.Attribution(s.Say) }),
	)
}

func (s *Sources) about(f model.File) string {
	var parts []string
	n := fact.V{"n": fact.Count(f.Count)}
	switch f.Kind {
	case "places":
		parts = append(parts, s.Say.Text("files.places", n))
	case "route":
		parts = append(parts, s.Say.Text("files.points", n))
	}
	if f.Date != "" {
		parts = append(parts, s.Say.Text("files.date", fact.V{"day": fact.Text(string(f.Date))}))
	}
	if f.Sample {
		parts = append(parts, s.Say.Text("files.sample"))
	}
	return strings.Join(parts, " · ")
}
