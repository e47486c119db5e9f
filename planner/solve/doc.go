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
//   - Memory grows no faster than the stops: tables and labels are counted, not bytes,
//     so that the same problem gives the same answer on any machine. It stays below
//     400 MB + 10 kB a stop, and twice that in use before the garbage is collected.
//     Narrow sweeps drop the labels that nothing comes of. Of more than 2,000 stops a
//     first plan is sought among the best of every stretch. The price: with many
//     thousands of stops bounds are looser, and a proof may not be found.
//
//   - The context is asked once a table, and after some thousand ways of a visit: it
//     is passed by milliseconds in every phase. Then the answer is the best plan so far
//     or that nothing is known, never that there is none.
//
//   - Stops that a neighbour in the list replaces are left out first. Let b be by day
//     only, not required, a its neighbour with all services of b as cheap, as quick
//     and with no more to spare, as small a fee, as short a stop, open as b is or
//     always; let a's half detour and the road between them be no longer than b's half
//     detour, in km and in minutes; let driving restore no tank, and where there is
//     backup, let a have no night, which may restore what is to be spare. Take a plan that
//     visits b. Visit a in its place, or do at a what was done at b too; nothing lies
//     between them to be visited first. One arrives at a with no less headroom and no
//     later, for a lies on the way to b at the latest; what does not fit in is not
//     bought. Back on the road beyond both one has driven less, has no less in hand of
//     any tank and is no later. The clock there is the driving along the route and
//     what is charged by the minute, so no more was charged; what waiting is added
//     later was saved before. The rest of the plan is as it was, with less bought
//     where there is less room. So no plan is lost that another is not as good as;
//     that of equal ones the answer stays, ids are asked, too. Neighbours only: with a
//     stop between that is visited, a's detour may be what its day has no room for.
//
// Files, each using only those above it:
//
//   - thin.go: stops that no plan needs
//   - labels.go: partial plans, and which dominates which
//   - sweep.go: the state of a search, and the bound of a label
//   - leave.go: what no plan within the limit does
//   - pass.go: one step past one stop
//   - run.go: all stops, once
//   - recover.go: from a label to a plan
//   - worth.go: multipliers with which bounds are tight
//   - choice.go: bounds from cheap to fine
//   - sample.go: the best stops of every stretch
//   - any.go: some plan, quickly
//   - solve.go: sweeps until there is a proof
package solve
