// Package triptest has made-up trips, places and roads for the tests of the
// rooms of planner/trip, and writes facts in a line to compare them.
//
// Read triptest.go first.
//
// Files, each using only those above it:
//
//   - line.go: facts in a line
//   - roads.go: roads that say what a test wants
//   - triptest.go: trips and places that can be counted by hand
package triptest
