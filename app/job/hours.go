package job

import (
	"time"

	"ullage/data/hours"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// openHours returns the opening hours of places; each text is parsed once.
func openHours() build.Hours {
	parsed := map[string]*hours.Schedule{}
	return func(p trip.Place, from time.Time, days int) ([][2]float64, bool) {
		s, done := parsed[p.Hours]
		if !done {
			s, _ = hours.Parse(p.Hours) // nil where it cannot be read: not known
			parsed[p.Hours] = s
		}
		if s == nil {
			return nil, false
		}
		return s.Windows(from, days, hours.Where{Lat: p.Point.Lat(), Lon: p.Point.Lon()})
	}
}
