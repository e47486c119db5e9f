package life

import (
	"math"

	"ullage/planner/fact"
)

// This file holds what the law and good sense say about a day on the road.
// Signs, national law and the vehicle's papers decide.

// LightKg is the allowed mass up to which a motorhome is a light vehicle:
// licence class B, car limits (3.5 t; a revised directive allows 4.25 t to B once
// national law follows).
const LightKg = 3500

type limits struct {
	country         string // ISO 3166
	rural, motorway float64
}

// HeavyKg is up to where the limits below hold.
const HeavyKg = 7500

// heavy are general limits in km/h above 3.5 t and up to 7.5 t, without
// trailer, dry road. The rows marked EU are those of goods vehicles in a student
// site's copy of the EU's "Going abroad" pages; motorhomes can be better off.
var heavy = []limits{
	{"AT", 70, 80},  // EU; here and below the lower where two are given
	{"BE", 90, 90},  // EU
	{"CZ", 80, 80},  // EU
	{"DE", 80, 100}, // motorway: 12th exemption ordinance (flensburger-punkte); rural from memory
	{"DK", 70, 80},  // EU
	{"ES", 70, 80},  // EU
	{"FR", 80, 110}, // over 3.5 t 110/100/80 (ffcc.fr, camping-car.com)
	{"HR", 80, 90},  // EU
	{"HU", 70, 80},  // EU
	{"IT", 80, 100}, // EU
}

// Top speeds that are planned with. A light motorhome is driven at 80 to 100 on
// motorways (from memory); a heavy one at no more than the lowest motorway limit
// of the table.
const (
	lightTopKmh = 95
	heavyTopKmh = 80
)

// TopKmh is how fast a vehicle of an allowed mass is planned to be driven at most.
func TopKmh(allowedKg float64) float64 {
	if allowedKg > LightKg {
		return heavyTopKmh
	}
	return lightTopKmh
}

// HeavyRoads is the kind of what is said of a heavy vehicle, heavyLimit that of a
// country's limits.
const (
	HeavyRoads fact.Kind = "road.heavy"
	heavyLimit fact.Kind = "road.heavy_limit"
)

// Heavier is what is different on the road for a vehicle of an allowed mass;
// nothing for a light one, which has the limits of cars.
func Heavier(allowedKg float64) fact.Fact {
	if !(allowedKg > LightKg) {
		return fact.Fact{}
	}
	return fact.Of(HeavyRoads, fact.V{"allowed": fact.Kg(allowedKg), "light": fact.Kg(LightKg), "top": kmh(TopKmh(allowedKg))})
}

// HeavyLimits are general speed limits over [LightKg] and up to [HeavyKg], by country.
func HeavyLimits() fact.Value {
	return fact.Each(heavy, func(l limits) fact.Value {
		return fact.Clause(fact.Of(heavyLimit, fact.V{"country": fact.Text(l.country), "rural": kmh(l.rural), "motorway": kmh(l.motorway)}))
	})
}

func kmh(speed float64) fact.Value { return fact.Quantity(speed, "km/h", 0) }

const (
	// BreakEveryMin, BreakMin: 15 minutes after two hours (UK Highway Code, rule 91). Advice; the
	// rules of tachographs do not bind private motorhomes (from memory).
	BreakEveryMin = 120.0
	BreakMin      = 15.0

	// A day is comfortable up to 300 km (200–300, from memory), or the 5 h that
	// these take at the 60 km/h of mixed roads.
	ComfortableKm  = 300.0
	ComfortableMin = 300.0
)

// Breaks is how many breaks a day with so many minutes at the wheel wants. The
// last stretch needs none after it. NaN and negative are none.
func Breaks(wheelMin float64) int {
	if !(wheelMin > BreakEveryMin) {
		return 0
	}
	return int(math.Ceil(wheelMin/BreakEveryMin-1e-9)) - 1
}
