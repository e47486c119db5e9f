package planner

// This file drives a list of visits through the problem, headroom by
// headroom, and fills in everything that follows from them.
//
// What the model leaves open is decided here:
//   - Tolerance is what any limit may be missed by.
//   - Where stops share a km, the list of the problem is the order of passing.
//   - Headroom never exceeds capacity, also after driving with negative use.
//   - The day is counted from its departure: waiting past midnight stays the
//     same day on the road. A stay of n nights ends n days after the day it
//     began, so a night must be reached within n·1440 minutes of departure
//     (a limit of its own only where max_min_per_day is longer than that).
//   - A night is reached, for the minutes on the road, when waiting and
//     stop_min are over.
//   - Any visit waits for opening, also one that takes nothing.
//   - Both ends of a window are open.
//   - Emptying an empty waste tank is allowed and takes out 0; adding nothing
//     to a supply tank is not a service.

import (
	"maps"
	"slices"
)

// Replay follows the visits (stop, night and serve; amounts of waste
// included) and returns the plan that they are: moments, levels at the end,
// what is left to refill, cost and its parts. Visits must be in the order of
// the problem; services may come in any order and are put in the stop's own.
// The status is [Feasible] and the bound 0, which no plan can undercut.
//
// A *[Broken] error names the first rule that the visits break. The problem
// must be valid; p and visits are neither changed nor kept.
// O(stops + visits × tanks).
func Replay(p *Problem, visits []Visit) (Plan, error) {
	r := newReplayer(p)
	plan := Plan{Format: PlanFormat, Status: Feasible, Visits: make([]Visit, 0, len(visits))}
	next := 0 // first stop that may still be visited
	for _, v := range visits {
		i, known := r.stopAt[v.Stop]
		if !known || i < next {
			return Plan{}, &Broken{Rule: RuleOrder, Stop: v.Stop, Km: r.km}
		}
		next = i + 1
		done, err := r.visit(&p.Stops[i], v)
		if err != nil {
			return Plan{}, err
		}
		plan.Visits = append(plan.Visits, done)
	}
	for _, s := range p.Stops {
		if s.Required && !r.keptRequired(s) {
			return Plan{}, &Broken{Rule: RuleRequired, Stop: s.ID, Km: s.Km}
		}
	}
	end, err := r.finish()
	if err != nil {
		return Plan{}, err
	}
	plan.End, plan.Parts = &end, &r.parts
	plan.Cost = r.parts.Goods + r.parts.Fees + r.parts.Nights + r.parts.Time + r.parts.Refill
	return plan, nil
}

// WasteAmounts returns a copy of visits in which every service of a waste tank
// states what comes out, so that a caller need not know it. It keeps to every
// rule on the way, but not to the end of the route; its error is that of [Replay].
func WasteAmounts(p *Problem, visits []Visit) ([]Visit, error) {
	r := newReplayer(p)
	r.drain = true
	return r.amounts(visits)
}

// Fit is [WasteAmounts] and more: supply tanks get no more than there is room
// for (+Inf asks to fill up), and a service without room is left out.
func Fit(p *Problem, visits []Visit) ([]Visit, error) {
	r := newReplayer(p)
	r.drain, r.pour = true, true
	return r.amounts(visits)
}

func (r *replayer) amounts(visits []Visit) ([]Visit, error) {
	out := make([]Visit, 0, len(visits))
	for _, v := range visits {
		i, known := r.stopAt[v.Stop]
		if !known {
			return nil, &Broken{Rule: RuleOrder, Stop: v.Stop, Km: r.km}
		}
		done, err := r.visit(&r.p.Stops[i], v)
		if err != nil {
			return nil, err
		}
		if r.pour {
			done.Serve = slices.DeleteFunc(done.Serve, func(y Serve) bool {
				return r.p.Tanks[r.tankAt[y.Tank]].Kind == Supply && y.Amount <= Tolerance
			})
		}
		out = append(out, Visit{Stop: v.Stop, Night: v.Night, Serve: done.Serve})
	}
	return out, nil
}

// A replayer is the trip at one time.
type replayer struct {
	p       *Problem
	tankAt  map[string]int
	stopAt  map[string]int
	visited map[string]bool // stop → night taken
	drain   bool            // take waste amounts from the replay, not from the visit
	pour    bool            // pour in no more than there is room for

	headroom []float64
	km       float64 // position along the route
	dayKm    float64 // since the last night
	dayMin   float64 // on the road since the last night
	clock    float64
	nights   int
	parts    CostParts
}

func newReplayer(p *Problem) *replayer {
	r := &replayer{p: p, tankAt: map[string]int{}, stopAt: map[string]int{}, visited: map[string]bool{}, clock: p.Drive.DepartMin}
	for i, t := range p.Tanks {
		r.tankAt[t.ID] = i
		r.headroom = append(r.headroom, t.swap(t.Start))
	}
	for i, s := range p.Stops {
		r.stopAt[s.ID] = i
	}
	return r
}

// swap turns a level into headroom, or headroom into a level.
func (t Tank) swap(x float64) float64 {
	if t.Kind == Waste {
		return t.Capacity - x
	}
	return x
}

