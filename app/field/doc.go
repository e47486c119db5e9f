// Package field is the trip form without its look: what can be typed, how it is
// read, what of a trip it changes.
//
// What comes in are a trip, a fleet and the voice whose units are typed. What goes
// out is a list of fields, each with a function that shows its text and one that
// takes it. Their words are in the catalogue of app/say, by the field's name: a new
// field is one entry of form.go, and a line or two of each language.
//
// Read field.go first.
//
// Files, each using only those above it:
//
//   - number.go: what a control holds, read and written
//   - field.go: a control of the form, by what it holds
//   - tank.go: the controls of a tank
//   - form.go: the form in its order
package field
