// Package planner has the words of a planning problem and its answer, in
// numbers alone.
//
// What comes in is a [Problem]: a route, limits of a day, tanks, stops. What goes
// out is a [Plan]. It knows no map, no calendar and no vehicle: every tank is a
// headroom that the trip uses up and a stop restores, and no code below this
// folder asks which tank it is. What the numbers mean on the road is the business
// of package trip. Read problem.go first, then plan.go.
//
// The rooms, from the words on:
//
//   - audit says whether a plan keeps every rule, by itself
//   - replay turns visits that a person or the solver chose into a plan
//   - internal/model and internal/bound lay a problem out for the solver, and
//     say what the rest of a trip costs at least
//   - solve finds a plan of least cost and proves it
//   - habit makes of it one that people drive
//   - reason says why there is none, and what comes nearest
//   - backup sees what becomes of a plan when a place is closed, stays with a
//     plan in use, and offers others
//
// Unless a name says otherwise, distances are kilometres along the route,
// times are minutes since 00:00 of day one, amounts are in the unit of their
// tank (litres, or ampere-hours for a battery), money is in one currency.
// Nothing here does I/O, reads a clock, keeps globals or starts goroutines:
// the same problem gives the same plan, byte for byte.
//
//	p, err := problemfile.Decode("trip.json", bytes) // of ullage/data
//	plan, err := solve.Solve(ctx, p, solve.Options{})
//	if plan.Status == planner.Optimal {
//		fmt.Println(plan.Cost, plan.Visits)
//	}
//
// Decisions. Where stops share a km,
// the problem's list is the order of passing; the price is that two such stops are
// not interchangeable. Site and operator are two fields: one joined name would
// make a single site of all stations of two chains that touch once. Rules hold
// within 1e-6, stated numbers within 1e-5 and 1e-9 of their size, so that files
// with six decimals pass. Nothing here is a sentence: reasons and broken rules are
// kinds and numbers, and facts for app/say.
//
// Files, each using only those above it:
//
//   - problem.go: what a problem is, and what is asked of it everywhere
//   - stay.go: how often a tank is served in a stay
//   - why.go: what stands in the way of a plan, and what would help
//   - plan.go: what a plan is
//   - broken.go: the rules, and the one that a plan breaks
//   - limits.go: how large a problem may be
//   - facts.go: what there is to say of reasons, changes and broken rules
//   - short.go: what no plan can keep, seen at once
//   - validate.go: whether a problem is one
package planner
