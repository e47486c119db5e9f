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
// is kept for the next visit is kept as it happens: a phone may put the page away before
// IndexedDB has written, so ticks, gauges and points of a drawing go to localStorage in
// the task of the click. The position is asked for by a button, once each time.
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
//   - sources.go: the files in use
//   - statusline.go: what the page is doing
//   - core.go: the model, and the planner to ask
//   - ways.go: questions about roads
//   - keeping.go: what is kept for the next visit
//   - opening.go: files
//   - effects.go: what is to be done
//   - handlers.go: what happens on the page
//   - page.go: the page
//   - start.go: how it begins
package page
