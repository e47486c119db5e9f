package page

import (
	"fmt"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Limits says what to mind on the whole trip, and what the plan cannot know.
type Limits struct {
	app.Compo
	Cautions  []string
	Estimated bool
	Units     Units
	Planned   bool
}

func (l *Limits) Render() app.UI {
	lines := l.Cautions[:len(l.Cautions):len(l.Cautions)]
	if l.Estimated {
		lines = append(lines, say.limits1)
	}
	lines = append(lines, say.limits2, say.limits3, say.limits4)
	var lis []app.UI
	for _, s := range lines {
		lis = append(lis, app.Li().Text(l.Units.prose(s)))
	}
	title := say.limitsMind
	if l.Planned {
		title = say.limitsTitle
	}
	return app.Section().Class("limits").Aria("labelledby", "limits-title").Body(
		app.H2().ID("limits-title").Text(title),
		app.Ul().Body(lis...),
	)
}

// Sources lists the files in use, and whose data they are.
type Sources struct {
	app.Compo
	Files []File
}

func (s *Sources) Render() app.UI {
	var lis []app.UI
	for _, f := range s.Files {
		lis = append(lis, app.Li().Body(app.B().Text(f.Name), app.Text(" "+about(f))))
		for _, n := range f.Notes {
			lis = append(lis, app.Li().Class("note").Text(n))
		}
	}
	return app.Section().Class("sources").Aria("labelledby", "sources-title").Body(
		app.H2().ID("sources-title").Text(say.filesTitle),
		app.Ul().Body(lis...),
		app.P().Class("help").Text(say.filesHelp+" "+say.filesDrop),
		app.If(attributed(s.Files), attribution),
	)
}

// attributed tells whether data of OpenStreetMap are open. The invented island
// only has the same form.
func attributed(files []File) bool {
	return slices.ContainsFunc(files, func(f File) bool { return f.OSM && !f.Sample })
}

// attribution is what the licence asks for (https://www.openstreetmap.org/copyright).
func attribution() app.UI {
	return app.P().Class("attribution").Body(
		app.A().Href("https://www.openstreetmap.org/copyright").Target("_blank").Rel("noopener").Text(say.attribution))
}

func about(f File) string {
	var parts []string
	switch f.Kind {
	case "places":
		parts = append(parts, count(f.Count, say.places))
	case "route":
		parts = append(parts, count(f.Count, say.points))
	}
	if f.Date != "" {
		parts = append(parts, fmt.Sprintf(say.dataOf, f.Date))
	}
	if f.Sample {
		parts = append(parts, say.sample)
	}
	return strings.Join(parts, " · ")
}
