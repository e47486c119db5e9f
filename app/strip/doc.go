// Package strip shows the level of each tank along the trip, as a picture and in
// words, and moves the moment that the whole page looks at.
//
// What comes in are an itinerary, the axis that all strips share, the moment and a
// voice. What goes out are components and messages that move the moment, by pointer
// and by keys.
//
// Decision. A strip draws headroom for every tank: low is always bad. What belongs to
// one tank is a component of its own, so that moving the moment draws words, not
// pictures.
//
// Files, each using only those above it:
//
//   - shown.go: numbers and words of a strip
//   - strips.go: the strips
package strip
