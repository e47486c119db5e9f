package model

import (
	"math"
	"strings"

	"ullage/app/field"
	"ullage/geo"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file takes the ferries that a person names.

// FerryPrefix begins the keys of the three fields of a ferry to be added.
const FerryPrefix = "ferry:"

type (
	// FerryAdded: what is typed of a ferry is one. FerryRemoved: one of the trip's is none.
	FerryAdded   struct{}
	FerryRemoved struct{ Index int }
)

// The ferry is one of the trip's, or beside each field stands what is wrong.
func (FerryAdded) update(m Model) Model {
	ferry, m, ok := m.typedFerry()
	if !ok {
		return m
	}
	if ferry.ToKm <= ferry.FromKm {
		m.Form = m.wrong(FerryPrefix+"to", fact.Of("ferry.want_end", fact.V{"km": fact.Km(ferry.FromKm, -1)}))
		return m
	}
	var before, after []trip.Ferry
	for _, f := range m.Trip.Ferries {
		switch {
		case f.FromKm < ferry.ToKm && ferry.FromKm < f.ToKm:
			m.Form = m.wrong(FerryPrefix+"from", fact.Of("ferry.want_apart", fact.V{"from": fact.Mark(f.FromKm, -1), "to": fact.Mark(f.ToKm, -1)}))
			return m
		case f.FromKm < ferry.FromKm:
			before = append(before, f)
		default:
			after = append(after, f)
		}
	}
	m.Trip.Ferries = append(append(before, ferry), after...)
	for key := range m.Typed {
		if strings.HasPrefix(key, FerryPrefix) {
			m.Typed = with(m.Typed, key, "")
		}
	}
	return m.ask()
}

// typedFerry is the ferry that is typed; not ok if a field of it is wrong.
func (m Model) typedFerry() (trip.Ferry, Model, bool) {
	length := math.Inf(1)
	if line, err := geo.Measure(m.Trip.Route); err == nil {
		length = line.LengthM() / 1000
	}
	ok := true
	read := func(name, unit string, most float64) float64 {
		key := FerryPrefix + name
		v, wrong := field.Shown(m.Typed[key], m.Say.Unit(unit), 0, most)
		if !wrong.Nothing() {
			m.Form, ok = m.wrong(key, wrong), false
		}
		return v
	}
	ferry := trip.Ferry{FromKm: read("from", "km", length), ToKm: read("to", "km", length), Min: read("min", "min", 10_000)}
	return ferry, m, ok
}

func (msg FerryRemoved) update(m Model) Model {
	var rest []trip.Ferry
	for i, f := range m.Trip.Ferries {
		if i != msg.Index {
			rest = append(rest, f)
		}
	}
	m.Trip.Ferries = rest
	return m.ask()
}
