package plantest

import (
	"maps"
	"math"
	"slices"

	"ullage/planner"
)

// This file is the slow, obvious solver that the others are compared with.

// Brute returns the least cost of any plan, +Inf if there is none.
//
// It tries every choice at every stop: pass, or visit with every set of
// services, with and without the night. With these choices made, only amounts
// are open, and every tank is on its own: see [gaugeCost].
// Two shortcuts, both plain to see: a choice is dropped when what it has paid
// already is no less than the best plan, or when a tank falls short even though
// every service so far filled it up.
func Brute(p *planner.Problem) float64 {
	b := &bruteSearch{p: p, best: math.Inf(1)}
	full := make([]float64, len(p.Tanks))
	for i, t := range p.Tanks {
		full[i] = HeadAtStart(t)
	}
	if heavy := b.heavy(bruteState{full: full}); heavy > slack {
		return b.best
	}
	b.at(0, bruteState{clock: p.Drive.DepartMin, full: full, events: make([][]event, len(p.Tanks)), seen: map[string]bool{}})
	return b.best
}

const slack = 1e-9 // rounding of sums, far below the tolerance of the rules

type bruteSearch struct {
	p    *planner.Problem
	best float64
}

type bruteState struct {
	km, dayKm, dayMin, clock float64
	slept                    float64 // km of the last night
	nights                   int
	seen                     map[string]bool // stops visited, those with a night for the night
	paid                     float64
	full                     []float64 // most headroom that there can be
	events                   [][]event // by tank
}

// An event of one tank. Fields not needed for a kind are 0.
type event struct {
	kind  byte // 'u' use units, 'c' check that units are in hand, 's' restore, using units meanwhile, 'l' let out down to units, 'r' pay for what is missing to units
	units float64
	price float64
}

// push adds an event to tank i, and says whether the tank can still do it.
func (s *bruteState) push(p *planner.Problem, i int, e event) bool {
	events := s.events[i]
	s.events[i] = append(events[:len(events):len(events)], e)
	switch e.kind {
	case 'u':
		s.full[i] = math.Min(s.full[i]-e.units, p.Tanks[i].Capacity)
	case 'c':
		return s.full[i] >= e.units-slack
	case 's':
		s.full[i] = p.Tanks[i].Capacity
	case 'l':
		s.full[i] = math.Min(s.full[i], e.units)
	}
	return true
}

func (s bruteState) clone() bruteState {
	s.full = append([]float64(nil), s.full...)
	s.events = append([][]event(nil), s.events...)
	s.seen = maps.Clone(s.seen)
	return s
}

// drive uses km; it returns false if a reserve is touched.
func (s *bruteState) drive(p *planner.Problem, km, minutes float64) bool {
	ok := true
	s.dayKm += km
	s.dayMin += minutes
	s.clock += minutes
	for i, t := range p.Tanks {
		s.push(p, i, event{kind: 'u', units: t.PerKm * km})
	}
	return ok
}

func (s *bruteState) keepReserves(p *planner.Problem) bool {
	for i, t := range p.Tanks {
		if !s.push(p, i, event{kind: 'c', units: t.Reserve}) {
			return false
		}
	}
	return true
}

func (b *bruteSearch) at(i int, s bruteState) {
	if s.paid >= b.best {
		return
	}
	p := b.p
	if i == len(p.Stops) {
		b.end(s)
		return
	}
	stop := &p.Stops[i]
	if !stop.Required {
		b.at(i+1, s.clone())
	}
	for set := range 1 << len(stop.Serves) {
		if !stop.Required || stop.Night == nil {
			b.visit(i, s.clone(), call{stop: stop, set: set})
		}
		if stop.Night != nil {
			b.visit(i, s.clone(), call{stop: stop, set: set, night: stop.Night})
		}
	}
}

// A call is what is done at a stop: a set of its services, and its night or none.
type call struct {
	stop  *planner.Stop
	set   int // bit j: service j
	night *planner.Night
}

