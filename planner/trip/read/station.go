package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of the last place that sells what the hire agreement asks for.
const (
	stationOpen   fact.Kind = "station.open"
	stationClosed fact.Kind = "station.closed"
	stationNone   fact.Kind = "station.none"

	openAt      fact.Kind = "open.at"
	openOnDay   fact.Kind = "open.on_day"
	openUnknown fact.Kind = "open.unknown"
)

// lastStation is the last place of the route that sells the engine's fuel and is not
// closed when the plan comes by: the nearest of those in the last kilometres,
// how far from the end, and what is known of its hours. A nearer one that is
// closed then is named too.
func (b reader) lastStation(plan planner.Plan) []fact.Fact {
	var best, closed *trip.Candidate
	var hours fact.Fact
	left := func(c *trip.Candidate) float64 { return b.Axis.LengthKm - c.Km + 2*c.OffKm }
	for i := len(b.Candidates) - 1; i >= 0; i-- {
		c := &b.Candidates[i]
		if c.Excluded != nil || !slices.ContainsFunc(c.Tanks, sellsLast) || best != nil && left(c) >= left(best) {
			continue
		}
		min := b.passing(plan, b.Axis.Driven(c.Km))
		open, known := b.openAt(b.Calls[c.Stop].Place, min)
		if open {
			best, hours = c, fact.Of(openUnknown, nil)
			if known {
				hours = opens(min, plan.End.Min)
			}
		} else if closed == nil || left(c) < left(closed) {
			closed = c
		}
	}
	if best != nil && closed != nil && left(closed) >= left(best) {
		closed = nil
	}
	return b.stations(best, hours, closed)
}

// stations says the last one that is open and a nearer one that is not; nil is none.
func (b reader) stations(best *trip.Candidate, hours fact.Fact, closed *trip.Candidate) []fact.Fact {
	var out []fact.Fact
	switch {
	case best != nil:
		v := b.before(best)
		v["open"], v["off"] = fact.Clause(hours), fact.Value{}
		if best.OffKm >= trip.BesideKm {
			v["off"] = fact.Km(best.OffKm, 1)
		}
		out = append(out, fact.Of(stationOpen, v))
	case closed != nil:
		out = append(out, fact.Of(stationNone, nil))
	}
	if closed != nil {
		out = append(out, fact.Of(stationClosed, b.before(closed)))
	}
	return out
}

func sellsLast(tank string) bool { return trip.KindOfTank(tank).Last }

// before is a place with how far before the end it lies.
func (b reader) before(c *trip.Candidate) fact.V {
	return fact.V{"name": b.Calls[c.Stop].Place.Called(), "km": fact.Km(b.Axis.LengthKm-c.Km, 0)}
}

// opens is a place that is open in a minute; the day is said where it is not that of the end.
func opens(min, end float64) fact.Fact {
	v := fact.V{"clock": fact.Clock(min)}
	if day := int(min / 1440); day != int(end/1440) {
		v["n"] = fact.Count(day + 1)
		return fact.Of(openOnDay, v)
	}
	return fact.Of(openAt, v)
}

// openAt says whether a place may be called at in a minute, and whether that is known.
func (b reader) openAt(p *trip.Place, min float64) (may, known bool) {
	if b.Hours == nil || p.Hours == "" {
		return true, false
	}
	windows, known := b.Hours(*p, b.Start, max(b.Days(), int(min/1440)+1))
	if !known {
		return true, false
	}
	return slices.ContainsFunc(windows, func(w [2]float64) bool { return min >= w[0] && min <= w[1] }), true
}

// passing is the minute at which a plan comes by one of the planner's km.
func (b reader) passing(plan planner.Plan, km float64) float64 {
	at, min := 0.0, b.Problem.Drive.DepartMin
	for _, v := range plan.Visits {
		if v.Leave.Km > km {
			break
		}
		if v.Leave.Km == km && !v.Night {
			return v.Arrive.Min
		}
		at, min = v.Leave.Km, v.Leave.Min
	}
	return min + b.Problem.Drive.Minutes(at, km)
}
