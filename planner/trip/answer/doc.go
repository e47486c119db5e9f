// Package answer plans a trip and answers what a person asks next: what caution
// and safety cost, which other plans there are, or why there is none and what
// would help.
//
//	it, err := answer.Trip(ctx, t, places, answer.Options{Build: build.Options{Hours: hours}})
//	if err != nil { return err }
//	for _, d := range it.Days {
//		for _, c := range d.Calls { fmt.Println(d.Date, c.Name, c.Tasks) }
//	}
package answer
