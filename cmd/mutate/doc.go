// Command mutate puts one small wrong thing at a time into packages, and tells
// which ones their tests do not notice: a missing test, or code that does
// nothing.
//
//	go run ./cmd/mutate -n 200 -seed 1 ./data/hours ./planner/trip/...
//
// The wrong things are comparisons that take the other edge, conditions turned
// round, statements dropped and constants shifted. They reach the compiler by
// an overlay, so no file of the tree is touched. The same seed draws the same
// mutants of the same source. A mutant that runs out of time counts as noticed,
// one that does not compile as none at all.
//
// Survivors that were looked at and stay stand in the file known.txt beside
// this, each with the reason; -known names another. It exits 1 if there are
// others, 2 if it cannot begin.
//
// Made here rather than taken: what the registry has (from memory) copies the
// module for each mutant, or drops no statements, or draws by no seed. Price:
// some 400 lines over go/ast to keep.
//
// Files, each using only those above it:
//
//   - mutant.go: what can be made wrong in a file
//   - known.go: survivors that may stay
//   - try.go: whether the tests notice
//   - main.go: the flags, and what is told
package main
