package sheet

import (
	"strings"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// littleLeft is what rounds to nothing, L or Ah.
const littleLeft = 0.05

// task is one act: what and how much, to which level, and until when that does.
func (p *sheet) task(d trip.Day, c trip.Call, t trip.Task) string {
	s := p.strip(t.Tank)
	v := fact.V{
		"act":     fact.Clause(fact.Of(fact.Kind("act."+strings.ReplaceAll(string(t.Verb), " ", "_")), fact.V{"tank": fact.Tank(t.Tank, s.Name), "amount": fact.Quantity(t.Amount, t.Unit, -1)})),
		"reached": p.reached(t, s),
		"until":   p.until(d, c, t), "supply": {}, "cost": p.some(t.Cost),
	}
	if s.Kind == planner.Supply {
		v["supply"] = fact.Text(string(s.Kind))
	}
	return p.say.Text("sheet.task", v)
}

// reached is the level that a task leads to, where that has to be said.
func (p *sheet) reached(t trip.Task, s trip.Strip) fact.Value {
	switch {
	case s.Kind == planner.Supply && t.After >= s.Capacity-littleLeft:
		return fact.Term("sheet.to.full")
	case s.Kind == planner.Waste && t.After <= littleLeft:
		return fact.Value{} // that is what emptying is
	}
	return fact.Clause(fact.Of("sheet.to.level", fact.V{"level": fact.Quantity(t.After, t.Unit, -1), "capacity": fact.Quantity(s.Capacity, t.Unit, -1)}))
}

// until is when the tank is next served after a task of a call on day d: a day or a
// time of the same day; nothing if it is not served again.
func (p *sheet) until(d trip.Day, after trip.Call, t trip.Task) fact.Value {
	now := d.Number + t.Night
	for _, day := range p.it.Days {
		for _, c := range day.Calls {
			if c.ArriveMin < after.ArriveMin {
				continue
			}
			for _, next := range c.Tasks {
				then := day.Number + next.Night
				if next.Tank != t.Tank || c.Stop == after.Stop && next.Night <= t.Night {
					continue
				}
				if then == now && next.Night == 0 {
					return fact.Clock(c.ArriveMin)
				}
				return d.Date.Plus(then - d.Number).Says()
			}
		}
	}
	return fact.Value{}
}
