package solve_test

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/internal/plantest"
)

// This file states a problem once more, as a mixed-integer program in CPLEX LP
// format, for general-purpose solvers. It covers all of the model except
// opening windows, for which times of day would be needed.
//
// Variables, i counting stops and r tanks:
//
//	y visit, n night taken, z service taken, q amount restored
//	A, D, H headroom on arrival, on leaving the place, back on the route
//	k, c km and minutes on the road today, back on the route
//	x shortfall paid for at the end
//	v a service and the night, w past a day without driving
//
// Headroom may be thrown away, which never helps; so the caps at capacity are
// plain bounds.

// milp is what [writeMILP] adds up.
type milp struct {
	objective, rows, bounds, binaries []string
}

// linear is a sum of terms, written as they come.
type linear struct{ strings.Builder }

func (l *linear) add(coefficient float64, variable string) *linear {
	sign := "+"
	if coefficient < 0 {
		sign = "-"
	}
	fmt.Fprintf(l, "%s %.12g %s ", sign, math.Abs(coefficient), variable)
	return l
}

func (m *milp) row(l *linear, relation string, right float64) {
	m.rows = append(m.rows, fmt.Sprintf("r%d: %s%s %.12g", len(m.rows), l, relation, right))
}

func (m *milp) bound(low float64, variable string, high float64) {
	m.bounds = append(m.bounds, fmt.Sprintf("%.12g <= %s <= %.12g", low, variable, high))
}

func (m *milp) cost(price float64, variable string) {
	if price != 0 {
		m.objective = append(m.objective, new(linear).add(price, variable).String())
	}
}

func name(kind string, i int, rest ...int) string {
	s := fmt.Sprint(kind, i)
	for _, r := range rest {
		s += fmt.Sprint("_", r)
	}
	return s
}

// writeMILP writes p, which must have at least one stop and no windows.
func writeMILP(w io.Writer, p *planner.Problem) error {
	m := &milp{}
	perMin := p.TimeCostPerH / 60
	for i, s := range p.Stops {
		if len(s.Open) > 0 {
			return fmt.Errorf("stop %q has windows", s.ID)
		}
		y, n := name("y", i), name("n", i)
		m.binaries = append(m.binaries, y)
		m.cost(s.Fee+perMin*(s.DetourMin+s.StopMin), y)
		must := y
		if s.Night != nil {
			m.binaries = append(m.binaries, n)
			m.cost(s.Night.Fee+perMin*s.Night.Min, n)
			m.row(new(linear).add(1, n).add(-1, y), "<=", 0)
			must = n
		}
		if s.Required {
			m.row(new(linear).add(1, must), "=", 1)
		}
		m.day(p, i)
		for r := range p.Tanks {
			m.tank(p, i, r)
		}
	}
	m.end(p)
	m.live(p)
	if len(m.objective) == 0 {
		m.objective = []string{"0 y0"}
	}
	_, err := fmt.Fprintf(w, "Minimize\n cost: %s\nSubject To\n%s\nBounds\n%s\nBinary\n%s\nEnd\n", strings.Join(m.objective, "\n "),
		strings.Join(m.rows, "\n"), strings.Join(m.bounds, "\n"), strings.Join(m.binaries, "\n"))
	return err
}

func before(p *planner.Problem, i int) float64 {
	if i == 0 {
		return 0
	}
	return p.Stops[i-1].Km
}

// day states the limits of km and minutes up to stop i.
func (m *milp) day(p *planner.Problem, i int) {
	s, d := p.Stops[i], p.Drive
	km, minutes := s.Km-before(p, i), d.Minutes(before(p, i), s.Km)
	y, n, k, c := name("y", i), name("n", i), name("k", i), name("c", i)
	m.bound(0, k, d.MaxKmPerDay)
	m.bound(0, c, d.MaxMinPerDay)

	kRow, cRow := new(linear).add(1, k).add(-s.DetourKm, y), new(linear).add(1, c).add(-s.DetourMin-s.StopMin, y)
	worked := 0.0
	for _, x := range s.Serves {
		cRow.add(-x.Min, name("z", i, plantest.BruteTank(p, x.Tank)))
		worked += x.Min
	}
	night, awake := new(linear), new(linear)
	if i > 0 {
		kRow.add(-1, name("k", i-1))
		cRow.add(-1, name("c", i-1))
		night.add(1, name("k", i-1))
		awake.add(1, name("c", i-1))
	}
	if s.Night != nil {
		kRow.add(d.MaxKmPerDay+km+s.DetourKm, n)
		cRow.add(d.MaxMinPerDay+minutes+s.DetourMin+s.StopMin+worked, n)
		m.row(new(linear).add(1, k).add(-s.DetourKm/2, n), ">=", 0)
		m.row(new(linear).add(1, c).add(-s.DetourMin/2, n), ">=", 0)
		limit := min(d.MaxMinPerDay, latest(d, s))
		m.row(night.add(s.DetourKm/2, n), "<=", d.MaxKmPerDay-km)
		m.row(awake.add(s.DetourMin/2+s.StopMin+d.MaxMinPerDay-limit, n), "<=", d.MaxMinPerDay-minutes)
	}
	m.row(kRow, ">=", km)
	m.row(cRow, ">=", minutes)
}

