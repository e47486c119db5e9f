package planner

import (
	"maps"
	"slices"
	"sort"
)

// ProblemFormat is the value of [Problem.Format].
const ProblemFormat = "ullage-problem-2"

// FormerProblemFormat is that of problems from before stays were lived night by
// night. What it can say means the same in the new one, but that time before a
// night was waiting then, and is time in hand now.
const FormerProblemFormat = "ullage-problem-1"

// Kind says how a tank's level turns into headroom.
type Kind string

const (
	// Supply tanks must not run empty: headroom is the level.
	Supply Kind = "supply"
	// Waste tanks must not run full: headroom is capacity less the level.
	Waste Kind = "waste"
)

// A Problem is everything that decides a plan. Its JSON form is the file
// format ullage-problem-2. The zero value is not valid: see [Problem.Validate].
type Problem struct {
	Format       string  `json:"format"`
	LengthKm     float64 `json:"length_km"`       // > 0; positions run from 0 to here
	TimeCostPerH float64 `json:"time_cost_per_h"` // ≥ 0, money per hour of detour, service, settling in and waiting
	Backup       bool    `json:"backup,omitempty"`
	Nights       *Range  `json:"nights,omitempty"` // nights of the whole trip; nil: any number
	Drive        Drive   `json:"drive"`
	Tanks        []Tank  `json:"tanks"`
	Stops        []Stop  `json:"stops"` // ascending Km; where two are equal, the list is the order of passing

	// Of the stops of each list one at least is visited, its night taken if it offers
	// one. Names of stops that the problem does not have count for nothing.
	RequireOne [][]string `json:"require_one,omitempty"`
	Mass       *Mass      `json:"mass,omitempty"` // nil: no limit
}

// Mass is a limit of what tanks may weigh together at every departure. What is too
// heavy then is let out of its supply tank, which costs nothing.
type Mass struct {
	Most float64            `json:"most"` // in the unit of level × Per; below 0: too heavy even with empty tanks
	Per  map[string]float64 `json:"per"`  // > 0 a unit of level, by tank; one supply tank at most, none of them with a price
}

// Supply is the supply tank that the mass limits; "" if it has none.
func (m *Mass) Supply(tanks []Tank) string {
	for _, t := range tanks {
		if m != nil && t.Kind == Supply && m.Per[t.ID] > 0 {
			return t.ID
		}
	}
	return ""
}

// Of levels by tank.
func (m *Mass) Of(tanks []Tank, level func(tank int) float64) float64 {
	sum := 0.0
	for i, t := range tanks {
		if per := m.Per[t.ID]; per > 0 {
			sum += per * level(i)
		}
	}
	return sum
}

// A Range is a closed range of whole numbers.
type Range struct {
	Min int `json:"min"`
	Max int `json:"max"`
}

// Drive limits a day on the road.
type Drive struct {
	MaxKmPerDay  float64 `json:"max_km_per_day"`  // > 0, detours included
	MaxMinPerDay float64 `json:"max_min_per_day"` // > 0, from departure to arrival: driving, detours, stops, services, waiting but for a night
	DepartMin    float64 `json:"depart_min"`      // minutes after midnight, 0 ≤ DepartMin < 1440
	Pace         []Pace  `json:"pace"`            // ascending ToKm, the last one is LengthKm

	MoveKm   float64 `json:"move_km,omitempty"`    // ≥ 0, along the route between two nights in a row
	RestDays []int   `json:"rest_days,omitempty"`  // days without driving, ≥ 1; 0 is the first day of the trip
	EndByMin float64 `json:"end_by_min,omitempty"` // minutes after midnight of the last day, to be at the end of the route by; 0: any
}

// Rests says whether nobody drives on a day; 0 is the first one of the trip.
func (d Drive) Rests(day int) bool { return slices.Contains(d.RestDays, day) }

// LastDayMin is how long the last day on the road may be.
func (d Drive) LastDayMin() float64 {
	if d.EndByMin > 0 {
		return min(d.MaxMinPerDay, d.EndByMin-d.DepartMin)
	}
	return d.MaxMinPerDay
}

// Minutes is the driving time along the route between two positions,
// 0 ≤ fromKm ≤ toKm ≤ the route's length, detours not included.
func (d Drive) Minutes(fromKm, toKm float64) float64 {
	first := sort.Search(len(d.Pace), func(i int) bool { return d.Pace[i].ToKm > fromKm })
	total, at := 0.0, 0.0
	if first > 0 {
		at = d.Pace[first-1].ToKm
	}
	for _, piece := range d.Pace[first:] {
		if at >= toKm {
			break
		}
		lo, hi := max(at, fromKm), min(piece.ToKm, toKm)
		if hi > lo {
			total += (hi - lo) * piece.MinPerKm
		}
		at = piece.ToKm
	}
	return total
}

// Pace is the driving time per kilometre up to a position on the route.
type Pace struct {
	ToKm     float64 `json:"to_km"`
	MinPerKm float64 `json:"min_per_km"` // ≥ 0
}

// A Tank is a limit that the trip uses up.
type Tank struct {
	ID       string  `json:"id"`
	Name     string  `json:"name,omitempty"` // as people say it in reasons; "": the ID
	Unit     string  `json:"unit,omitempty"` // of all its amounts, in reasons: L, Ah
	Kind     Kind    `json:"kind"`
	Capacity float64 `json:"capacity"` // > 0
	Reserve  float64 `json:"reserve"`  // headroom that is never touched, 0 ≤ Reserve ≤ Capacity
	Start    float64 `json:"start"`    // a level, 0 ≤ Start ≤ Capacity
	PerKm    float64 `json:"per_km"`   // use of headroom; negative restores, up to Capacity
	End      *End    `json:"end,omitempty"`
}

