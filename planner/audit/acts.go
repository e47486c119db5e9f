package audit

import (
	"math"

	"ullage/planner"
)

// This file audits the inside of a stay, night by night, and what is let out at its end.

// acts lives the nights of a stay with what the plan says is done in them. The
// gauge is as it arrived.
func (g gauge) acts(l leg, y planner.Serve) error {
	broken := func(have float64) error {
		return &planner.Broken{Rule: planner.RuleActs, Stop: l.Stop, Tank: g.ID, Km: l.at.Km, Have: have, Need: y.Amount}
	}
	if !l.Night {
		if len(y.Acts) > 0 {
			return broken(float64(len(y.Acts)))
		}
		return nil
	}
	if _, often := paidActs(g.Tank, l.at.Night); often > planner.MostActs {
		return &planner.Broken{Rule: planner.RuleNight, Stop: l.Stop, Tank: g.ID, Km: l.at.Km, Detail: planner.NightTooMuch}
	}
	nights, sum, done := l.at.Night.Nights, 0.0, 0
	for i := 0; i <= nights; i++ {
		var today []planner.Act
		for ; done < len(y.Acts) && y.Acts[done].Night == i; done++ {
			today = append(today, y.Acts[done])
			sum += y.Acts[done].Amount
		}
		use := 0.0
		if i < nights {
			use = usedIn(l.at.Night, g.ID, i)
		}
		if wrong, ok := g.live(use, today); !ok {
			return broken(wrong)
		}
	}
	if done < len(y.Acts) || differ(sum, y.Amount) {
		return broken(sum)
	}
	return nil
}

// live uses so much, with the tank served meanwhile, each time when it has come to
// the level stated. What is wrong is an amount, or a level.
func (g *gauge) live(use float64, acts []planner.Act) (wrong float64, ok bool) {
	if len(acts) > planner.MostActs {
		return float64(len(acts)), false
	}
	for _, act := range acts {
		before := math.Abs(g.level - act.From) // used until then
		if g.use(before); before > use+statedTolerance || differ(act.From, g.level) {
			return act.From, false
		}
		use = math.Max(0, use-before)
		if err := g.holds(planner.RuleActs, nil, g.Reserve-statedTolerance); err != nil {
			return act.From, false
		}
		if over := g.level + act.Amount - g.Capacity; !(act.Amount > 0) || g.Kind == planner.Supply && over > statedTolerance || g.Kind == planner.Waste && differ(act.Amount, g.level) {
			return act.Amount, false
		}
		g.restore(act.Amount)
	}
	g.use(use)
	if err := g.holds(planner.RuleActs, nil, g.Reserve-statedTolerance); err != nil {
		return g.level, false
	}
	return 0, true
}

func (g *gauge) restore(amount float64) {
	if g.Kind == planner.Waste {
		g.level = math.Max(0, g.level-amount)
	} else {
		g.level = math.Min(g.level+amount, g.Capacity)
	}
}

// usedIn one night of a stay, the first being 0.
func usedIn(n *planner.Night, tank string, night int) float64 {
	if by, is := n.ByNight[tank]; is {
		return by[night]
	}
	return n.Use[tank] / float64(n.Nights)
}

// paidActs is how often a service is paid for in a stay: from a full tank on, before
// each night that it would not last, and once before leaving. most is for one night.
func paidActs(t planner.Tank, n *planner.Night) (times, most int) {
	room := t.Capacity - t.Reserve
	times = 1
	left := room
	for i := range n.Nights {
		use := usedIn(n, t.ID, i)
		if use > left+planner.Tolerance {
			tankfuls := planner.MostActs + 1
			if room > 0 {
				tankfuls = max(1, int(math.Ceil((use-planner.Tolerance)/room)))
			}
			times, most = times+tankfuls, max(most, tankfuls)
			left = float64(tankfuls) * room
		}
		left = math.Min(left-use, room)
	}
	return times, most
}

// drains lets out of the tank what the plan says, if it is the one that a limit of
// mass lets it out of.
func (g *gauge) drains(p *planner.Problem, l leg, taken int) error {
	if p.Mass.Supply(p.Tanks) != g.ID {
		if l.Drain != 0 && p.Mass.Supply(p.Tanks) == "" {
			return &planner.Broken{Rule: planner.RuleDrain, Stop: l.Stop, Km: g.km, Have: l.Drain}
		}
		return nil
	}
	if l.Drain < 0 || l.Drain > 0 && taken >= 0 || math.IsNaN(l.Drain) {
		return &planner.Broken{Rule: planner.RuleDrain, Stop: l.Stop, Tank: g.ID, Km: g.km, Have: l.Drain}
	}
	g.level -= l.Drain
	return nil
}

// checkMass weighs the tanks at every departure by the levels that the plan states,
// which are audited before.
func checkMass(p *planner.Problem, legs []leg) error {
	if p.Mass == nil {
		return nil
	}
	per := 0.0
	for _, x := range p.Mass.Per {
		per += x
	}
	doubt := planner.Tolerance + per*statedTolerance
	weigh := func(stop string, km, drained float64, level func(t planner.Tank) float64) error {
		sum := 0.0
		for _, t := range p.Tanks {
			sum += p.Mass.Per[t.ID] * level(t)
		}
		if sum > p.Mass.Most+doubt {
			return &planner.Broken{Rule: planner.RuleMass, Stop: stop, Km: km, Have: sum, Need: p.Mass.Most}
		}
		if drained > 0 && sum < p.Mass.Most-doubt {
			id := p.Mass.Supply(p.Tanks)
			return &planner.Broken{Rule: planner.RuleDrain, Stop: stop, Tank: id, Km: km, Have: drained, Need: math.Max(0, drained-(p.Mass.Most-sum)/p.Mass.Per[id])}
		}
		return nil
	}
	if err := weigh("", 0, 0, func(t planner.Tank) float64 { return t.Start }); err != nil {
		return err
	}
	for _, l := range legs {
		if err := weigh(l.Stop, l.at.Km, l.Drain, func(t planner.Tank) float64 { return l.Leave.Levels[t.ID] }); err != nil {
			return err
		}
	}
	return nil
}
