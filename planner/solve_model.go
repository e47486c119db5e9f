package planner

import "math"

// This file lays a problem out for the solver: indices instead of names,
// money instead of minutes, every tank as a headroom.

// slack is what a limit may be missed by inside the solver; a tenth of what
// the auditor lets pass.
const slack = 1e-7

// perVisit is added to the cost of every visit so that, of plans that cost the
// same, the one with fewer visits is the cheaper. Equal costs differ by less
// than tie.
const (
	perVisit = 2e-9
	tie      = 5e-10
)

type model struct {
	p        *Problem
	tanks    []tankModel
	stops    []stopModel
	maxKm    float64
	maxMin   float64
	depart   float64
	money    float64 // per minute
	length   float64
	endMin   float64 // driving minutes to the end of the route
	least    int     // nights
	most     int     // math.MaxInt32 if no plan can have too many
	opens    []bool  // by stop: windows from this stop on
	plain    []int   // the first tanks that are free and that driving does not restore, four at most
	restored int     // the first free tank that it does restore, −1 if none
	wander   bool    // driving restores some tank, so that a visit without a service can be of use
}

type tankModel struct {
	cap, reserve, start float64 // headroom
	perKm               float64
	free                bool    // every unit is free: the tank is filled whenever it is served
	waste               bool    // headroom of a waste tank
	end                 float64 // headroom wanted at the end, at least reserve
	refill              float64 // price of what is missing then; < 0: none may be
}

type stopModel struct {
	km, half          float64 // position; half the detour
	at                float64 // driving minutes along the route up to here
	halfMin, stopMin  float64
	fixed             float64 // money for any visit, time included
	required          bool
	open              [][2]float64
	serves            []serviceModel
	night             bool
	nightFee          float64
	nights            int
	use               []float64 // by tank; nil without a night
	branches, settled uint32    // services to decide on; services always taken
	guests            uint32    // of these, those that only a night gives
}

type serviceModel struct {
	tank   int
	price  float64
	min    float64
	fixed  float64 // money for taking it, time included
	spare  float64 // binding headroom on arrival, 0 if none
	guests bool
}

func newModel(p *Problem) *model {
	m := &model{p: p, maxKm: p.Drive.MaxKmPerDay, maxMin: p.Drive.MaxMinPerDay, depart: p.Drive.DepartMin,
		money: p.TimeCostPerH / 60, length: p.LengthKm, most: math.MaxInt32}
	if p.Nights != nil {
		m.least, m.most = p.Nights.Min, p.Nights.Max
		if m.most >= allNights(p) {
			m.most = math.MaxInt32
		}
	}
	m.endMin = p.Drive.Minutes(0, p.LengthKm)
	index := make(map[string]int, len(p.Tanks))
	for i, t := range p.Tanks {
		index[t.ID] = i
		m.tanks = append(m.tanks, newTankModel(t))
		m.wander = m.wander || t.PerKm < 0
	}
	for i := range p.Stops {
		m.stops = append(m.stops, m.newStop(&p.Stops[i], index))
	}
	m.opens = make([]bool, len(m.stops)+1)
	for i := len(m.stops) - 1; i >= 0; i-- {
		m.opens[i] = m.opens[i+1] || len(m.stops[i].open) > 0
	}
	for i := range m.stops {
		m.split(&m.stops[i])
	}
	m.restored = -1
	for t := range m.tanks {
		switch x := &m.tanks[t]; {
		case x.free && x.perKm >= 0 && len(m.plain) < 4:
			m.plain = append(m.plain, t)
		case x.free && x.perKm < 0 && m.restored < 0:
			m.restored = t
		}
	}
	return m
}

func newTankModel(t Tank) tankModel {
	x := tankModel{cap: t.Capacity, reserve: t.Reserve, start: t.swap(t.Start), perKm: t.PerKm,
		free: true, waste: t.Kind == Waste, end: t.Reserve, refill: -1}
	if t.End == nil {
		return x
	}
	if t.End.AtMost != nil && t.Kind == Waste {
		x.end = max(x.end, t.Capacity-*t.End.AtMost)
	}
	if t.End.AtLeast != nil && t.Kind == Supply {
		x.end = max(x.end, *t.End.AtLeast)
		if t.End.RefillPrice != nil {
			x.refill = *t.End.RefillPrice
			x.free = false
		}
	}
	return x
}

func (m *model) newStop(s *Stop, index map[string]int) stopModel {
	x := stopModel{km: s.Km, half: s.DetourKm / 2, at: m.p.Drive.Minutes(0, s.Km), halfMin: s.DetourMin / 2, stopMin: s.StopMin,
		fixed: s.Fee + m.money*(s.DetourMin+s.StopMin), required: s.Required, open: s.Open}
	for _, y := range s.Serves {
		t := index[y.Tank]
		if y.Price > 0 {
			m.tanks[t].free = false
		}
		z := serviceModel{tank: t, price: y.Price, min: y.Min, fixed: y.Fee + m.money*y.Min, guests: y.GuestsOnly}
		if m.p.Backup && y.Spare > m.tanks[t].reserve {
			z.spare = y.Spare
		}
		x.serves = append(x.serves, z)
	}
	if s.Night != nil {
		x.night, x.nightFee, x.nights = true, s.Night.Fee, s.Night.Nights
		x.use = make([]float64, len(m.tanks))
		for id, u := range s.Night.Use {
			x.use[index[id]] = u
		}
	}
	return x
}

// split tells the services that cost nothing to take from those to decide on.
func (m *model) split(s *stopModel) {
	for k, y := range s.serves {
		if y.min == 0 && y.fixed == 0 && y.spare == 0 {
			s.settled |= 1 << k
		} else {
			s.branches |= 1 << k
		}
		if y.guests {
			s.guests |= 1 << k
		}
	}
}

// allNights is how many nights a plan has that takes every one.
func allNights(p *Problem) int {
	n := 0
	for _, s := range p.Stops {
		if s.Night != nil {
			n += s.Night.Nights
		}
	}
	return n
}

// leastNights is what the route and the trip force at least.
func (m *model) leastNights() int {
	n := 0
	if m.maxKm > 0 {
		n = int(math.Ceil(m.length/m.maxKm-1e-9)) - 1
	}
	return max(n, m.least, 0)
}
