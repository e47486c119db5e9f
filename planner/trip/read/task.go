package read

import (
	"slices"

	"ullage/planner"
	"ullage/planner/trip"
)

// tasks are what a visit does to one tank, each act of a stay by itself.
func (b reader) tasks(k trip.Tank, s *planner.Stop, v planner.Visit) []trip.Task {
	kind := trip.KindOfTank(k.ID)
	whole := trip.Task{Tank: k.ID, Verb: kind.Verb, Unit: k.Unit, Before: v.Arrive.Levels[k.ID], After: v.Leave.Levels[k.ID]}
	i := slices.IndexFunc(v.Serve, func(y planner.Serve) bool { return y.Tank == k.ID })
	switch {
	case i >= 0:
		x := s.Serves[slices.IndexFunc(s.Serves, func(x planner.Service) bool { return x.Tank == k.ID })]
		return b.served(whole, k, s, x, v.Serve[i])
	case k.Kind == planner.Supply && v.Drain > 0 && kind.Onboard:
		whole.Verb, whole.Amount, whole.Before, whole.Night = trip.LetOut, v.Drain, whole.After+v.Drain, nights(s, v)
		return []trip.Task{whole}
	case kind.ByNight && v.Night && whole.After > whole.Before+planner.Tolerance:
		whole.Amount = whole.After - whole.Before
		return []trip.Task{whole}
	}
	return nil
}

// served are the acts of a service, with what they cost.
func (b reader) served(whole trip.Task, k trip.Tank, s *planner.Stop, x planner.Service, y planner.Serve) []trip.Task {
	whole.Amount, whole.Cost = y.Amount, x.Fee
	if len(y.Acts) == 0 {
		if k.Kind == planner.Supply {
			whole.Cost += y.Amount * x.Price
		}
		return []trip.Task{whole}
	}
	paid, _ := s.Night.Acts(b.tank(k.ID))
	var out []trip.Task
	for _, a := range y.Acts {
		t := whole
		t.Night, t.Amount, t.Before, t.After = a.Night, a.Amount, a.From, a.From+a.Amount
		t.Cost = x.Fee * float64(paid) / float64(len(y.Acts))
		if k.Kind == planner.Waste {
			t.After = 0
		} else {
			t.Cost += a.Amount * x.Price
		}
		out = append(out, t)
	}
	return out
}

// tank of the problem.
func (b reader) tank(id string) planner.Tank {
	return b.Problem.Tanks[slices.IndexFunc(b.Problem.Tanks, func(t planner.Tank) bool { return t.ID == id })]
}

// nights that a visit stays.
func nights(s *planner.Stop, v planner.Visit) int {
	if v.Night {
		return s.Night.Nights
	}
	return 0
}

// firsts are the first task of each tank.
func firsts(tasks []trip.Task) []trip.Task {
	var out []trip.Task
	for _, t := range tasks {
		if !slices.ContainsFunc(out, func(o trip.Task) bool { return o.Tank == t.Tank }) {
			out = append(out, t)
		}
	}
	return out
}
