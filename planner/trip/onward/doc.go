// Package onward makes what is left of a trip, and what the gauges say, a trip
// of its own.
//
//	rest, err := onward.From(t, it, onward.Now{Km: &km, Time: "2026-06-13T14:20"})
//
// What comes in are the trip, its plan in use and [Now]: where and when somebody is, what the
// gauges show, which stops were passed. What goes out is [Rest], whose trip is planned like
// any other, without a network. Read now.go first, then rest.go.
//
// Decisions. Without another word a stop behind counts as called at; a night only when
// it is over. A gauge and the plan are weighed by how sure each is, and a gauge that
// contradicts the plan is believed. What a tank was filled with on the way is told from its use by the
// plan's own levels; a tank that driving fills teaches nothing.
//
// Files, each using only those above it:
//
//   - now.go: where, when and what the gauges show
//   - passed.go: what lies behind, and what did not come about of it
//   - position.go: where on the route that is
//   - visited.go: the calls here and behind
//   - watch.go: what a gauge says and teaches
//   - rest.go: the trip that is left
package onward
