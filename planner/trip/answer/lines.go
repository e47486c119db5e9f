package answer

import (
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Kinds of a day in one line.
const (
	dayLine  fact.Kind = "line.day"
	dayNone  fact.Kind = "line.none"
	dayCall  fact.Kind = "line.call"
	dayNight fact.Kind = "line.night"
)

// lines says visits in one line a day: the places and what for.
func (b asker) lines(visits []planner.Visit) []fact.Fact {
	var out []fact.Fact
	var today []fact.Value
	number := 1
	end := func(nights int) {
		line := fact.Of(dayLine, fact.V{"n": fact.Count(number), "calls": fact.List(today...)})
		if len(today) == 0 {
			line = fact.Of(dayNone, fact.V{"n": fact.Count(number)})
		}
		out = append(out, line)
		number, today = number+nights, nil
	}
	for _, v := range visits {
		today = append(today, b.line(v))
		if v.Night {
			end(b.nightsOf(v))
		}
	}
	end(0)
	return out
}

// line is one visit: where, and what for.
func (b asker) line(v planner.Visit) fact.Value {
	var does []fact.Value
	for _, y := range v.Serve {
		does = append(does, trip.KindOfTank(y.Tank).Verb.Does(b.Trip.Vehicle.Called(y.Tank), fact.Value{}))
	}
	if v.Night {
		does = append(does, fact.Clause(fact.Of(dayNight, fact.V{"nights": fact.Count(b.nightsOf(v))})))
	}
	return fact.Clause(fact.Of(dayCall, fact.V{"mark": fact.Mark(b.Axis.Route(v.Arrive.Km), 0), "name": b.Calls[v.Stop].Place.Called(), "does": fact.List(does...)}))
}

func (b asker) nightsOf(v planner.Visit) int {
	i := slices.IndexFunc(b.Around, func(s planner.Stop) bool { return s.ID == v.Stop })
	return b.Around[i].Night.Nights
}