func (c call) takes(j int) bool { return c.set>>j&1 != 0 }

// visit goes on from a call at stop i, if every rule allows it.
func (b *bruteSearch) visit(i int, s bruteState, c call) {
	p, stop := b.p, c.stop
	s.drive(p, stop.Km-s.km+stop.DetourKm/2, bruteMinutes(p, s.km, stop.Km)+stop.DetourMin/2)
	s.km = stop.Km
	if !s.keepReserves(p) || s.dayKm > p.Drive.MaxKmPerDay+slack {
		return
	}
	if !s.arrive(p, c) || !s.serve(p, c) {
		return
	}
	if c.night != nil && !s.sleep(p, c) {
		return
	}
	if c.night != nil || stop.Night == nil {
		s.seen[stop.ID] = true
	}
	if !b.lighten(&s) || !s.keepReserves(p) {
		return
	}
	s.drive(p, stop.DetourKm/2, stop.DetourMin/2)
	if !s.keepReserves(p) {
		return
	}
	b.at(i+1, s)
}

// heavy is how much too heavy the tanks are, with as much in them as there can be.
func (b *bruteSearch) heavy(s bruteState) float64 {
	if b.p.Mass == nil {
		return 0
	}
	sum := -b.p.Mass.Most
	for i, t := range b.p.Tanks {
		level := s.full[i]
		if t.Kind == planner.Waste {
			level = t.Capacity - level
		}
		sum += b.p.Mass.Per[t.ID] * level
	}
	return sum
}

// lighten lets out of the one supply tank that weighs what is too heavy; it returns
// false if there is none.
func (b *bruteSearch) lighten(s *bruteState) bool {
	over := b.heavy(*s)
	if over <= slack {
		return true
	}
	for i, t := range b.p.Tanks {
		if per := b.p.Mass.Per[t.ID]; t.Kind == planner.Supply && per > 0 {
			return s.push(b.p, i, event{kind: 'l', units: s.full[i] - over/per})
		}
	}
	return false
}

// arrive waits until the stop opens, or has time in hand until it can check in; it
// returns false if it cannot, or if the day is over before the night.
func (s *bruteState) arrive(p *planner.Problem, c call) bool {
	s.paid += c.stop.Fee + p.TimeCostPerH/60*(c.stop.DetourMin+c.stop.StopMin)
	if c.night != nil {
		return s.checkIn(p, c)
	}
	opens := opening(c.stop.Open, s.clock)
	if math.IsInf(opens, 1) {
		return false
	}
	wait := opens - s.clock
	s.clock += wait + c.stop.StopMin
	s.dayMin += wait + c.stop.StopMin
	s.paid += p.TimeCostPerH / 60 * wait
	return true
}

// checkIn arrives for the night; it returns false if nobody lets it in, or a day is
// too long, or the last night too near.
func (s *bruteState) checkIn(p *planner.Problem, c call) bool {
	departed := p.Drive.DepartMin + 1440*float64(s.nights)
	latest := departed + 1440*float64(c.night.Nights)
	windows := c.stop.Open
	if in := c.night.CheckIn; in != nil {
		latest = departed + 1440
		windows = nil
		for day := range 12 { // each day's hours, within those that the stop is open
			from, to := 1440*float64(day)+in[0], 1440*float64(day)+in[1]
			if len(c.stop.Open) == 0 {
				windows = append(windows, [2]float64{from, to})
			}
			for _, w := range c.stop.Open {
				if lo, hi := math.Max(from, w[0]), math.Min(to, w[1]); lo <= hi+slack {
					windows = append(windows, [2]float64{lo, hi})
				}
			}
		}
		if len(windows) == 0 {
			return false
		}
	}
	in := opening(windows, s.clock)
	return s.dayMin+c.stop.StopMin <= p.Drive.MaxMinPerDay+slack && in+c.stop.StopMin <= latest+slack &&
		(s.nights == 0 || c.stop.Km-s.slept >= p.Drive.MoveKm-slack)
}

