// Package planner answers a planning problem with a plan of least cost, and
// replays any plan to say whether it is valid and what it costs.
//
// It owns the problem, the plan, the solver, the auditor and the reasons for
// a refusal. It knows no map, no calendar and no vehicle: every tank is a
// headroom that the trip uses up and a stop restores, and no code here asks
// which tank it is. What the numbers mean on the road is the business of
// package trip.
//
// Unless a name says otherwise, distances are kilometres along the route,
// times are minutes since 00:00 of day one, amounts are in the unit of their
// tank (litres, or ampere-hours for a battery), money is in one currency.
//
// The entry points are [Decode], [Solve] and [Audit]; [Answer] adds reasons
// ([Explain]) or fallbacks ([Closures]), [Alternatives] the next-best plans, and
// [Replay] turns visits that a person chose into a plan. What every rule
// means exactly is written on top of replay.go:
//
//	p, err := planner.Decode("trip.json", bytes)
//	plan, err := planner.Solve(ctx, p, planner.Options{})
//	if plan.Status == planner.Optimal {
//		fmt.Println(plan.Cost, plan.Visits)
//	}
//
// The package does no I/O, reads no clock, keeps no globals and starts no
// goroutines: the same problem gives the same plan, byte for byte.
package planner
