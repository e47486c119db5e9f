package osm

import (
	"regexp"
	"slices"

	"ullage/data/osm/file"

	"ullage/planner/fact"
	"ullage/planner/trip"
)

// What there is to say of a file: how many, n, were left out.
const (
	placesShut   fact.Kind = "osm.shut"
	placesAdrift fact.Kind = "osm.adrift"
	tooMuch      fact.Kind = "osm.too_much"
)

// A TooLarge error is about a file with more of what is wanted than may be kept.
type TooLarge struct{ *file.TooMuch }

// Fact says what would be too much.
func (e TooLarge) Fact() fact.Fact {
	return fact.Of(tooMuch, fact.V{"n": fact.Count(int(e.Most >> 20))})
}

// Options say how to read. The zero value reads everything silently.
type Options struct {
	Progress   func(done, total int64) // bytes of the file taken in; called from Read, often
	NoBackdrop bool                    // places only
	Most       int64                   // bytes of memory that it may take, about; 0: 4 GB. More is refused: [TooLarge]
}

// An Extract is what the planner and the map need of a file.
type Extract struct {
	Places   []trip.Place // by type and number
	Backdrop Backdrop
	Date     trip.Date   // of the data, 2025-01-19; "" if the file does not say
	Objects  int         // objects that had a wanted tag
	Notes    []fact.Fact // what was left out and why
}

// FromOSM tells whether places are named as OpenStreetMap names its objects, whose attribution is due then.
func (x Extract) FromOSM() bool {
	return slices.ContainsFunc(x.Places, func(p trip.Place) bool { return osmID.MatchString(p.ID) })
}

var osmID = regexp.MustCompile(`^[nwr]\d+$`)
