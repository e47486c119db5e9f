// Package backup sees to what a plan is worth when things change: a place that is
// closed, a plan that is in use already, a person who wants another one.
//
// What comes in is a problem with a plan, or with the stops in use. What goes out
// are [Closure]s, a plan that survives them or stays ([Survive], [SolveSteady]),
// what that costs ([Safety]) and [Alternative]s. Read closure.go first.
//
// Decisions:
//   - Closures are a search by example: the next four places per service, fill up,
//     follow the rest. Finding no way on proves nothing.
//   - Survive = rule, simulate, tighten. Spare looks at one tank and one place only.
//     Where a closure is not survived, more is asked for in hand, or at the return,
//     or that service is done without; ten rounds at most. The bound stays that of
//     the problem. The price: up to ten more solves, and the dearer plan is not
//     proven least among those that survive. The reserve may be spent on the way to a
//     fallback, and a night's fallback may need a day half as long again.
//   - A plan in use stays: stops in use only, then fewer new stops, then the
//     cheapest, within what is allowed above the proven bound. The price: up to two
//     solves, and a plan that depends on its history.
//
// Files, each using only those above it:
//
//   - closure.go: every stop closed in turn
//   - steady.go: a plan that stays with the stops in use
//   - survive.go: a plan that survives closures
//   - safety.go: what surviving costs
//   - alternative.go: other plans that a person tells from this one
package backup
