// Package model lays a problem out for the solver: indices instead of names,
// money instead of minutes, every tank as a headroom.
//
// What comes in is a valid [planner.Problem]. What goes out is a [Model], and
// [State]s that move along its stops, one visit after the other. Read model.go
// first, then layers.go.
//
// Decisions. How much to buy is decided as late as possible (layers.go): so a
// partial plan need not say how much it bought where, and there are few of them.
// A tank's hand is headroom + use·km, so that driving changes nothing and rounds
// nothing; the price is that every look at a level adds the km. No built-in min or
// max of numbers in hot loops (numbers.go): they are calls in wasm. Fields are open
// to the solver's packages, for a getter in these loops costs as much as the work.
//
// Files, each using only those above it:
//
//   - numbers.go: the lesser, the greater, and what counts as equal
//   - layers.go: what is in hand, and what could have been bought
//   - model.go: the problem by index
//   - asks.go: what is asked of it
//   - visit.go: a trip moved along: to a stop, through a visit, to the end
package model
