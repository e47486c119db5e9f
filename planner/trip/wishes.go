package trip

import (
	"errors"
	"fmt"

	"github.com/paulmach/orb"

	"ullage/planner/fact"
)

// How people live on board. The zero value of each is what is usual: aboard, or as many as usual.
type (
	Showers string
	Toilet  string
	Cooking string
	Dishes  string
	Devices string
)

const (
	ShowerAboard Showers = "aboard"
	ShowerSites  Showers = "sites"
	ShowerFrugal Showers = "frugal"

	ToiletAboard Toilet = "aboard"
	ToiletSites  Toilet = "sites"

	CookAboard Cooking = "aboard"
	CookLittle Cooking = "little"

	DishesAboard Dishes = "aboard"
	DishesSites  Dishes = "sites"

	DevicesLittle Devices = "little"
	DevicesUsual  Devices = "usual"
	DevicesMany   Devices = "many"
)

// Party is who travels and how they live on board.
type Party struct {
	Adults   int     `json:"adults"`
	Children int     `json:"children"`
	Showers  Showers `json:"showers"`
	Toilet   Toilet  `json:"toilet"`
	Cooking  Cooking `json:"cooking"`
	Dishes   Dishes  `json:"dishes,omitempty"`  // "": where the showers are
	Devices  Devices `json:"devices,omitempty"` // charged aboard; "": usual
}

// DayLimits bound one day on the road.
type DayLimits struct {
	MaxKm     float64 `json:"max_km"`
	MaxMin    float64 `json:"max_min"`
	DepartMin float64 `json:"depart_min"` // minutes after midnight
	SpeedKmh  float64 `json:"speed_kmh"`  // average along the route
}

// A Wish is about a place or a day of the trip. One of Place, Near with WithinKm, Rest and
// HookUpFrom says what about.
type Wish struct {
	Place      string    `json:"place,omitempty"`       // be there
	Near       orb.Point `json:"near,omitzero"`         // spend a night somewhere about here …
	WithinKm   float64   `json:"within_km,omitempty"`   // … so near to it
	Nights     int       `json:"nights,omitempty"`      // of a stay there; 0: any number, or none
	On         Date      `json:"on,omitempty"`          // be there on that day
	Rest       Date      `json:"rest,omitempty"`        // do not drive on that day
	HookUpFrom Date      `json:"hookup_from,omitempty"` // from that night on only with hook-up
}

// Kinds of what a wish says.
const (
	wishPlace  fact.Kind = "wish.place"  // {n} nights at {name}, on {date}: each may be nothing
	wishNear   fact.Kind = "wish.near"   // {n} nights within {km} of {point}
	wishRest   fact.Kind = "wish.rest"   // no driving on {date}
	wishHookUp fact.Kind = "wish.hookup" // from {date} on with hook-up
)

// Says is a wish about places that are called so.
func (w Wish) Says(called func(place string) fact.Value) fact.Fact {
	v := fact.V{"n": {}, "date": {}}
	if w.Nights > 0 {
		v["n"] = fact.Count(w.Nights)
	}
	if w.On != "" {
		v["date"] = w.On.Says()
	}
	switch {
	case w.Rest != "":
		return fact.Of(wishRest, fact.V{"date": w.Rest.Says()})
	case w.HookUpFrom != "":
		return fact.Of(wishHookUp, fact.V{"date": w.HookUpFrom.Says()})
	case w.Place != "":
		v["name"] = called(w.Place)
		return fact.Of(wishPlace, v)
	}
	v["km"], v["point"] = fact.Km(w.WithinKm, 0), fact.Text(fmt.Sprintf("%.4f, %.4f", w.Near[1], w.Near[0]))
	return fact.Of(wishNear, v)
}

// validate says what is wrong with a wish of a trip that begins on a day.
func (w Wish) validate(start Date) error {
	about := 0
	for _, is := range []bool{w.Place != "", w.WithinKm != 0, w.Rest != "", w.HookUpFrom != ""} {
		if is {
			about++
		}
	}
	if about != 1 {
		return fmt.Errorf("it says %d things: give one of place, near with within_km, rest and hookup_from", about)
	}
	if !within(w.WithinKm, 0, 1000) || !within(float64(w.Nights), 0, NightsRange.Most) || !within(w.Near[0], -180, 180) || !within(w.Near[1], -90, 90) {
		return fmt.Errorf("within_km is %v, nights %d, near %v: give numbers from 0 on, and a position", w.WithinKm, w.Nights, w.Near)
	}
	for _, d := range []Date{w.On, w.Rest, w.HookUpFrom} {
		if _, ok := ParseDate(string(d)); d != "" && !ok {
			return fmt.Errorf("%q is no date: write it as 2027-06-12", d)
		}
	}
	if w.Rest == start {
		return errors.New("nobody can rest on the day of setting off: wish for a later day")
	}
	return nil
}

// StayWishes say where the nights may be spent.
type StayWishes struct {
	MinNights int     `json:"min_nights"`
	MaxNights int     `json:"max_nights"`        // 0: any number
	Campsites bool    `json:"campsites"`         // sites with service
	Stopovers bool    `json:"stopovers"`         // plain places for motorhomes
	HookUp    bool    `json:"hookup"`            // only with hook-up
	MaxFee    float64 `json:"max_fee,omitempty"` // money per night; 0: any
}

// Allow tells whether the wishes let a night be spent at a kind of place.
func (w StayWishes) Allow(k PlaceKind) bool {
	if k.Custom().Site {
		return w.Campsites
	}
	return w.Stopovers
}
