// Package page is what is seen in the browser: the trip form, the level strips,
// the itinerary by day and the map, all pointing at the same moment.
//
// It puts the rooms together. What is true lives in one [model.Model] value; the rooms
// form, itinerary, strip and mapview show parts of it and send a message back; model
// decides what becomes of it and what is to be done; this package does it: it asks the
// planner through package job, files and the map through package browser. Words come
// from package say, pictures from package draw.
//
// Decisions. The program's page and its worker are one file, so one file is loaded and
// kept. Nothing may take long on the page's thread: a file of places is read by the
// worker, a backdrop in bites. An answer is read in one task and shown in the next. What
// is kept for the next visit is noted in the task in which it happens, letters and steps
// of a drawing too: see package keep. The route, which is long, is an item of its own
// there, so that a letter costs no more than the rest of the trip. The untouched example
// is not kept. What another tab ticks is ticked here; any other change of it is told, and
// a person chooses. The position is asked for by a button, once each time.
//
// Unless a name says otherwise, distances are kilometres along the route, times
// are minutes since 00:00 of day one, money is in the trip's currency.
//
// Read effects.go first, then page.go.
//
// Files, each using only those above it:
//
//   - order.go: answers in their order
//   - backdrop.go: the backdrop, read in bites
//   - offer.go: what can be done at a press
//   - kept.go: what this device keeps
//   - sources.go: the files in use
//   - statusline.go: what the page is doing
//   - core.go: the model, and the planner to ask
//   - ways.go: questions about roads
//   - source.go: files to open
//   - keeping.go: what is kept for the next visit
//   - visit.go: where the last visit ended
//   - opening.go: files
//   - effects.go: what is to be done
//   - handlers.go: what happens on the page
//   - page.go: the page
//   - start.go: how it begins
package page
