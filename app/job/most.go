package job

import (
	"fmt"

	"ullage/planner/fact"
)

// What is too much for one page, which has 1 GB for places and plans: bytes of memory
// that one file of map data may take, places of all files, and stops that a plan weighs.
const (
	mostPlaceBytes = 300 << 20
	mostPlaces     = 300_000
	mostStops      = 20_000
)

// tooMany is the error that there are more places than a page can hold.
type tooMany struct{ have, most int }

func (e *tooMany) Error() string {
	return fmt.Sprintf("%d places are too many for a page, which holds %d", e.have, e.most)
}

const manyPlaces fact.Kind = "many.places"

// Fact says how many there are and may be.
func (e *tooMany) Fact() fact.Fact {
	return fact.Of(manyPlaces, fact.V{"n": fact.Count(e.have), "was": fact.Count(e.most)})
}
