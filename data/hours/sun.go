package hours

import (
	"math"
	"time"
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
func sunMinutes(event sunEvent, n int, lat, lon float64) (min float64, ok bool) {
	const rad = math.Pi / 180
	side := -1.0 // of noon
	if event == sunset || event == dusk {
		side = 1
	}
	t := float64(n-dayNumber(2000, 1, 1)) - 0.5 + (720-4*lon+side*360)/dayMin // days since J2000.0
	mean := 280.460 + 0.9856474*t
	g := (357.528 + 0.9856003*t) * rad
	lambda := (mean + 1.915*math.Sin(g) + 0.020*math.Sin(2*g)) * rad
	epsilon := (23.439 - 0.0000004*t) * rad
	decl := math.Asin(math.Sin(epsilon) * math.Sin(lambda))
	ascension := math.Atan2(math.Cos(epsilon)*math.Sin(lambda), math.Cos(lambda)) / rad
	eqtime := 4 * math.Remainder(mean-ascension, 360)
	phi := lat * rad
	cos := (math.Sin(altitude[event]*rad) - math.Sin(phi)*math.Sin(decl)) / (math.Cos(phi) * math.Cos(decl))
	if !(math.Abs(cos) <= 1) {
		return 0, false
	}
	return 720 - 4*lon + side*4*math.Acos(cos)/rad - eqtime, true
}

type sunTime struct {
	set bool
	day int
	utc float64
	ok  bool
}

// minutes returns when a moment is on day n.
func (e *evaluator) minutes(m moment, n int) (min int, ok bool) {
	if m.event == clock {
		return m.min, true
	}
	if e.at.Lat == 0 && e.at.Lon == 0 {
		return 0, false
	}
	// Today's are asked for again tomorrow, for what passes midnight.
	known := &e.suns[m.event][n&1]
	if !known.set || known.day != n {
		known.set, known.day = true, n
		known.utc, known.ok = sunMinutes(m.event, n, e.at.Lat, e.at.Lon)
	}
	// The event on this local date.
	local := math.Mod(known.utc+float64(e.ahead)+2*dayMin, dayMin)
	return int(math.Round(local)) + m.min, known.ok
}

// zones returns by how many minutes local time may be ahead of UTC on a day.
func (e *evaluator) zones(n int) []int {
	if !e.s.sun {
		return []int{0}
	}
	if e.zone == time.UTC {
		// Legal time follows the sun's from one hour behind to three ahead.
		hour := int(math.Round(e.at.Lon / 15))
		var zones []int
		for h := hour - 1; h <= hour+3; h++ {
			zones = append(zones, 60*h)
		}
		return zones
	}
	d := dateOf(n)
	_, offset := time.Date(d.year, time.Month(d.month), d.day, 12, 0, 0, 0, e.zone).Zone()
	return []int{offset / 60}
}
