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
// NOAA Global Monitoring Laboratory, "General Solar Position Calculations"
// (https://gml.noaa.gov/grad/solcalc/solareqns.PDF), evaluated at the event
// itself in a second step; within about two minutes below 65° of latitude.
func sunMinutes(event sunEvent, n int, lat, lon float64) (min float64, ok bool) {
	d := dateOf(n)
	yday := float64(n - dayNumber(d.year, 1, 1))
	length := float64(dayNumber(d.year+1, 1, 1) - dayNumber(d.year, 1, 1))
	min = 720 - 4*lon
	for range 2 {
		g := 2 * math.Pi / length * (yday + (min-720)/dayMin)
		eqtime := 229.18 * (0.000075 + 0.001868*math.Cos(g) - 0.032077*math.Sin(g) - 0.014615*math.Cos(2*g) - 0.040849*math.Sin(2*g))
		decl := 0.006918 - 0.399912*math.Cos(g) + 0.070257*math.Sin(g) - 0.006758*math.Cos(2*g) + 0.000907*math.Sin(2*g) - 0.002697*math.Cos(3*g) + 0.00148*math.Sin(3*g)
		phi := lat * math.Pi / 180
		cos := (math.Sin(altitude[event]*math.Pi/180) - math.Sin(phi)*math.Sin(decl)) / (math.Cos(phi) * math.Cos(decl))
		if !(math.Abs(cos) <= 1) {
			return 0, false
		}
		hour := math.Acos(cos) * 180 / math.Pi
		if event == sunset || event == dusk {
			hour = -hour
		}
		min = 720 - 4*(lon+hour) - eqtime
	}
	return min, true
}

// minutes returns when a moment is on day n.
func (e *evaluator) minutes(m moment, n int) (min int, ok bool) {
	if m.event == clock {
		return m.min, true
	}
	if e.at.Lat == 0 && e.at.Lon == 0 {
		return 0, false
	}
	utc, ok := sunMinutes(m.event, n, e.at.Lat, e.at.Lon)
	// The event on this local date.
	local := math.Mod(utc+float64(e.ahead)+2*dayMin, dayMin)
	return int(math.Round(local)) + m.min, ok
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
