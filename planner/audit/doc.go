// Package audit checks a finished plan.
//
// What comes in is a problem and a plan, from the solver or from a file. What goes
// out is nothing, or the one rule that it breaks ([planner.Broken]). Read audit.go
// first, then tank.go.
//
// Decision: the auditor says the rules again. It imports the words of package
// planner and nothing else, so no mistake of replay or solver can be its own; and
// it looks at a plan the other way round, not visit by visit with all tanks, but
// one concern at a time over the whole trip. The price is 600 lines that say
// nothing new.
//
// Files, each using only those above it:
//
//   - visits.go: which stops, nights and services
//   - clock.go: driving, waiting, opening hours, the limits of a day
//   - gauge.go: one tank by its level
//   - acts.go: the inside of a stay, and the mass at every departure
//   - tank.go: one tank by its level over the whole trip
//   - cost.go: what it adds up to
//   - audit.go: all of it, one after the other
package audit
