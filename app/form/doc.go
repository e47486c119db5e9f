// Package form shows what can be said to the page: the trip, its ferries, and where
// somebody on the road is.
//
// What comes in are parts of a model and a voice. What goes out are components, and a
// message for each text that is typed and each button. What a text means is decided
// by packages field and model, which say in facts what is wrong with it.
//
// Decision. A change is planned at once, without a button to send it; what is wrong
// stands beside its field and changes nothing. A control has a label, and whatever
// describes it is named for who does not see it.
//
// Read control.go first, then tripform.go.
//
// Files, each using only those above it:
//
//   - control.go: label, control, unit, hint
//   - ferries.go: ferries that a person names
//   - tripform.go: the trip in a few sentences, and its form
//   - road.go: what the panel of the road shows of a model
//   - roadpanel.go: where somebody on the road is
package form
