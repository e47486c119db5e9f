// Package fact holds what there is to say before it is in words: a kind, and
// the values that belong to it.
//
// What comes in are numbers, names and tags of the packages that plan. What goes
// out is a [Fact], which travels as JSON and is never read back from a sentence.
// Only app/say turns facts into words, with the units and the language of who
// reads them; no other package writes a sentence for people.
//
// A kind is a short name such as "stop.hours_unknown", declared as a constant
// where the fact is made. Its values have names too, and say what they are: a
// distance, a level, money, a moment, a tank, a name that the data give. So a
// sentence can be said in miles or in another language without being parsed.
//
// Read fact.go first, then value.go.
//
// Unless a name says otherwise distances are km along the route, lengths m, amounts
// L or Ah, temperatures °C, masses kg, moments minutes since 00:00.
//
// Files, each using only those above it:
//
//   - value.go: one value and what it is
//   - fact.go: a kind with its values
package fact
