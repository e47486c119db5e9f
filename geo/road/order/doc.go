// Package order puts the vertices of a graph into an order in which ways are
// found fast, and lists what is above each of them. It knows no roads.
//
// In comes a [Graph], with where its vertices lie on a flat map. Out goes a rank
// for each vertex ([Nested]), and for a graph that is numbered by rank its
// [Hierarchy] ([Contract]): the same for all weights, so another vehicle or aim
// needs no new one. Read order.go first.
//
// Decisions. The order is by inertial flow (A. Schild, C. Sommer, "On Balanced
// Separators in Road Networks", SEA 2015): a few lines of code, against a graph
// partitioner's thousands. Price: a few more arcs than the best known orders.
// The hierarchy is that of J. Dibbelt, B. Strasser, D. Wagner, "Customizable
// Contraction Hierarchies", ACM J. Experimental Algorithmics 21, 2016 (arXiv
// 1402.0402).
//
// The package does no I/O, reads no clock and keeps no state: the same input
// gives the same output.
//
// Files, each using only those above it:
//
//   - graph.go: a graph, and where its vertices lie
//   - flow.go: the least cut through a cell of it
//   - order.go: nested dissection by such cuts
//   - hierarchy.go: what is above each vertex
package order
