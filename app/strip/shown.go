package strip

import (
	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// shown is a level strip with its numbers as shown.
func shown(v say.Voice, s trip.Strip) trip.Strip {
	t := v.Unit(s.Unit)
	if t.Symbol == s.Unit {
		return s
	}
	s.Unit, s.Capacity, s.Reserve = t.Symbol, t.Show(s.Capacity), t.Show(s.Reserve)
	points := make([]trip.Level, len(s.Points))
	for i, p := range s.Points {
		p.L, p.Low, p.Likely, p.High = t.Show(p.L), t.Show(p.Low), t.Show(p.Likely), t.Show(p.High)
		points[i] = p
	}
	s.Points = points
	return s
}

// room says the headroom in words: 46 L left, or room for 20 L.
func room(v say.Voice, s trip.Strip, level float64) string {
	amount := fact.V{"amount": fact.Quantity(draw.Headroom(s, level), s.Unit, -1)}
	if s.Kind == planner.Waste {
		return v.Text("strips.room", amount)
	}
	return v.Text("strips.left", amount)
}

// moment says where the cursor is.
func moment(v say.Voice, it trip.Itinerary, at draw.Moment) string {
	values := func(d trip.Day) fact.V {
		return fact.V{"date": d.Date.Says(), "time": fact.Clock(at.Min), "at": fact.Mark(at.Km, -1)}
	}
	for i, d := range it.Days {
		if at.Min <= d.EndMin || i == len(it.Days)-1 {
			return v.Text("strips.moment", values(d))
		}
		if at.Min < it.Days[i+1].StartMin {
			return v.Text("strips.overnight", values(d))
		}
	}
	return ""
}