func (r *replayer) visit(s *Stop, v Visit) (Visit, error) {
	if v.Night && s.Night == nil {
		return Visit{}, &Broken{Rule: RuleNight, Stop: s.ID, Km: s.Km, Detail: "no night is offered"}
	}
	serve, err := ownOrder(s, v)
	if err != nil {
		return Visit{}, err
	}
	r.visited[s.ID] = v.Night
	done := Visit{Stop: s.ID, Night: v.Night, Serve: serve}

	r.drive(s.Km-r.km, r.p.Drive.Minutes(r.km, s.Km))
	r.km = s.Km
	r.drive(s.DetourKm/2, s.DetourMin/2)
	done.Arrive = r.moment()
	if err := r.arrive(s, serve); err != nil {
		return Visit{}, err
	}
	if err := r.wait(s); err != nil {
		return Visit{}, err
	}
	r.spend(s.StopMin)
	r.parts.Fees += s.Fee
	r.charge(s.DetourMin + s.StopMin)

	if v.Night {
		err = r.stay(s, serve)
	} else {
		err = r.serve(s, serve)
	}
	if err != nil {
		return Visit{}, err
	}
	done.Leave = r.moment()
	r.drive(s.DetourKm/2, s.DetourMin/2)
	return done, r.keepsReserve(s.ID)
}

// ownOrder sorts the services of a visit as the stop lists them.
func ownOrder(s *Stop, v Visit) ([]Serve, error) {
	var out []Serve
	for _, x := range s.Serves {
		for _, y := range v.Serve {
			if y.Tank == x.Tank && (v.Night || !x.GuestsOnly) {
				out = append(out, y)
				break
			}
		}
	}
	if len(out) < len(v.Serve) {
		for _, y := range v.Serve {
			n := len(slices.DeleteFunc(slices.Clone(v.Serve), func(z Serve) bool { return z.Tank != y.Tank }))
			if n > 1 || !slices.Contains(out, y) {
				return nil, &Broken{Rule: RuleService, Stop: s.ID, Tank: y.Tank, Km: s.Km}
			}
		}
	}
	return out, nil
}

// drive uses up headroom, kilometres and minutes.
func (r *replayer) drive(km, minutes float64) {
	for i, t := range r.p.Tanks {
		r.headroom[i] = min(r.headroom[i]-t.PerKm*km, t.Capacity)
	}
	r.dayKm += km
	r.spend(minutes)
}

// spend passes minutes on the road.
func (r *replayer) spend(minutes float64) { r.clock, r.dayMin = r.clock+minutes, r.dayMin+minutes }

// charge counts minutes as a cost.
func (r *replayer) charge(minutes float64) { r.parts.Time += r.p.TimeCostPerH * minutes / 60 }

func (s *Stop) service(tank string) *Service {
	i := slices.IndexFunc(s.Serves, func(x Service) bool { return x.Tank == tank })
	return &s.Serves[i]
}

func (r *replayer) moment() Moment { return Moment{Km: r.km, Min: r.clock, Levels: r.levels()} }

func (r *replayer) levels() map[string]float64 {
	m := make(map[string]float64, len(r.headroom))
	for i, t := range r.p.Tanks {
		m[t.ID] = t.swap(r.headroom[i])
	}
	return m
}

func (r *replayer) keptRequired(s Stop) bool {
	night, visited := r.visited[s.ID]
	return visited && (night || s.Night == nil)
}

// finish drives to the end of the route and settles the end conditions.
func (r *replayer) finish() (PlanEnd, error) {
	p := r.p
	r.drive(p.LengthKm-r.km, p.Drive.Minutes(r.km, p.LengthKm))
	r.km = p.LengthKm
	if err := r.keepsReserve(""); err != nil {
		return PlanEnd{}, err
	}
	if r.dayKm > p.Drive.MaxKmPerDay+Tolerance {
		return PlanEnd{}, &Broken{Rule: RuleDayKm, Km: r.km, Have: r.dayKm, Need: p.Drive.MaxKmPerDay}
	}
	if r.dayMin > p.Drive.MaxMinPerDay+Tolerance {
		return PlanEnd{}, &Broken{Rule: RuleDayMin, Km: r.km, Have: r.dayMin, Need: p.Drive.MaxMinPerDay}
	}
	if n := p.Nights; n != nil && (r.nights < n.Min || r.nights > n.Max) {
		return PlanEnd{}, &Broken{Rule: RuleNights, Km: r.km, Have: float64(r.nights), Need: float64(min(max(r.nights, n.Min), n.Max))}
	}
	end := PlanEnd{Min: r.clock, Levels: r.levels()}
	for _, t := range p.Tanks {
		if err := r.settle(t, &end); err != nil {
			return PlanEnd{}, err
		}
	}
	for _, tank := range slices.Sorted(maps.Keys(end.Refill)) {
		r.parts.Refill += end.Refill[tank] * *p.Tanks[r.tankAt[tank]].End.RefillPrice
	}
	return end, nil
}

// settle holds one tank to its end condition, paying for what may be missing.
func (r *replayer) settle(t Tank, end *PlanEnd) error {
	if t.End == nil {
		return nil
	}
	level := end.Levels[t.ID]
	if t.End.AtMost != nil && level > *t.End.AtMost+Tolerance {
		return &Broken{Rule: RuleEnd, Tank: t.ID, Km: r.km, Have: level, Need: *t.End.AtMost}
	}
	if t.End.AtLeast == nil || level >= *t.End.AtLeast {
		return nil
	}
	missing := *t.End.AtLeast - level
	if t.End.RefillPrice != nil {
		if end.Refill == nil {
			end.Refill = map[string]float64{}
		}
		end.Refill[t.ID] = missing
		return nil
	}
	if missing > Tolerance {
		return &Broken{Rule: RuleEnd, Tank: t.ID, Km: r.km, Have: level, Need: *t.End.AtLeast}
	}
	return nil
}
