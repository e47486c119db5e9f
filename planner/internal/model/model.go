package model

import (
	"math"

	"ullage/planner"
)

// This file lays a problem out for the solver: indices instead of names,
// money instead of minutes, every tank as a headroom.

// A Model is a problem by index.
type Model struct {
	Problem  *planner.Problem
	Tanks    []Tank
	Stops    []Stop
	MaxKm    float64
	MaxMin   float64
	LastMin  float64 // of the last day
	MoveKm   float64 // along the route between two nights
	Lists    uint32  // bit k: of the k-th list a stop must be visited
	depart   float64
	per      []float64 // mass of a unit of level, by tank; nil: no limit
	mostMass float64
	supply   int     // the tank that mass lets out; −1: none
	Money    float64 // per minute
	Length   float64
	EndMin   float64 // driving minutes to the end of the route
	Least    int     // nights
	Most     int     // math.MaxInt32 if no plan can have too many
	Opens    []bool  // by stop: windows from this stop on
	Plain    []int   // the first tanks that are free and that driving does not restore, four at most
	Restored int     // the first free tank that it does restore, −1 if none
	Wander   bool    // driving restores some tank, so that a visit without a service can be of use
}

type Tank struct {
	Cap, Reserve, Start float64 // headroom
	PerKm               float64
	Free                bool    // every unit is free: the tank is filled whenever it is served
	Waste               bool    // headroom of a waste tank
	End                 float64 // headroom wanted at the end, at least reserve
	Refill              float64 // price of what is missing then; < 0: none may be
}

type Stop struct {
	Km, Half          float64 // position; half the detour
	At                float64 // driving minutes along the route up to here
	HalfMin, StopMin  float64
	Fixed             float64 // money for any visit, time included
	Required          bool
	Lists             uint32 // that the stop is on
	Last              uint32 // of these, those that no later stop is on
	open              [][2]float64
	checkIn           *[2]float64
	Serves            []Service
	Night             bool
	NightFee          float64
	Nights            int
	Use               []float64 // by tank; nil without a night
	Branches, Settled uint32    // services to decide on; services always taken
	Guests            uint32    // of these, those that only a night gives
	Barred            uint32    // of these, those that a night takes too much for
}

type Service struct {
	Tank   int
	Price  float64
	min    float64
	Fixed  float64 // money for taking it, time included
	More   float64 // money besides, of a night
	Spare  float64 // binding headroom on arrival, 0 if none
	Guests bool
}

// New lays out a problem, which must be valid. It keeps p.
func New(p *planner.Problem) *Model {
	m := &Model{Problem: p, MaxKm: p.Drive.MaxKmPerDay, MaxMin: p.Drive.MaxMinPerDay, LastMin: p.Drive.LastDayMin(), MoveKm: p.Drive.MoveKm,
		depart: p.Drive.DepartMin, Money: p.TimeCostPerH / 60, Length: p.LengthKm, Most: math.MaxInt32, supply: -1}
	if p.Nights != nil {
		m.Least, m.Most = p.Nights.Min, p.Nights.Max
		if m.Most >= p.NightsOffered() {
			m.Most = math.MaxInt32
		}
	}
	m.EndMin = p.Drive.Minutes(0, p.LengthKm)
	index := make(map[string]int, len(p.Tanks))
	for i, t := range p.Tanks {
		index[t.ID] = i
		m.Tanks = append(m.Tanks, newTankModel(t))
		m.Wander = m.Wander || t.PerKm < 0
		if p.Mass != nil {
			m.per, m.mostMass = append(m.per, p.Mass.Per[t.ID]), p.Mass.Most
		}
		if t.ID == p.Mass.Supply(p.Tanks) {
			m.supply = i
		}
	}
	m.Stops = make([]Stop, 0, len(p.Stops))
	for i := range p.Stops {
		m.Stops = append(m.Stops, m.newStop(&p.Stops[i], index))
	}
	m.Opens = make([]bool, len(m.Stops)+1)
	for i := len(m.Stops) - 1; i >= 0; i-- {
		m.Opens[i] = m.Opens[i+1] || len(m.Stops[i].open) > 0
	}
	for i := range m.Stops {
		m.split(&m.Stops[i])
	}
	m.list()
	m.glance()
	return m
}

