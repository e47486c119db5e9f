// Package problemfile reads problems and plans of the planner from JSON: the formats ullage-problem-2 (and 1) and ullage-plan-2.
//
// In come the bytes of a file, out goes a [planner.Problem] that [planner.Problem.Validate] has passed, or a [planner.Plan] of which
// audit.Check says whether it is one. Errors name the file, line, column and field. Both are written by encoding/json.
//
//	p, err := problemfile.Decode("trip.json", bytes)
//
// Decision: unknown members are errors, since a misspelt "capcity" must not become 0. Price: less forward compatibility.
package problemfile
