package backup

import (
	"maps"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/replay"
)

// fallbackReach is how many of the next places that offer a service are tried.
const fallbackReach = 4

// A Closure is what becomes of a plan when one of its stops turns out closed
// on arrival.
type Closure struct {
	Stop     string
	Survived bool
	LongDay  bool              // survived only with a day half as long again as the limit
	Fallback map[string]string // stop to use instead, by tank or [planner.NightFallback]; none for what can be left out
	Problem  *planner.Problem  // with the stop closed and no reserves; of other stops, those planned and tried
	Plan     planner.Plan      // survived: the trip as it is then driven, a plan of Problem
	Err      error             // not survived: what breaks if no fallback is used, or the last one tried
}

// Closures closes every stop of the plan in turn: it follows the plan up to
// the arrival there, goes to fallbacks for what was planned (to fill up or to
// empty), and follows the rest of the plan, with amounts that fit. The way on
// is the cheapest that is found among the next few places for each service
// and the night; later stops of the same site or operator are closed too. On the way reserves may be
// spent, but no tank runs dry; all other rules hold, opening hours, day limits
// and end conditions included. Only if that cannot be done, days may be
// half as long again, and then the nearest places come first: a hirer before a
// locked gate at night drives on.
//
// A way on is a proof by example; that none is found is no proof that none
// exists. The plan must have passed [audit.Check]. Each closure takes up to twice
// (1 + fallbackReach)^(services and night) replays.
func Closures(p *planner.Problem, plan planner.Plan) []Closure {
	out := make([]Closure, 0, len(plan.Visits))
	for i := range plan.Visits {
		out = append(out, closeStop(p, plan, i))
	}
	return out
}

// WithFallbacks returns the plan with the fallbacks of closures in its visits.
func WithFallbacks(plan planner.Plan, closures []Closure) planner.Plan {
	plan.Visits = slices.Clone(plan.Visits)
	for i := range plan.Visits {
		for _, c := range closures {
			if c.Stop == plan.Visits[i].Stop {
				plan.Visits[i].Fallback = c.Fallback
			}
		}
	}
	return plan
}

func closeStop(p *planner.Problem, plan planner.Plan, i int) Closure {
	c := searchWayOn(p, plan, i, 1)
	if !c.Survived {
		if long := searchWayOn(p, plan, i, 1.5); long.Survived {
			long.LongDay = true
			return long
		}
	}
	return c
}

// searchWayOn allows days of limit times their length.
func searchWayOn(p *planner.Problem, plan planner.Plan, i int, limit float64) Closure {
	v := plan.Visits[i]
	closed, at := closedProblem(p, plan, i)
	closed.Drive.MaxKmPerDay *= limit
	closed.Drive.MaxMinPerDay *= limit
	search := &wayOn{p: closed, long: limit > 1, before: plan.Visits[:i+1], after: plan.Visits[i+1:], best: Closure{Stop: v.Stop, Problem: closed}}
	search.before = slices.Clone(search.before)
	search.before[i] = planner.Visit{Stop: v.Stop} // the way there and back, for nothing
	for _, y := range v.Serve {
		search.missed = append(search.missed, y.Tank)
		search.offers = append(search.offers, append([]int{-1}, nextOffers(closed, at, y.Tank, v)...))
	}
	if v.Night {
		search.missed = append(search.missed, planner.NightFallback)
		search.offers = append(search.offers, append([]int{-1}, nextNights(closed, at)...))
	}
	search.keepOffers(plan)
	search.try(make([]int, 0, len(search.missed)))
	return search.best
}

// closedProblem is p with the stop of visit i closed, and its site, found out on
// arrival: of the stops at the same km, those not visited before come after
// it. at is its position in the list.
func closedProblem(p *planner.Problem, plan planner.Plan, i int) (closed *planner.Problem, at int) {
	q := *p
	q.Backup = false
	q.Tanks = slices.Clone(p.Tanks)
	for j := range q.Tanks {
		q.Tanks[j].Reserve = 0
	}
	from := slices.IndexFunc(p.Stops, func(s planner.Stop) bool { return s.ID == plan.Visits[i].Stop })
	q.Stops = slices.Clone(p.Stops)
	shut := q.Stops[from]
	q.Stops = slices.Delete(q.Stops, from, from+1)
	for at = from; at > 0 && q.Stops[at-1].Km == shut.Km && !(i > 0 && plan.Visits[i-1].Stop == q.Stops[at-1].ID); {
		at--
	}
	q.Stops = slices.Insert(q.Stops, at, closedStop(shut))
	gone := map[string]bool{shut.ID: true}
	for j := at + 1; j < len(q.Stops); j++ {
		if shut.SharesFate(q.Stops[j]) {
			q.Stops[j] = closedStop(q.Stops[j])
			gone[q.Stops[j].ID] = true
		}
	}
	// What a list wanted is no longer asked of a trip that finds it closed.
	q.RequireOne = slices.DeleteFunc(slices.Clone(p.RequireOne), func(list []string) bool {
		return slices.ContainsFunc(list, func(id string) bool { return gone[id] })
	})
	return &q, at
}

