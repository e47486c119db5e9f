package hours

import (
	"math"
)

type sunEvent int8

const (
	clock sunEvent = iota // no event
	dawn
	sunrise
	sunset
	dusk
)

// altitude of the sun's centre: refraction and radius at the horizon, or 6°
// below it for civil twilight.
var altitude = [...]float64{dawn: -6, sunrise: -0.833, sunset: -0.833, dusk: -6}

// sunMinutes returns when the event happens on day n, in minutes of UTC since
// 00:00 of that day (it may lie before or after the day), ok is false if the
// sun does not cross that height.
//
// The sun's place is that of the Astronomical Almanac, page C5, "Low precision
// formulas for the Sun" (0.01°, 1950 to 2050), taken six hours before or after
// noon; the hour angle as in J. Meeus, "Astronomical Algorithms", 1991,
// equation 14.1. Within a minute or two below 65° of latitude.
func sunMinutes(event sunEvent, n int, at Where) (min float64, ok bool) {
	const rad = math.Pi / 180
	side := -1.0 // of noon
	if event == sunset || event == dusk {
		side = 1
	}
	t := float64(n-dayNumber(2000, 1, 1)) - 0.5 + (720-4*at.Lon+side*360)/dayMin // days since J2000.0
	mean := 280.460 + 0.9856474*t
	g := (357.528 + 0.9856003*t) * rad
	lambda := (mean + 1.915*math.Sin(g) + 0.020*math.Sin(2*g)) * rad
	epsilon := (23.439 - 0.0000004*t) * rad
	decl := math.Asin(math.Sin(epsilon) * math.Sin(lambda))
	ascension := math.Atan2(math.Cos(epsilon)*math.Sin(lambda), math.Cos(lambda)) / rad
	eqtime := 4 * math.Remainder(mean-ascension, 360)
	phi := at.Lat * rad
	cos := (math.Sin(altitude[event]*rad) - math.Sin(phi)*math.Sin(decl)) / (math.Cos(phi) * math.Cos(decl))
	if !(math.Abs(cos) <= 1) {
		return 0, false
	}
	return 720 - 4*at.Lon + side*4*math.Acos(cos)/rad - eqtime, true
}
