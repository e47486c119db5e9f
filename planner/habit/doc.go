// Package habit makes of a cheapest plan one that people drive: amounts that they
// pump, no stop for next to nothing, days that are about as long.
//
// What comes in is a problem and a plan of it. What goes out is another plan of it
// that costs a little more, every rule kept. Read even.go first, then pump.go.
//
// Decision. These are wishes about a plan that is known to be the cheapest, not rules of
// the model: so the proof stays one, and what a habit costs can be told beside it. Price:
// of two habits that could be had together for less, only one after the other is tried.
//
// Files, each using only those above it:
//
//   - even.go: days that are about as long
//   - visits.go: what is asked of visits
//   - fewer.go: no stop for next to nothing
//   - pump.go: amounts that people pump
package habit