// opening is the first minute from clock on in a window, +Inf if there is none.
func opening(windows [][2]float64, clock float64) float64 {
	if len(windows) == 0 {
		return clock
	}
	opens := math.Inf(1)
	for _, w := range windows {
		if clock <= w[1]+slack {
			opens = math.Min(opens, math.Max(w[0], clock))
		}
	}
	return opens
}

// bruteActs is how often a service is paid for in a stay, counted day by day in the
// plain way: full at first, full again before a night that it would not last.
func bruteActs(t planner.Tank, n planner.Night) (acts int, ok bool) {
	room := t.Capacity - t.Reserve
	left := room
	for night := range n.Nights {
		use := n.Use[t.ID] / float64(n.Nights)
		if by := n.ByNight[t.ID]; by != nil {
			use = by[night]
		}
		if use <= left+planner.Tolerance {
			left = math.Min(room, left-use)
			continue
		}
		today := 1
		for left = room; use > left+planner.Tolerance && today <= planner.MostActs; today++ {
			left += room
		}
		if today > planner.MostActs {
			return 0, false
		}
		acts, left = acts+today, left-use
	}
	return acts + 1, true
}

// serve restores tanks, overnight or while one waits; it returns false if a rule forbids one of the services.
func (s *bruteState) serve(p *planner.Problem, c call) bool {
	for j, x := range c.stop.Serves {
		if !c.takes(j) {
			continue
		}
		if x.GuestsOnly && c.night == nil {
			return false
		}
		t, use, acts := BruteTank(p, x.Tank), 0.0, 1
		if c.night != nil {
			var ok bool
			if acts, ok = bruteActs(p.Tanks[t], *c.night); !ok {
				return false
			}
			use = c.night.Use[x.Tank]
		} else {
			s.clock += x.Min
			s.dayMin += x.Min
		}
		if p.Backup && !s.push(p, t, event{kind: 'c', units: x.Spare}) {
			return false
		}
		s.push(p, t, event{kind: 's', units: use, price: x.Price})
		s.paid += float64(acts) * (x.Fee + p.TimeCostPerH/60*x.Min)
	}
	return true
}

// sleep uses what the night takes from tanks that are not served meanwhile, and
// begins a day; it returns false if nobody drives on that day.
func (s *bruteState) sleep(p *planner.Problem, c call) bool {
	served := map[string]bool{}
	for j, x := range c.stop.Serves {
		served[x.Tank] = c.takes(j)
	}
	for t, tank := range p.Tanks {
		if !served[tank.ID] {
			s.push(p, t, event{kind: 'u', units: c.night.Use[tank.ID]})
		}
	}
	s.nights += c.night.Nights
	s.clock, s.dayKm, s.dayMin, s.slept = p.Drive.DepartMin+1440*float64(s.nights), 0, 0, c.stop.Km
	s.paid += c.night.Fee + p.TimeCostPerH/60*c.night.Min
	for _, day := range p.Drive.RestDays {
		if day == s.nights {
			return false
		}
	}
	return true
}

func (b *bruteSearch) end(s bruteState) {
	p := b.p
	s = s.clone()
	s.drive(p, p.LengthKm-s.km, bruteMinutes(p, s.km, p.LengthKm))
	if s.dayKm > p.Drive.MaxKmPerDay+slack || s.dayMin > p.Drive.MaxMinPerDay+slack || !s.keepReserves(p) {
		return
	}
	if !s.meets(p) {
		return
	}
	total := s.paid
	for i, t := range p.Tanks {
		if e := t.End; e != nil && e.AtMost != nil {
			s.push(p, i, event{kind: 'c', units: t.Capacity - *e.AtMost})
		}
		if e := t.End; e != nil && e.AtLeast != nil {
			if e.RefillPrice != nil {
				s.push(p, i, event{kind: 'r', units: *e.AtLeast, price: *e.RefillPrice})
			} else {
				s.push(p, i, event{kind: 'c', units: *e.AtLeast})
			}
		}
		total += gaugeCost(t, s.events[i])
	}
	b.best = math.Min(b.best, total)
}

