package byroad

import (
	"fmt"
	"strings"

	"ullage/geo/road"
)

// A remark is one thing to mind and all the places where it holds.
type remark struct {
	kind road.NoteKind
	text string
	at   []string
}

// named is how many places of one remark are listed.
const named = 6

// cautions says what to mind along the course, what the vehicle may not do
// first. Things of one kind are one line with all their positions.
func cautions(own *road.Router, c road.Course, r rule) []string {
	var list []*remark
	add := func(n road.Note, m float64) {
		text := n.Text
		where := fmt.Sprintf("km %.1f", r.at(m+n.AlongM)/1000)
		if n.Road != "" {
			where += " (" + n.Road + ")"
		}
		for _, x := range list {
			if x.kind == n.Kind && x.text == text {
				x.at = append(x.at, where)
				return
			}
		}
		list = append(list, &remark{n.Kind, text, []string{where}})
	}
	m := 0.0
	for _, s := range c {
		p := own.PathOf(s.Steps)
		for _, n := range own.Avoided(p) {
			add(n, m)
		}
		for _, n := range own.Notes(p) {
			if n.Kind != road.FerryNote { // a trip says what it counts for a ferry
				add(n, m)
			}
		}
		length, _ := own.Measure(road.Course{s})
		m += length
	}
	var out []string
	for _, kind := range order {
		for _, x := range list {
			if x.kind == kind {
				out = append(out, fmt.Sprintf(sentences[x.kind], x.text, places(x.at)))
			}
		}
	}
	return out
}

// order is by what can go wrong.
var order = [...]road.NoteKind{road.Avoided, road.UnknownLimit, road.GasNote, road.GateNote, road.NarrowNote, road.UnpavedNote, road.GuestsNote, road.TollNote}

// Barred begins a caution about a route that goes where its vehicle may not go.
const Barred = "The route goes where this vehicle may not go"

// sentences say what to do about a remark: its text, its positions.
var sentences = [...]string{
	road.UnknownLimit: "Before you drive on: %s: %s. Read the sign, and turn round rather than try.",
	road.Avoided:      Barred + ": %s: %s. Change the route there; do not drive it as it is.",
	road.GasNote:      "Gas: %s: %s. Cylinders shut; the operator's rules and the signs decide.",
	road.TollNote:     "On the route: %s: %s. It is not in the cost.",
	road.GateNote:     "On the route: %s: %s.",
	road.UnpavedNote:  "On the route: %s: %s. The hire agreement may forbid it.",
	road.NarrowNote:   "On the route: %s: %s.",
	road.GuestsNote:   "On the route: %s: %s.",
}

func places(at []string) string {
	if more := len(at) - named; more > 0 {
		return strings.Join(at[:named], ", ") + fmt.Sprintf(" and %d more", more)
	}
	return strings.Join(at, ", ")
}
