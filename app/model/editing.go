package model

import (
	"slices"
	"strings"

	"ullage/app/field"
	"ullage/planner/fact"
)

// This file takes what is typed into the form.

type (
	// Edited: a field holds this text now.
	Edited struct{ Field, Text string }
	// FormToggled opens or closes the form.
	FormToggled struct{}
)

// A field's text is applied to the trip, or beside it stands what is wrong.
// Text and trip are both kept: nothing that was typed is lost.
func (msg Edited) update(m Model) Model {
	switch {
	case strings.HasPrefix(msg.Field, RoadPrefix):
		return m.heard(msg.Field, msg.Text)
	case strings.HasPrefix(msg.Field, FerryPrefix):
		m.Typed = with(m.Typed, msg.Field, msg.Text)
		m.Form = m.wrong(msg.Field, fact.Fact{})
		return m.do(SaveTrip{})
	case msg.Field == field.Units: // what was typed was typed in the units before
		m.Say.Units, m.Typed, m.Wrong, m.Report = msg.Text, nil, nil, nil
		return m.do(SaveMarks{}).do(SaveTrip{})
	}
	form := field.Of(m.Trip, m.Fleet, m.Say)
	i := slices.IndexFunc(form, func(f field.Field) bool { return f.Key == msg.Field })
	if i < 0 {
		return m
	}
	f := form[i]
	m.Typed = with(m.Typed, msg.Field, msg.Text)
	changed, wrong := f.Set(m.Trip, msg.Text)
	m.Form = m.wrong(msg.Field, wrong)
	if !wrong.Nothing() || f.Get(changed) == f.Get(m.Trip) {
		return m.do(SaveTrip{})
	}
	if f.Key == "vehicle" { // its tanks are other tanks: their fields start afresh
		m.Typed, m.Wrong = nil, nil
	}
	if SizeOf(m.Trip.Vehicle) != SizeOf(changed.Vehicle) { // other roads are open to it
		changed.Round = nil
		m.Drawing = m.forget()
	}
	m.Trip, m.Before = changed, nil
	return m.askTyped(f.Key)
}

func (FormToggled) update(m Model) Model {
	m.Editing = !m.Editing
	return m.do(SaveTrip{})
}
