package model

import (
	"maps"
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
		Draft  orb.LineString    `json:"draft,omitempty"` // points of a drawing, of an older version
	}
	// MarksHeard: so ticks and gauges are kept now; another tab may have had a part in it.
	MarksHeard struct{ Marks }
	// Ticked: an item of a checklist is done, or is not.
	Ticked struct{ Item string }
	// TicksCleared: a checklist is to be gone through again.
	TicksCleared struct{ List string }
)

// MarksOf is what is kept of a model so.
func MarksOf(m Model) Marks {
	return Marks{Units: m.Say.Units, Ticks: m.Ticks, Gauges: m.Gauges}
}

func (msg Marks) update(m Model) Model {
	m.Say.Units, m.Ticks, m.Gauges = msg.Units, msg.Ticks, msg.Gauges
	if len(msg.Draft) > 0 {
		m.Draft = &Draft{Points: msg.Draft}
	}
	return m
}

func (msg MarksHeard) update(m Model) Model {
	m.Ticks, m.Gauges = msg.Ticks, msg.Gauges
	return m
}

// MergedMarks are the marks of two tabs: what each has changed since they were the same.
// Of what both have changed ours counts.
func MergedMarks(base, ours, theirs Marks) Marks {
	out := ours
	ticks := merged(ticked(base.Ticks), ticked(ours.Ticks), ticked(theirs.Ticks))
	out.Ticks = slices.Sorted(maps.Keys(ticks))
	out.Gauges = merged(base.Gauges, ours.Gauges, theirs.Gauges)
	return out
}

// merged is what they have, with what we have changed.
func merged(base, ours, theirs map[string]string) map[string]string {
	out := maps.Clone(theirs)
	for _, all := range []map[string]string{base, ours} {
		for key := range all {
			if ours[key] != base[key] {
				out = with(out, key, ours[key])
			}
		}
	}
	return out
}

func ticked(items []string) map[string]string {
	out := map[string]string{}
	for _, item := range items {
		out[item] = "true"
	}
	return out
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
