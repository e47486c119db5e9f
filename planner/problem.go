package planner

import (
	"maps"
	"slices"
	"sort"
)

// ProblemFormat is the value of [Problem.Format].
const ProblemFormat = "ullage-problem-1"

// Kind says how a tank's level turns into headroom.
type Kind string

const (
	// Supply tanks must not run empty: headroom is the level.
	Supply Kind = "supply"
	// Waste tanks must not run full: headroom is capacity less the level.
	Waste Kind = "waste"
)

// A Problem is everything that decides a plan. Its JSON form is the file
// format ullage-problem-1. The zero value is not valid: see [Problem.Validate].
type Problem struct {
	Format       string  `json:"format"`
	LengthKm     float64 `json:"length_km"`       // > 0; positions run from 0 to here
	TimeCostPerH float64 `json:"time_cost_per_h"` // ≥ 0, money per hour of detour, service and waiting
	Backup       bool    `json:"backup,omitempty"`
	Nights       *Range  `json:"nights,omitempty"` // nights of the whole trip; nil: any number
	Drive        Drive   `json:"drive"`
	Tanks        []Tank  `json:"tanks"`
	Stops        []Stop  `json:"stops"` // ascending Km; where two are equal, the list is the order of passing
}

// A Range is a closed range of whole numbers.
type Range struct {
	Min int `json:"min"`
	Max int `json:"max"`
}

// Drive limits a day on the road.
type Drive struct {
	MaxKmPerDay  float64 `json:"max_km_per_day"`  // > 0, detours included
	MaxMinPerDay float64 `json:"max_min_per_day"` // > 0, from departure to arrival: driving, detours, stops, services, waiting
	DepartMin    float64 `json:"depart_min"`      // minutes after midnight, 0 ≤ DepartMin < 1440
	Pace         []Pace  `json:"pace"`            // ascending ToKm, the last one is LengthKm
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
	Use    map[string]float64 `json:"use"`    // headroom used by tank; negative restores, up to Capacity
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

// Clone copies the problem, with tanks, stops and nights of its own; the rest is shared.
func (p *Problem) Clone() *Problem {
	q := *p
	q.Tanks = slices.Clone(p.Tanks)
	q.Stops = slices.Clone(p.Stops)
	for i, s := range q.Stops {
		if s.Night != nil {
			n := *s.Night
			n.Use = maps.Clone(n.Use)
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
