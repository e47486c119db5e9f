package life

import "math"

// This file holds what the law and good sense say about a day on the road.
// Signs, national law and the vehicle's papers decide.

// Roads by class.
const (
	Town     = "town"
	Rural    = "rural"
	Motorway = "motorway"
)

type limits struct{ rural, motorway float64 }

// light holds up to 3.5 t, heavy above it up to 7.5 t: general limits in km/h,
// without trailer, dry road. Each row names its source. The rows of heavy
// marked EU are those of goods vehicles over 3.5 t in a student site's copy of
// the EU's "Going abroad" pages; motorhomes can be better off.
var light = map[string]limits{
	"DE": {100, 130},                                                    // like cars; 130 is advice (anwalt.de)
	"FR": {80, 130},                                                     // like cars (ffcc.fr, camping-car.com)
	"AT": {100, 130}, "CH": {80, 120}, "IT": {90, 130}, "ES": {90, 120}, // from memory, like cars
}

var heavy = map[string]limits{
	"DE": {80, 100},                                                 // motorway 100: 12th exemption ordinance (flensburger-punkte); rural from memory
	"FR": {80, 110},                                                 // over 3.5 t 110/100/80 (ffcc.fr, camping-car.com)
	"AT": {70, 80}, "BE": {90, 90}, "ES": {70, 80}, "IT": {80, 100}, // EU; the lower where two are given
	"HR": {80, 90}, "CZ": {80, 80}, "DK": {70, 80}, "HU": {70, 80}, // EU
}

// townKmh is the general limit in built-up areas of the countries above; from memory.
const townKmh = 50

// LightKg is the allowed mass up to which a motorhome is a light vehicle:
// licence class B, car limits (3.5 t; a revised directive allows 4.25 t to B once
// national law follows).
const LightKg = 3500

// SpeedLimit is the general limit for a motorhome of an allowed mass in a
// country (ISO 3166 code) on a class of road, in km/h. known is false where
// this table has no row, and above 7.5 t: then only the signs tell.
func SpeedLimit(country, road string, allowedKg float64) (kmh float64, known bool) {
	table := light
	if allowedKg > LightKg {
		table = heavy
	}
	l, ok := table[country]
	if !ok || !(allowedKg <= 7500) {
		return 0, false
	}
	switch road {
	case Town:
		return townKmh, true
	case Rural:
		return l.rural, true
	case Motorway:
		return l.motorway, true
	}
	return 0, false
}

const (
	// BreakEveryMin, BreakMin: 15 minutes after two hours (UK Highway Code, rule 91). Advice; the
	// rules of tachographs do not bind private motorhomes (from memory).
	BreakEveryMin = 120.0
	BreakMin      = 15.0

	// A comfortable day: 200–300 km (from memory), 4 h at the 60 km/h of mixed roads.
	ComfortableKm  = 250.0
	ComfortableMin = 240.0
)

// Breaks is how many breaks a day with so many minutes at the wheel wants. The
// last stretch needs none after it. NaN and negative are none.
func Breaks(wheelMin float64) int {
	if !(wheelMin > BreakEveryMin) {
		return 0
	}
	return int(math.Ceil(wheelMin/BreakEveryMin-1e-9)) - 1
}

// WithBreaks is the pace in minutes per km of an average speed, breaks spread
// over the way: 15 minutes in every 120. It is a little slower than [Breaks]
// for short days.
func WithBreaks(kmh float64) float64 {
	return 60 / kmh * (1 + BreakMin/BreakEveryMin)
}

// Paces in km/h where no road data tell better: motorway 75, rural 50, town 25
// (from memory; 80 seen as an easy-going motorway average, rvtravel).
var usualPace = map[string]float64{Motorway: 75, Rural: 50, Town: 25}

// Pace is the usual average of a class of road under a legal limit, in km/h; a
// limit of 0 is unknown. An unknown class counts as rural.
func Pace(road string, limitKmh float64) float64 {
	p, ok := usualPace[road]
	if !ok {
		p = usualPace[Rural]
	}
	if limitKmh > 0 {
		p = min(p, 0.9*limitKmh) // nobody drives the limit all the time; from memory
	}
	return p
}