// meets says whether there are as many nights as wanted, the end is in time, and of
// each list one stop was visited.
func (s *bruteState) meets(p *planner.Problem) bool {
	if n := p.Nights; n != nil && (s.nights < n.Min || s.nights > n.Max) {
		return false
	}
	if keys := p.Drive.EndByMin; keys > 0 && p.Drive.DepartMin+s.dayMin > keys+slack {
		return false
	}
	for _, list := range p.RequireOne {
		if !slices.ContainsFunc(list, func(id string) bool { return s.seen[id] }) {
			return false
		}
	}
	return true
}

// bruteMinutes walks the pace in pieces, the plain way.
func bruteMinutes(p *planner.Problem, from, to float64) float64 {
	minutes := 0.0
	for i, piece := range p.Drive.Pace {
		start := 0.0
		if i > 0 {
			start = p.Drive.Pace[i-1].ToKm
		}
		if a, b := math.Max(start, from), math.Min(piece.ToKm, to); a < b {
			minutes += piece.MinPerKm * (b - a)
		}
	}
	return minutes
}

// gaugeCost is the least that the amounts of one tank can cost, +Inf if they
// cannot be found.
//
// It is a small linear program: one amount per service, 0 ≤ amount, bounded by
// capacity after it and by what later checks need. A vertex of its feasible set
// has as many tight bounds as amounts, so after each service the tank holds
// what it held before (amount 0), or it is full, or it holds exactly what some
// later check or the refill's edge asks for with nothing bought on the way
// (were two amounts bought on the way, one of them could be moved to the
// other, so that the point was no vertex), or it is full just when later use
// that restores ends, beyond which headroom is lost at the top of the tank.
// Hence the finite list of headrooms that is tried after each service here.
// More headroom is never worse than less; amounts of 0 stand for plans without
// the service, which [Brute] tries too and which are never dearer.
func gaugeCost(t planner.Tank, events []event) float64 {
	costs := map[float64]float64{HeadAtStart(t): 0} // headroom → least cost
	for i, e := range events {
		next := map[float64]float64{}
		put := func(headroom, cost float64) {
			if old, ok := next[headroom]; !ok || cost < old {
				next[headroom] = cost
			}
		}
		for headroom, cost := range costs {
			switch e.kind {
			case 'u':
				put(math.Min(headroom-e.units, t.Capacity), cost)
			case 'c':
				if headroom >= e.units-slack {
					put(headroom, cost)
				}
			case 'l':
				put(math.Min(headroom, e.units), cost)
			case 'r':
				put(headroom, cost+e.price*math.Max(0, e.units-headroom))
			case 's':
				if t.Kind == planner.Waste {
					put(t.Capacity, cost)
					break
				}
				before := headroom - e.units
				put(math.Min(before, t.Capacity), cost)
				for _, target := range targets(t, events[i+1:]) {
					if target > before {
						put(target, cost+e.price*(target-before))
					}
				}
			}
		}
		costs = next
	}
	best := math.Inf(1)
	for _, cost := range costs {
		best = math.Min(best, cost)
	}
	return best
}

// targets are the headrooms worth having before the events.
func targets(t planner.Tank, events []event) []float64 {
	out := []float64{t.Capacity}
	used := 0.0
	for _, e := range events {
		switch e.kind {
		case 'u', 's':
			used += e.units
			if x := t.Capacity + used; e.units < 0 && x > 0 && x <= t.Capacity {
				out = append(out, x) // full just then: more would be lost
			}
		case 'c', 'r':
			if x := e.units + used; x <= t.Capacity {
				out = append(out, x)
			}
		}
	}
	return out
}

func HeadAtStart(t planner.Tank) float64 {
	if t.Kind == planner.Waste {
		return t.Capacity - t.Start
	}
	return t.Start
}
