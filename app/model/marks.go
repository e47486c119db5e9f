package model

import (
	"slices"
	"strings"

	"github.com/paulmach/orb"
)

// This file is about what this machine remembers beside the trip.

type (
	// Marks is what was kept, as it is kept.
	Marks struct {
		Units string   `json:"units,omitempty"`
		Ticks []string `json:"ticks,omitempty"` // sorted

		Gauges map[string]string `json:"gauges,omitempty"`
		Draft  orb.LineString    `json:"draft,omitempty"` // points of a route that is being drawn
	}
	// Ticked: an item of a checklist is done, or is not.
	Ticked struct{ Item string }
	// TicksCleared: a checklist is to be gone through again.
	TicksCleared struct{ List string }
)

// MarksOf is what is kept of a model so.
func MarksOf(m Model) Marks {
	out := Marks{Units: m.Say.Units, Ticks: m.Ticks, Gauges: m.Gauges}
	if m.Draft != nil {
		out.Draft = ShownAt(m.Draft.Points, m.Legs.Of(m.Draft.Points))
	}
	return out
}

func (msg Marks) update(m Model) Model {
	m.Say.Units, m.Ticks, m.Gauges = msg.Units, msg.Ticks, msg.Gauges
	if len(msg.Draft) > 0 {
		m.Draft = &Draft{Points: msg.Draft}
	}
	return m
}

func (msg Ticked) update(m Model) Model {
	i, there := slices.BinarySearch(m.Ticks, msg.Item)
	if m.Ticks = slices.Clone(m.Ticks); there {
		m.Ticks = slices.Delete(m.Ticks, i, i+1)
	} else {
		m.Ticks = append(append(m.Ticks[:i:i], msg.Item), m.Ticks[i:]...)
	}
	return m.do(SaveMarks{})
}

func (msg TicksCleared) update(m Model) Model { return m.untick(msg.List) }

// untick takes the ticks of a list away.
func (m Model) untick(list string) Model {
	left := slices.DeleteFunc(slices.Clone(m.Ticks), func(s string) bool { return strings.HasPrefix(s, list+"/") })
	if len(left) < len(m.Ticks) {
		m.Ticks = left
		m = m.do(SaveMarks{})
	}
	return m
}
