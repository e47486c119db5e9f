package show

import (
	"math"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Text is a paragraph, or nothing for no words.
//
//go:noinline
func Text(class, words string) app.UI {
	return app.If(words != "", func() app.UI { return app.P().Class(class).Text(words) })
}

// Lines is a list of texts.
func Lines(texts []string) []app.UI {
	var out []app.UI
	for _, s := range texts {
		out = append(out, app.Li().Text(s))
	}
	return out
}

// Attribution is what the licence asks for (https://www.openstreetmap.org/copyright).
func Attribution(v say.Voice) app.UI {
	return app.P().Class("attribution").Body(
		app.A().Href("https://www.openstreetmap.org/copyright").Target("_blank").Rel("noopener").Text(v.Text("files.attribution")))
}

// Called is the name of a stop's place, or what it is where it has none.
func Called(v say.Voice, c trip.Call) string {
	if c.Name != "" {
		return say.Quoted(c.Name)
	}
	return say.Capital(v.Place(string(c.Kind)))
}

// Nights says how many nights a stop has, as one of several things said of it.
func Nights(v say.Voice, n int) string {
	return v.Text("days.nights", fact.V{"n": fact.Count(max(n, 1))})
}

// Task says what to do at a stop: fill 65 L of fresh water. tank is the name that
// the vehicle gives to the tank.
func Task(v say.Voice, t trip.Task, tank string) string {
	return v.Text("act."+strings.ReplaceAll(string(t.Verb), " ", "_"), fact.V{"amount": fact.Quantity(t.Amount, t.Unit, -1), "tank": fact.Tank(t.Tank, tank)})
}

// When puts before a task of a stay when it is done, where that is not on arrival.
func When(v say.Voice, c trip.Call, t trip.Task, task string) string {
	switch t.Night {
	case 0:
		return task
	case c.Nights:
		return v.Text("task.leaving", fact.V{"task": fact.Text(task)})
	}
	return v.Text("task.later", fact.V{"task": fact.Text(task), "n": fact.Count(t.Night)})
}

// Times is a share of trips in small numbers: 0.9 is 9 times in 10.
func Times(share float64) fact.V {
	n, of := int(math.Round(100*share)), 100
	for _, by := range []int{2, 2, 5, 5} {
		if n%by == 0 && of%by == 0 {
			n, of = n/by, of/by
		}
	}
	return fact.V{"n": fact.Count(n), "of": fact.Count(of)}
}