// closedStop costs the way and the time to see that it is closed.
func closedStop(s planner.Stop) planner.Stop {
	s.Required, s.Fee, s.Open, s.Serves, s.Night = false, 0, nil, nil, nil
	return s
}

// nextOffers leaves out what is for guests unless a night is looked for too.
func nextOffers(p *planner.Problem, at int, tank string, instead planner.Visit) []int {
	return nextStops(p, at, func(s planner.Stop) bool {
		return slices.ContainsFunc(s.Serves, func(x planner.Service) bool { return x.Tank == tank && (instead.Night || !x.GuestsOnly) })
	})
}

func nextNights(p *planner.Problem, at int) []int {
	return nextStops(p, at, func(s planner.Stop) bool { return s.Night != nil })
}

func nextStops(p *planner.Problem, at int, fits func(planner.Stop) bool) []int {
	var out []int
	for j := at + 1; j < len(p.Stops) && len(out) < fallbackReach; j++ {
		if fits(p.Stops[j]) {
			out = append(out, j)
		}
	}
	return out
}

// wayOn searches the cheapest trip after a closure.
type wayOn struct {
	p             *planner.Problem
	before, after []planner.Visit
	missed        []string
	offers        [][]int // by missed: stops, -1 for none
	long          bool    // days are too long anyway: the nearest places, then the cheapest
	best          Closure
	far           float64 // km of the farthest fallback of best
}

// keepOffers leaves out of the problem what is neither planned nor tried, so
// that replays are quick.
func (w *wayOn) keepOffers(plan planner.Plan) {
	keep := map[string]bool{}
	for _, v := range plan.Visits {
		keep[v.Stop] = true
	}
	for _, list := range w.offers {
		for _, j := range list {
			if j >= 0 {
				keep[w.p.Stops[j].ID] = true
			}
		}
	}
	moved := make([]int, len(w.p.Stops))
	var kept []planner.Stop
	for j, s := range w.p.Stops {
		if moved[j] = len(kept); keep[s.ID] || s.Required {
			kept = append(kept, s)
		}
	}
	w.p.Stops = kept
	for _, list := range w.offers {
		for k, j := range list {
			if j >= 0 {
				list[k] = moved[j]
			}
		}
	}
}

// try chooses a stop for each missed service, then replays.
func (w *wayOn) try(chosen []int) {
	if len(chosen) < len(w.missed) {
		for _, j := range w.offers[len(chosen)] {
			w.try(append(chosen, j))
		}
		return
	}
	visits, err := replay.Fit(w.p, w.visits(chosen))
	var plan planner.Plan
	if err == nil {
		plan, err = replay.Plan(w.p, visits)
	}
	if err != nil {
		if !w.best.Survived {
			w.best.Err = err
		}
		return
	}
	if far := w.farthest(chosen); !w.best.Survived || far < w.far || far == w.far && plan.Cost < w.best.Plan.Cost {
		w.best.Survived, w.best.Plan, w.best.Err, w.far = true, plan, nil, far
		w.best.Fallback = w.fallback(chosen)
	}
}

// farthest is the km of the last stop chosen, where that counts, else 0.
func (w *wayOn) farthest(chosen []int) float64 {
	far := 0.0
	for _, j := range chosen {
		if j >= 0 && w.long {
			far = max(far, w.p.Stops[j].Km)
		}
	}
	return far
}

// fallback names the stops chosen by what was missed.
func (w *wayOn) fallback(chosen []int) map[string]string {
	out := map[string]string{}
	for k, j := range chosen {
		if j >= 0 {
			out[w.missed[k]] = w.p.Stops[j].ID
		}
	}
	return out
}

// visits merges the fallbacks into what remains of the plan.
func (w *wayOn) visits(chosen []int) []planner.Visit {
	extra := map[int]*planner.Visit{}
	for k, j := range chosen {
		if j < 0 {
			continue
		}
		if extra[j] == nil {
			extra[j] = &planner.Visit{Stop: w.p.Stops[j].ID}
		}
		if w.missed[k] == planner.NightFallback {
			extra[j].Night = true
		} else {
			extra[j].Serve = append(extra[j].Serve, planner.Serve{Tank: w.missed[k], Amount: math.Inf(1)})
		}
	}
	out := slices.Clone(w.before)
	rest := w.after
	position := make(map[string]int, len(w.p.Stops))
	for j, s := range w.p.Stops {
		position[s.ID] = j
	}
	for _, j := range slices.Sorted(maps.Keys(extra)) {
		for len(rest) > 0 && position[rest[0].Stop] < j {
			out, rest = append(out, rest[0]), rest[1:]
		}
		if len(rest) > 0 && position[rest[0].Stop] == j {
			out, rest = append(out, merged(rest[0], *extra[j])), rest[1:]
		} else {
			out = append(out, *extra[j])
		}
	}
	return append(out, rest...)
}

// merged adds a fallback to a visit that was planned anyway.
func merged(planned, extra planner.Visit) planner.Visit {
	out := planner.Visit{Stop: planned.Stop, Night: planned.Night || extra.Night, Serve: extra.Serve}
	for _, y := range planned.Serve {
		if !slices.ContainsFunc(extra.Serve, func(z planner.Serve) bool { return z.Tank == y.Tank }) {
			out.Serve = append(out.Serve, y)
		}
	}
	return out
}
