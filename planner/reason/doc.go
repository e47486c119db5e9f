// Package reason says why a problem has no plan, what would cure it, and what
// comes nearest to a plan.
//
// What comes in is a problem that package solve has no plan for. What goes out are
// [planner.Reason]s and a [Nearest]. Read refuse.go first, then change.go.
//
// Decision: the nearest plan gives way step by step, for a problem cannot price a
// longer day or fewer nights. The measure is the sum of what each broken limit is
// missed by, as a share of it. Where one limit can give way alone it is the least of
// those; else all give way and are drawn back one by one, in two orders. It is a
// type of its own that is no plan. The price: with several limits it is minimal
// for each, not proven least in sum.
//
// Files, each using only those above it:
//
//   - change.go: what may give way, and by how much
//   - hirer.go: what the hirer can change about it
//   - explain.go: which limits are to blame, and what cures them
//   - lever.go: what else to try, one thing or two
//   - nearest.go: the trip that breaks least
//   - refuse.go: both, the reasons first
package reason
