package model

import (
	"slices"

	"ullage/planner/fact"
)

// This file takes what the page hears of what this device keeps, and what a person
// wants done about it.

type (
	// NotKept: this device could not keep something for the next visit.
	NotKept struct{ Why string }
	// StoreForgets: the browser keeps nothing for this page.
	StoreForgets struct{}
	// Overtaken: another tab has changed the trip since.
	Overtaken struct{}
	// KeptUnread: something that was kept cannot be read here.
	KeptUnread struct{ Unread }
	// MapMissing: a map that was kept is not there, or could not be kept.
	MapMissing struct{ Missing }
	// KeptRoom: so much room is used, and such other trips are kept.
	KeptRoom struct {
		Used, Most float64
		Desks      []Desk
	}

	// TakeOver shows here what the other tab has; GoOnAsCopy leaves it to that tab.
	TakeOver   struct{}
	GoOnAsCopy struct{}
	// UnreadSaved: give what cannot be read as a file. FreshAsked: go on without it.
	UnreadSaved struct{ ID string }
	FreshAsked  struct{}
	// EverythingAsked: give all that is kept as one file.
	EverythingAsked struct{}
	// DeskOpened opens another trip that is kept, DeskRemoved takes it away.
	DeskOpened  struct{ ID string }
	DeskRemoved struct{ ID string }
)

func (msg NotKept) update(m Model) Model {
	m.Trouble = fact.Of("page.not_kept", fact.V{"why": fact.Text(msg.Why)})
	return m
}

func (StoreForgets) update(m Model) Model {
	m.Forgets = true
	return m
}

func (Overtaken) update(m Model) Model {
	m.Keeping.Overtaken = true
	return m
}

func (msg KeptUnread) update(m Model) Model {
	m.Unread = append(slices.Clip(m.Unread), msg.Unread)
	if !msg.Set && !m.HasTrip() {
		m.Phase, m.Failure = Failed, fact.Of("status.no_trip", nil)
	}
	return m
}

func (msg MapMissing) update(m Model) Model {
	m.Missing = append(slices.Clip(m.Missing), msg.Missing)
	return m.mapless()
}

func (msg KeptRoom) update(m Model) Model {
	m.Used, m.Most, m.Desks = msg.Used, msg.Most, msg.Desks
	return m
}

func (TakeOver) update(m Model) Model { return m.do(Reload{}) }

func (GoOnAsCopy) update(m Model) Model {
	m.Keeping.Overtaken = false
	return m.do(Fork{})
}

func (msg UnreadSaved) update(m Model) Model { return m.do(SaveUnread(msg)) }

func (FreshAsked) update(m Model) Model { return m.do(OpenFresh{}) }

// goOn takes note that a person goes on without what cannot be read.
func (m Model) goOn() Model {
	m.Unread = slices.Clone(m.Unread)
	for i := range m.Unread {
		m.Unread[i].Set = true
	}
	return m
}

func (EverythingAsked) update(m Model) Model { return m.do(SaveEverything{}) }
func (msg DeskOpened) update(m Model) Model  { return m.do(OpenDesk(msg)) }
func (msg DeskRemoved) update(m Model) Model { return m.do(RemoveDesk(msg)) }