// End is what the tank must hold at the end of the trip.
type End struct {
	AtLeast     *float64 `json:"at_least,omitempty"`     // supply: level
	RefillPrice *float64 `json:"refill_price,omitempty"` // supply: what a missing unit costs; nil: none may be missing
	AtMost      *float64 `json:"at_most,omitempty"`      // waste: level
}

// A Stop is a place beside the route, at one pass of the route.
type Stop struct {
	ID        string       `json:"id"`
	Km        float64      `json:"km"`         // where the route is left and joined again
	DetourKm  float64      `json:"detour_km"`  // ≥ 0, out and back together
	DetourMin float64      `json:"detour_min"` // ≥ 0, out and back together
	StopMin   float64      `json:"stop_min"`   // ≥ 0, spent by any visit
	Fee       float64      `json:"fee"`        // ≥ 0, paid by any visit
	Required  bool         `json:"required,omitempty"`
	Site      string       `json:"site,omitempty"`     // stops of one site close together; "": only this one
	Operator  string       `json:"operator,omitempty"` // stops of one operator close together; "": not known
	Open      [][2]float64 `json:"open,omitempty"`     // ascending windows, both ends included, in which service, or arrival for a night, can begin; none: always
	Serves    []Service    `json:"serves"`
	Night     *Night       `json:"night,omitempty"`
}

// A Service restores one tank: a supply tank by any amount up to its
// capacity, a waste tank entirely.
type Service struct {
	Tank       string  `json:"tank"`
	Price      float64 `json:"price"` // ≥ 0 per unit; supply only
	Min        float64 `json:"min"`   // ≥ 0 minutes
	Fee        float64 `json:"fee,omitempty"`
	Spare      float64 `json:"spare,omitempty"`       // headroom to have on arrival, if Backup
	GuestsOnly bool    `json:"guests_only,omitempty"` // served only where the night is taken
}

// A Night is the offer to stay.
type Night struct {
	Fee    float64            `json:"fee"`    // for the whole stay
	Nights int                `json:"nights"` // ≥ 1
	Use    map[string]float64 `json:"use"`    // headroom used by tank in all; negative restores, up to Capacity

	// Use night by night, where nights differ: of one sign, adding up to Use.
	ByNight map[string][]float64 `json:"by_night,omitempty"`

	Min     float64     `json:"min,omitempty"`      // ≥ 0, to settle in and pack up: a cost, but not on the road
	CheckIn *[2]float64 `json:"check_in,omitempty"` // minutes after midnight, between which one arrives, before the next departure; nil: any time
}

// Swap turns a level into headroom, or headroom into a level.
func (t Tank) Swap(x float64) float64 {
	if t.Kind == Waste {
		return t.Capacity - x
	}
	return x
}

// EndHeadroom is what must be left at the end.
func (t Tank) EndHeadroom() float64 {
	switch {
	case t.End != nil && t.End.AtLeast != nil && t.End.RefillPrice == nil:
		return max(t.Reserve, *t.End.AtLeast)
	case t.End != nil && t.End.AtMost != nil:
		return max(t.Reserve, t.Capacity-*t.End.AtMost)
	}
	return t.Reserve
}

// SharesFate is true if the other stop is closed when s is: same site or
// same operator.
func (s Stop) SharesFate(other Stop) bool {
	return s.Site != "" && s.Site == other.Site || s.Operator != "" && s.Operator == other.Operator
}

// NightsOffered is how many nights a plan has that takes every one.
func (p *Problem) NightsOffered() int {
	n := 0
	for _, s := range p.Stops {
		if s.Night != nil {
			n += s.Night.Nights
		}
	}
	return n
}

// Upgrade makes a problem of the format before this one.
func (p *Problem) Upgrade() {
	if p.Format == FormerProblemFormat {
		p.Format = ProblemFormat
	}
}

// Unlisted takes stops off the lists of which one is required. Lists are shared with
// nobody after that; one on which no stop is left is kept, and cannot be met.
func (p *Problem) Unlisted(off func(id string) bool) {
	lists := make([][]string, len(p.RequireOne))
	for k, list := range p.RequireOne {
		lists[k] = slices.Clone(list)
		for i, id := range list {
			if off(id) {
				lists[k][i] = ""
			}
		}
	}
	p.RequireOne = lists
}

// Clone copies the problem, with tanks, stops and nights of its own; the rest is shared.
func (p *Problem) Clone() *Problem {
	q := *p
	q.Tanks = slices.Clone(p.Tanks)
	q.Stops = slices.Clone(p.Stops)
	for i, s := range q.Stops {
		if s.Night != nil {
			n := *s.Night
			n.Use, n.ByNight = maps.Clone(n.Use), maps.Clone(n.ByNight)
			q.Stops[i].Night = &n
		}
	}
	return &q
}

// Stop with the id, which the problem must have.
func (p *Problem) Stop(id string) *Stop {
	return &p.Stops[slices.IndexFunc(p.Stops, func(s Stop) bool { return s.ID == id })]
}

// Tolerance is what two quantities (km, minutes, tank units) may differ by and
// still count as equal: a thousandth of a millilitre where tanks are litres.
const Tolerance = 1e-6
