package page

import (
	"fmt"
	"slices"
	"strings"

	"ullage/app/say"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Limits says what to mind on the whole trip, and what the plan cannot know.
type Limits struct {
	app.Compo
	Cautions  []string
	Estimated bool
	Say       say.Voice
	Planned   bool
}

func (l *Limits) Render() app.UI {
	lines := l.Cautions[:len(l.Cautions):len(l.Cautions)]
	if l.Estimated {
		lines = append(lines, word.limits1)
	}
	lines = append(lines, word.limits2, word.limits3, word.limits4)
	var lis []app.UI
	for _, s := range lines {
		lis = append(lis, app.Li().Text(prose(l.Say, s)))
	}
	title := word.limitsMind
	if l.Planned {
		title = word.limitsTitle
	}
	return app.Section().Class("limits").Aria("labelledby", "limits-title").Body(
		app.H2().ID("limits-title").Text(title),
		app.Ul().Body(lis...),
	)
}

// Sources lists the files in use, and whose data they are.
type Sources struct {
	app.Compo
	Say   say.Voice
	Files []File
}

func (s *Sources) Render() app.UI {
	var lis []app.UI
	for _, f := range s.Files {
		lis = append(lis, app.Li().Body(app.B().Text(f.Name), app.Text(" "+about(f))))
		for _, n := range f.Notes {
			lis = append(lis, app.Li().Class("note").Text(s.Say.Fact(n)))
		}
	}
	return app.Section().Class("sources").Aria("labelledby", "sources-title").Body(
		app.H2().ID("sources-title").Text(word.filesTitle),
		app.Ul().Body(lis...),
		app.P().Class("help").Text(word.filesHelp+" "+word.filesDrop),
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
		app.A().Href("https://www.openstreetmap.org/copyright").Target("_blank").Rel("noopener").Text(word.attribution))
}

func about(f File) string {
	var parts []string
	switch f.Kind {
	case "places":
		parts = append(parts, count(f.Count, word.places))
	case "route":
		parts = append(parts, count(f.Count, word.points))
	}
	if f.Date != "" {
		parts = append(parts, fmt.Sprintf(word.dataOf, f.Date))
	}
	if f.Sample {
		parts = append(parts, word.sample)
	}
	return strings.Join(parts, " · ")
}
