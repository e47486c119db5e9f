// Package model is all that the page knows, and how that changes: without a
// browser, a clock or a thread, so that it is tested natively.
//
// What comes in are messages: what a person did, what was read, what the planner
// answered. What goes out of [Update] is a new [Model], a value that components
// show, and [Effect]s, which say what is to be done next. Words are facts; the
// rooms that show them have the voice.
//
// Decisions. A message's type and what it does stand together, so there is no
// function that knows all messages; the parts of the model are embedded, so that a
// message can be read without knowing in which part a thing lies. Effects are values
// rather than counters that somebody has to notice: a test sees what is asked for.
// What a model points to is never changed, so the one before can be compared and shown.
//
// Unless a name says otherwise, distances are kilometres along the route, times are
// minutes since 00:00 of day one, money is in the trip's currency.
//
//	m, _ := model.Update(model.New(trip.Fleet()), model.TripRead{Trip: t})
//	m, todo := model.Update(m, model.Edited{Field: "adults", Text: "3"})
//
// Read model.go first, then any file of messages.
//
// Files, each using only those above it:
//
//   - along.go: places along a line
//   - legs.go: ways between the points of a drawing
//   - draft.go: a route being drawn, step by step
//   - effect.go: what is to be done next
//   - model.go: all that the page knows, and what a message is
//   - marks.go: what this machine remembers beside the trip
//   - planning.go: plans asked for and answered
//   - cursor.go: the moment looked at
//   - keeping.go: what was kept, and what was not
//   - track.go: where the route came from
//   - work.go: what is half done
//   - opening.go: what files hold
//   - elsewhere.go: map data of somewhere else
//   - roads.go: roads of the map data
//   - drawing.go: points set and moved
//   - otherways.go: other ways between two of them
//   - ferries.go: ferries that a person names
//   - report.go: what somebody on the road says
//   - device.go: where the device is
//   - onward.go: going on from there
//   - editing.go: what is typed
package model
