package model

import "ullage/planner/byroad"

// This file offers other ways between two points of a route being drawn. To
// take one sets a point on it, which can be moved and taken back as any other.

type (
	// WaysAsked: other ways of a leg of the draft are wanted.
	WaysAsked struct{}
	// WaysFound: two legs for each, for a vehicle of that size; not OK if the
	// question was not answered.
	WaysFound struct {
		Vehicle Size
		Pair    Pair
		Legs    []byroad.Leg
		OK      bool
	}
	// WayTaken: the draft goes one of them.
	WayTaken struct{ Index int }
)

func (WaysAsked) update(m Model) Model {
	if m.Draft == nil {
		return m
	}
	i := m.Draft.Leg()
	if i < 0 {
		return m
	}
	of := Pair{m.Draft.Points[i], m.Draft.Points[i+1]}
	return m.offer(&OtherWays{Leg: i, Pair: of}).do(FindOthers{of})
}

func (msg WaysFound) update(m Model) Model {
	if m.Draft == nil || m.Draft.Ways == nil || m.Draft.Ways.Pair != msg.Pair || msg.Vehicle != SizeOf(m.Trip.Vehicle) {
		return m
	}
	if !msg.OK { // something else was asked for
		return m.offer(nil)
	}
	ways := OtherWays{Leg: m.Draft.Ways.Leg, Pair: msg.Pair, Known: true}
	for i := 1; i < len(msg.Legs); i += 2 {
		ways.List = append(ways.List, [2]byroad.Leg{msg.Legs[i-1], msg.Legs[i]})
	}
	return m.offer(&ways)
}

// offer changes the ways of the draft.
func (m Model) offer(ways *OtherWays) Model {
	d := *m.Draft
	d.Ways = ways
	m.Draft = &d
	return m
}

func (msg WayTaken) update(m Model) Model {
	if m.Draft == nil || m.Draft.Ways == nil || msg.Index < 0 || msg.Index >= len(m.Draft.Ways.List) {
		return m
	}
	ways := *m.Draft.Ways
	way := ways.List[msg.Index]
	via := way[1].Line[0]
	m.Legs = m.Legs.With([]Pair{{ways.Pair[0], via}, {via, ways.Pair[1]}}, way[:])
	return m.redraw(func(d Draft) *Draft { return d.insert(ways.Leg+1, via) })
}