// list notes on which lists the stops are, and where each ends.
func (m *Model) list() {
	index := map[string]uint32{}
	for k, list := range m.Problem.RequireOne {
		m.Lists |= 1 << k
		for _, id := range list {
			index[id] |= 1 << k
		}
	}
	later := uint32(0)
	for i := len(m.Stops) - 1; i >= 0; i-- {
		s := &m.Stops[i]
		s.Lists = index[m.Problem.Stops[i].ID]
		s.Last = s.Lists &^ later
		later |= s.Lists
	}
}

// glance notes the tanks that tell partial plans apart at a glance.
func (m *Model) glance() {
	m.Restored = -1
	for t := range m.Tanks {
		switch x := &m.Tanks[t]; {
		case x.Free && x.PerKm >= 0 && len(m.Plain) < 4:
			m.Plain = append(m.Plain, t)
		case x.Free && x.PerKm < 0 && m.Restored < 0:
			m.Restored = t
		}
	}
}

func newTankModel(t planner.Tank) Tank {
	x := Tank{Cap: t.Capacity, Reserve: t.Reserve, Start: t.Swap(t.Start), PerKm: t.PerKm,
		Free: true, Waste: t.Kind == planner.Waste, End: t.Reserve, Refill: -1}
	if t.End == nil {
		return x
	}
	if t.End.AtMost != nil && t.Kind == planner.Waste {
		x.End = max(x.End, t.Capacity-*t.End.AtMost)
	}
	if t.End.AtLeast != nil && t.Kind == planner.Supply {
		x.End = max(x.End, *t.End.AtLeast)
		if t.End.RefillPrice != nil {
			x.Refill = *t.End.RefillPrice
			x.Free = false
		}
	}
	return x
}

func (m *Model) newStop(s *planner.Stop, index map[string]int) Stop {
	x := Stop{Km: s.Km, Half: s.DetourKm / 2, At: m.Problem.Drive.Minutes(0, s.Km), HalfMin: s.DetourMin / 2, StopMin: s.StopMin,
		Fixed: s.Fee + m.Money*(s.DetourMin+s.StopMin), Required: s.Required, open: s.Open}
	x.Serves = make([]Service, 0, len(s.Serves))
	for _, y := range s.Serves {
		t := index[y.Tank]
		if y.Price > 0 {
			m.Tanks[t].Free = false
		}
		z := Service{Tank: t, Price: y.Price, min: y.Min, Fixed: y.Fee + m.Money*y.Min, Guests: y.GuestsOnly}
		if s.Night != nil {
			acts, ok := s.Night.Acts(m.Problem.Tanks[t])
			if z.More = float64(acts-1) * z.Fixed; !ok {
				z.More, x.Barred = 0, x.Barred|1<<len(x.Serves)
			}
			if z.Guests {
				z.Fixed, z.More = z.Fixed+z.More, 0
			}
		}
		if m.Problem.Backup && y.Spare > m.Tanks[t].Reserve {
			z.Spare = y.Spare
		}
		x.Serves = append(x.Serves, z)
	}
	if s.Night != nil {
		x.Night, x.NightFee, x.Nights, x.checkIn = true, s.Night.Fee+m.Money*s.Night.Min, s.Night.Nights, s.Night.CheckIn
		x.Use = make([]float64, len(m.Tanks))
		for id, u := range s.Night.Use {
			x.Use[index[id]] = u
		}
	}
	return x
}

// split tells the services that cost nothing to take from those to decide on.
func (m *Model) split(s *Stop) {
	for k, y := range s.Serves {
		if y.min == 0 && y.Fixed == 0 && y.More == 0 && y.Spare == 0 && s.Barred&(1<<k) == 0 {
			s.Settled |= 1 << k
		} else {
			s.Branches |= 1 << k
		}
		if y.Guests {
			s.Guests |= 1 << k
		}
	}
}

// Service is what the stop offers for the tank; nil if nothing.
func (s *Stop) Service(tank int) *Service {
	for k := range s.Serves {
		if s.Serves[k].Tank == tank {
			return &s.Serves[k]
		}
	}
	return nil
}
