package replay

import "ullage/planner"

// A replayer is the trip at one time.
type replayer struct {
	p       *planner.Problem
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
	slept    float64 // km of the last night
	parts    planner.CostParts
}

func newReplayer(p *planner.Problem) *replayer {
	r := &replayer{p: p, tankAt: map[string]int{}, stopAt: map[string]int{}, visited: map[string]bool{}, clock: p.Drive.DepartMin}
	for i, t := range p.Tanks {
		r.tankAt[t.ID] = i
		r.headroom = append(r.headroom, t.Swap(t.Start))
	}
	for i, s := range p.Stops {
		r.stopAt[s.ID] = i
	}
	return r
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

func (r *replayer) moment() planner.Moment {
	return planner.Moment{Km: r.km, Min: r.clock, Levels: r.levels()}
}

func (r *replayer) levels() map[string]float64 {
	m := make(map[string]float64, len(r.headroom))
	for i, t := range r.p.Tanks {
		m[t.ID] = t.Swap(r.headroom[i])
	}
	return m
}

func (r *replayer) keepsReserve(stop string) error {
	for i, t := range r.p.Tanks {
		if r.headroom[i] < t.Reserve-planner.Tolerance {
			return &planner.Broken{Rule: planner.RuleReserve, Stop: stop, Tank: t.ID, Km: r.km, Have: r.headroom[i], Need: t.Reserve}
		}
	}
	return nil
}