// tank states headrooms of tank r around stop i.
func (m *milp) tank(p *planner.Problem, i, r int) {
	s, t := p.Stops[i], p.Tanks[r]
	y, n, z, q := name("y", i), name("n", i), name("z", i, r), name("q", i, r)
	arrive, leave, back := name("A", i, r), name("D", i, r), name("H", i, r)
	half := t.PerKm * s.DetourKm / 2
	low := min(0, -max(half, 0)) // not visited: only later visits and the end look
	for _, v := range []string{arrive, leave, back} {
		m.bound(low, v, t.Capacity)
		m.row(new(linear).add(1, v).add(low-t.Reserve, y), ">=", low)
	}
	onRoute := t.PerKm * (s.Km - before(p, i))
	a := new(linear).add(1, arrive).add(half, y)
	if i > 0 {
		m.row(a.add(-1, name("H", i-1, r)), "<=", -onRoute)
	} else {
		m.row(a, "<=", plantest.HeadAtStart(t)-onRoute)
	}
	l := new(linear).add(1, leave).add(-1, arrive)
	use := 0.0
	if s.Night != nil {
		use = s.Night.Use[t.ID]
		l.add(use, n)
	}
	for _, x := range s.Serves {
		if x.Tank != t.ID {
			continue
		}
		l.add(-1, q)
		m.binaries = append(m.binaries, z)
		m.cost(x.Fee+p.TimeCostPerH/60*x.Min, z)
		if s.Night != nil {
			m.inStay(s.Night, t, i, r, x.Fee+p.TimeCostPerH/60*x.Min)
		}
		m.cost(x.Price, q)
		m.bound(0, q, t.Capacity+max(use, 0))
		m.row(new(linear).add(1, q).add(-t.Capacity-max(use, 0), z), "<=", 0)
		if x.GuestsOnly {
			m.row(new(linear).add(1, z).add(-1, n), "<=", 0)
		} else {
			m.row(new(linear).add(1, z).add(-1, y), "<=", 0)
		}
		if p.Backup && x.Spare > 0 {
			m.row(new(linear).add(1, arrive).add(low-x.Spare, z), ">=", low)
		}
	}
	m.row(l, "<=", 0)
	m.row(new(linear).add(1, back).add(-1, leave).add(half, y), "<=", 0)
}

// latest is how many minutes after departure a night can be reached, stop included.
// Who comes before the hours of checking in waits, also for those of the next day
// where they begin before the next departure.
func latest(d planner.Drive, s planner.Stop) float64 {
	in := s.Night.CheckIn
	if in == nil {
		return 1440 * float64(s.Night.Nights)
	}
	if in[0]+s.StopMin <= d.DepartMin {
		return min(1440, 1440+in[1]-d.DepartMin+s.StopMin)
	}
	return min(1440, in[1]-d.DepartMin+s.StopMin)
}

// inStay states how often a service is paid for in a stay, or that it cannot be had there.
func (m *milp) inStay(n *planner.Night, t planner.Tank, i, r int, price float64) {
	both := new(linear).add(1, name("z", i, r)).add(1, name("n", i))
	acts, ok := n.Acts(t)
	if !ok {
		m.row(both, "<=", 1)
	} else if acts > 1 {
		v := name("v", i, r)
		m.binaries = append(m.binaries, v)
		m.cost(price*float64(acts-1), v)
		m.row(both.add(-1, v), "<=", 1)
	}
}

