// Package solve finds a plan of least cost and proves it.
//
// What comes in is a [planner.Problem]. What goes out is a [planner.Plan] that
// package audit has passed, with what is proven of it. Read solve.go first, then
// sweep.go, labels.go and choice.go; what plans cost at least is internal/bound.
//
// Words: a label is a partial plan; a sweep goes over the stops once with all
// labels within a limit; one label dominates another that can do nothing better.
//
// Decisions:
//
//   - Search just above the bound: sweep for plans within 0.15 % of it, then wider
//     until one is found. Nothing below the limit was dropped, so it is optimal.
//     Each step is so wide that a sweep keeps some six times the labels of the one
//     before; doubling overshot at ten times the cost. When sweeps begin to cost
//     more, narrow ones find a plan to show. The price: repeated sweeps where the
//     gap is large.
//
//   - A visit is bounded before it is worked out: one of fifty is within the limit.
//     What single tanks tell of the whole trip leaves services out before a sweep.
//
//   - Bounds in stages: rough classes, then very many of the tank that driving
//     restores, then tanks taken in one by one, each time the one that raises the
//     bound most, then finer still. Dropping one tank at a time was no help: two had
//     to go together. The price: up to 15 tables in a stage, so the effort before it
//     grows with the square of the stops.
//
//   - Purses are compared where prices change, each layer with an end in absolute
//     units: adding up amounts once skipped the rest by a rounding of 1e-14, and a
//     better plan was dropped. The comparison is tested against its definition.
//
//   - labels.dominates, sweep.visit, model's Stay and bound's lower are longer than a
//     function should be: they are the innermost loops, and a call more in them is felt.
//
// Files, each using only those above it:
//
//   - labels.go: partial plans, and which dominates which
//   - sweep.go: the state of a search, and the bound of a label
//   - leave.go: what no plan within the limit does
//   - pass.go: one step past one stop
//   - run.go: all stops, once
//   - recover.go: from a label to a plan
//   - worth.go: multipliers with which bounds are tight
//   - choice.go: bounds from cheap to fine
//   - solve.go: sweeps until there is a proof
//   - any.go: some plan, quickly
package solve
