// Package answer plans a trip and answers what a person asks next: what caution
// and safety cost, which other plans there are, or why there is none and what
// would help.
//
//	it, err := answer.Trip(ctx, t, places, answer.Options{Build: build.Options{Hours: hours}})
//	if err != nil { return err }
//	for _, d := range it.Days {
//		for _, c := range d.Calls { fmt.Println(d.Date, c.Name, c.Tasks) }
//	}
//
// What comes in is a trip, or one that is built. What goes out is a
// [trip.Itinerary], told as it grows: a better plan, the answer, what else there is to say.
// Read plan.go first.
//
// Decisions. Every plan is audited before it is shown. A plan in use is kept while it costs
// at most a hundredth more, so that a small change does not turn a trip over. Every
// cure was tried by planning the changed trip; what was not tried is never called
// impossible. The true cause comes first: what the map data hold no place for is
// found by making such places up. What time does not allow is left out,
// the price of safety and other plans first.
//
// Files, each using only those above it:
//
//   - asker.go: what the planner is asked
//   - remedy.go: what else people can do
//   - made.go: places that nobody knows of
//   - lack.go: what the map data have no place for
//   - relief.go: one change, or two, and what they come to
//   - ring.go: whom to ring
//   - cures.go: what would give a trip a plan, singly and in pairs
//   - lines.go: a day in one line
//   - others.go: plans that one may like better
//   - safety.go: what it costs to survive a closed place
//   - care.go: what the caution costs
//   - firm.go: the keys and the plate
//   - refuse.go: why there is no plan
//   - habits.go: the plan that people rather drive
//   - plan.go: a trip planned
package answer
