package trip

import (
	"fmt"
	"maps"
	"slices"

	"github.com/paulmach/orb"
)

// Answer is what the data say about a question. The zero value is Unknown.
type Answer int8

const (
	Unknown Answer = iota // the data do not say
	Yes
	No
)

// String is the answer as a word.
func (a Answer) String() string {
	switch a {
	case Yes:
		return "yes"
	case No:
		return "no"
	}
	return "unknown"
}

// A Note is what a person knows of a place, and the map does not: it wins over the data.
type Note struct {
	ID     string             `json:"id,omitempty"`     // of the place in the map data; "": the place is found by its position
	Kind   PlaceKind          `json:"kind,omitempty"`   // of a place that no map has
	Name   string             `json:"name,omitempty"`   // likewise
	Serves map[string]string  `json:"serves,omitempty"` // by tank: yes or no
	Night  string             `json:"night,omitempty"`  // likewise
	HookUp string             `json:"hookup,omitempty"` // likewise
	Prices map[string]float64 `json:"prices,omitempty"` // by tank a unit, and [NightPrice]
	Hours  string             `json:"hours,omitempty"`  // as opening_hours is written
	Text   string             `json:"text,omitempty"`
	Who    string             `json:"who,omitempty"`
	When   Date               `json:"when"`
	Point  orb.Point          `json:"-"`
}

// NightPrice is the key of [Note.Prices] for a night.
const NightPrice = "night"

// answer of what a note says: yes or no, "" for nothing.
func answer(said string) Answer {
	switch said {
	case "yes":
		return Yes
	case "no":
		return No
	}
	return Unknown
}

// Validate says what is wrong with a note.
func (n Note) Validate() error {
	for name, said := range n.answers() {
		if said != "" && answer(said) == Unknown {
			return fmt.Errorf("note of %s: %s is %q: write yes or no", n.When, name, said)
		}
	}
	for tank := range n.Serves {
		if !slices.Contains(TankIDs(), tank) {
			return fmt.Errorf("note of %s: there is no tank %q: write one of %v", n.When, tank, TankIDs())
		}
	}
	for name, price := range n.Prices {
		if name != NightPrice && !slices.Contains(TankIDs(), name) || !within(price, 0, MoneyRange.Most) {
			return fmt.Errorf("note of %s: price %q of %v: write a tank or %q, and a sum from 0 on", n.When, name, price, NightPrice)
		}
	}
	return n.placed()
}

// placed says what is wrong with when and where a note is.
func (n Note) placed() error {
	if n.When == "" || n.When.Time().IsZero() {
		return fmt.Errorf("note of %q: it needs a date, as 2027-05-01", n.When)
	}
	if _, known := placeKinds[n.Kind]; n.Kind != "" && !known {
		return fmt.Errorf("note of %s: there is no kind of place %q: write one of %v", n.When, n.Kind, slices.Sorted(maps.Keys(placeKinds)))
	}
	if !within(n.Point[0], -180, 180) || !within(n.Point[1], -90, 90) {
		return fmt.Errorf("note of %s: %v is no position", n.When, n.Point)
	}
	return nil
}

// answers are what a note says yes or no to, by name.
func (n Note) answers() map[string]string {
	out := map[string]string{"night": n.Night, "hookup": n.HookUp}
	for tank, said := range n.Serves {
		out[tank] = said
	}
	return out
}

// placeKinds are all that there are.
var placeKinds = map[PlaceKind]bool{FuelStation: true, Disposal: true, WaterPoint: true, WaterTap: true, Stopover: true, Campsite: true, ServiceArea: true, GasShop: true}
