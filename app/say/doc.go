// Package say turns facts into words, numbers, units and dates, for the page and
// the command line alike. Nothing else in the program makes a sentence for people.
//
// What comes in is a [fact.Fact], or the key of a label, and a [Voice]: a language
// and a system of units. What goes out is text. A language is one file of text,
// such as en.txt: a line for each key, its sentence in a part of ICU MessageFormat
// (message.go says which), so that a translator needs no Go.
//
// The zero Voice speaks English, in metric units, with plain spaces. A key that the
// catalogue does not have is shown in ‹›, never dropped; a test holds that there is none.
//
// Decisions. ICU MessageFormat because translators know it; an own reader of 200
// lines because golang.org/x/text/message, with its tables, is many times the size in
// the page. One sentence is one entry: no sentence is made from another's words. A tank
// is called as the catalogue calls it, unless the vehicle gives it a name of its own.
//
// Read sentence.go first, then voice.go.
//
// Files, each using only those above it:
//
//   - message.go: one sentence with its places for values
//   - catalog.go: the sentences of a language
//   - language.go: the languages, and how each counts
//   - voice.go: a language and units
//   - number.go: numbers and units
//   - when.go: dates and times
//   - sentence.go: facts and values in words
//   - json.go: facts as JSON, with their sentences
package say