// live states what travelling people want.
func (m *milp) live(p *planner.Problem) {
	so := map[string]string{} // variable that says that a stop is visited, its night taken if it offers one
	slept, offered := new(linear), 0.0
	for i, s := range p.Stops {
		if so[s.ID] = name("y", i); s.Night == nil {
			continue
		}
		so[s.ID] = name("n", i)
		offered += float64(s.Night.Nights)
		for _, day := range p.Drive.RestDays {
			w := name("w", i, day)
			m.binaries = append(m.binaries, w)
			big := offered + float64(day) + 1
			before, after := new(linear), new(linear)
			before.WriteString(slept.String())
			after.WriteString(slept.String())
			m.row(before.add(-big, w).add(float64(s.Night.Nights)+big, name("n", i)), "<=", float64(day)-1+big)
			m.row(after.add(-big, w).add(float64(s.Night.Nights)-big, name("n", i)), ">=", float64(day)+1-2*big)
		}
		slept.add(float64(s.Night.Nights), name("n", i))
		for j := range i {
			if p.Stops[j].Night != nil && s.Km-p.Stops[j].Km < p.Drive.MoveKm-1e-9 {
				m.row(new(linear).add(1, name("n", j)).add(1, name("n", i)), "<=", 1)
			}
		}
	}
	for _, list := range p.RequireOne {
		any := new(linear)
		for _, id := range slices.Compact(slices.Sorted(slices.Values(list))) {
			if so[id] != "" {
				any.add(1, so[id])
			}
		}
		if any.Len() == 0 {
			any.add(0, "y0")
		}
		m.row(any, ">=", 1)
	}
	if p.Mass != nil {
		m.mass(p)
	}
}

// mass states what tanks weigh on setting off and at every departure.
func (m *milp) mass(p *planner.Problem) {
	full, most, big := new(linear).add(0, "y0"), p.Mass.Most, 1.0
	start := 0.0
	for _, t := range p.Tanks {
		start += p.Mass.Per[t.ID] * t.Start
		big += p.Mass.Per[t.ID] * 4 * t.Capacity
		if t.Kind == planner.Waste {
			most -= p.Mass.Per[t.ID] * t.Capacity
		}
	}
	if start > p.Mass.Most+1e-9 {
		m.row(full, ">=", 1)
	}
	for i := range p.Stops {
		l := new(linear).add(big, name("y", i))
		for r, t := range p.Tanks {
			if per := p.Mass.Per[t.ID]; per > 0 && t.Kind == planner.Waste {
				l.add(-per, name("D", i, r))
			} else if per > 0 {
				l.add(per, name("D", i, r))
			}
		}
		m.row(l, "<=", most+big)
	}
}

// end states what must hold at the end of the route.
func (m *milp) end(p *planner.Problem) {
	last := len(p.Stops) - 1
	km := p.LengthKm - p.Stops[last].Km
	m.row(new(linear).add(1, name("k", last)), "<=", p.Drive.MaxKmPerDay-km)
	m.row(new(linear).add(1, name("c", last)), "<=", p.Drive.LastDayMin()-p.Drive.Minutes(p.Stops[last].Km, p.LengthKm))
	for r, t := range p.Tanks {
		h := name("E", 0, r) // headroom at the end
		m.bound(t.Reserve, h, t.Capacity)
		m.row(new(linear).add(1, h).add(-1, name("H", last, r)), "<=", -t.PerKm*km)
		if t.End == nil {
			continue
		}
		if most := t.End.AtMost; most != nil {
			m.row(new(linear).add(1, h), ">=", t.Capacity-*most)
		}
		if least := t.End.AtLeast; least != nil {
			l := new(linear).add(1, h)
			if price := t.End.RefillPrice; price != nil {
				x := name("x", r)
				m.cost(*price, x)
				m.bound(0, x, t.Capacity)
				l.add(1, x)
			}
			m.row(l, ">=", *least)
		}
	}
	total := new(linear)
	for i, s := range p.Stops {
		if s.Night != nil {
			total.add(float64(s.Night.Nights), name("n", i))
		}
	}
	if total.Len() == 0 {
		total.add(0, "y0")
	}
	if p.Nights != nil {
		m.row(total, ">=", float64(p.Nights.Min))
		m.row(total, "<=", float64(p.Nights.Max))
	}
}

// visitsOf reads the visits of a plan out of the values of a solved program.
// Amounts below 1e-7 are rounding of the solver and no service.
func visitsOf(p *planner.Problem, values map[string]float64) []planner.Visit {
	var out []planner.Visit
	for i, s := range p.Stops {
		if values[name("y", i)] < 0.5 {
			continue
		}
		v := planner.Visit{Stop: s.ID, Night: values[name("n", i)] > 0.5}
		for _, x := range s.Serves {
			r := plantest.BruteTank(p, x.Tank)
			if q := values[name("q", i, r)]; values[name("z", i, r)] > 0.5 && q > 1e-7 {
				v.Serve = append(v.Serve, planner.Serve{Tank: x.Tank, Amount: q})
			}
		}
		out = append(out, v)
	}
	return out
}
