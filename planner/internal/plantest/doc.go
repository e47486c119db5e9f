// Package plantest makes problems for tests, all data invented, and solves them the
// slow, obvious way.
//
// The same arguments always give the same problem. Read made.go first, then brute.go.
//
// Files, each using only those above it:
//
//   - cases.go: problems kept in files or written out, and what tests ask of numbers
//   - made.go: problems of realistic shape and any length
//   - tiny.go: small random ones in which all that the model knows turns up
//   - brute.go: the least cost by trying everything
//   - polled.go: a context that ends at the n-th question
package plantest
