// Package advice holds what is said about doing things: how each kind of stop is
// done, what can go wrong there, who decides, and what is ticked off before driving
// off, on arrival, at a service point and at the return.
//
// What comes in is the id of a how-to or a checklist, and which conditions hold
// (gas on board, frost, hook-up). What goes out are facts in their order, with ids
// that stay the same over versions, so that a tick can be stored. There is no word
// of English here: app/say has a sentence for each.
//
// Read howto.go first; to add a line, add its id to the table in howtos.go or
// checklists.go and its sentence to app/say/en.txt.
//
// Decisions. One how-to has one short line, its care, that is said wherever the thing
// is done, and the long list of cautions, which is said once: who reads the same six
// warnings at each stop reads none. Care never says less than what to do first, and
// the frost's own cautions go with it. All lines are common practice, no source, where no
// source stands beside them. None replaces the vehicle's handbook, local rules and
// licensed people: each how-to ends with who decides.
//
// Files, each using only those above it:
//
//   - item.go: one line, and the conditions under which it is said
//   - howto.go: a how-to as a fact of each line
//   - howtos.go: the how-tos
//   - checklist.go: a checklist
//   - checklists.go: the checklists
package advice
