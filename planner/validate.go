package planner

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// Validate says whether the problem is one: every number finite and in the
// range its field states, every name known and given once, stops in order of
// km. A valid problem need not have a plan. The first fault is named with its
// place in the problem; before any, that it is too large ([TooMany]). O(size of the problem).
func (p *Problem) Validate() error {
	if err := p.tooMany(); err != nil {
		return err
	}
	v := validator{tanks: map[string]Kind{}}
	v.head(p)
	for i, t := range p.Tanks {
		v.tank(entry("tanks", i, t.ID), t)
	}
	seen, km := make(map[string]bool, len(p.Stops)), 0.0
	for i, s := range p.Stops {
		at := entry("stops", i, s.ID)
		if s.ID == "" {
			v.fault(at, "has no id")
		}
		if seen[s.ID] {
			v.fault(at, "has the id of an earlier stop: give every stop its own")
		}
		if s.Km < km {
			v.fault(at, "km %v is before the stop above it (km %v): sort stops by km", s.Km, km)
		}
		if s.Km > p.LengthKm {
			v.fault(at, "km %v is beyond the route's end at km %v", s.Km, p.LengthKm)
		}
		seen[s.ID], km = true, s.Km
		v.stop(at, s)
	}
	return v.err
}

// A validator keeps the first fault.
type validator struct {
	tanks map[string]Kind
	err   error
}

// A place in the problem, put into words only when it is at fault.
type place struct {
	list string // "stops"
	i    int    // position in it, -1 for none
	id   string
	part string // within it: ".serves"
	j    int    // position in part, -1 for none
	of   string // id within part
}

func whole(name string) place { return place{list: name, i: -1, j: -1} }

func entry(list string, i int, id string) place { return place{list: list, i: i, id: id, j: -1} }

func (at place) in(part string, j int, id string) place {
	at.part, at.j, at.of = part, j, id
	return at
}

func (at place) String() string {
	word := func(name string, i int, id string) string {
		if i >= 0 {
			name += fmt.Sprintf("[%d]", i)
		}
		if id != "" {
			name += fmt.Sprintf(" %q", id)
		}
		return name
	}
	return word(at.list, at.i, at.id) + word(at.part, at.j, at.of)
}

// fault is one that was found.
func (v *validator) fault(at place, format string, args ...any) {
	if v.err == nil {
		v.err = fmt.Errorf("planner: %v: %s", at, fmt.Sprintf(format, args...))
	}
}

// number wants x finite and within [lo, hi].
func (v *validator) number(at place, field string, x, lo, hi float64) {
	if lo <= x && x <= hi && !math.IsInf(x, 0) {
		return
	}
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		v.fault(at, "%s is %v, want a finite number", field, x)
	case math.IsInf(hi, 1):
		v.fault(at, "%s is %v, want %v or more", field, x, lo)
	default:
		v.fault(at, "%s is %v, want %v to %v", field, x, lo, hi)
	}
}

// unlimited is the upper end of a range without one.
func unlimited() float64 { return math.Inf(1) }

func (v *validator) head(p *Problem) {
	at := whole("problem")
	if p.Format != ProblemFormat {
		v.fault(at, "format is %q, want %q", p.Format, ProblemFormat)
	}
	v.number(at, "length_km", p.LengthKm, 0, unlimited())
	if !(p.LengthKm > 0) {
		v.fault(at, "length_km is %v, want more than 0", p.LengthKm)
	}
	v.number(at, "time_cost_per_h", p.TimeCostPerH, 0, unlimited())
	if r := p.Nights; r != nil && (r.Min < 0 || r.Min > r.Max) {
		v.fault(at, "nights is %d to %d, want 0 ≤ min ≤ max", r.Min, r.Max)
	}
	v.drive(p.Drive, p.LengthKm)
}

func (v *validator) drive(d Drive, length float64) {
	at := whole("drive")
	v.number(at, "max_km_per_day", d.MaxKmPerDay, 0, unlimited())
	v.number(at, "max_min_per_day", d.MaxMinPerDay, 0, unlimited())
	if !(d.MaxKmPerDay > 0 && d.MaxMinPerDay > 0) {
		v.fault(at, "max_km_per_day and max_min_per_day must be more than 0")
	}
	v.number(at, "depart_min", d.DepartMin, 0, 1440)
	if !(d.DepartMin < 1440) {
		v.fault(at, "depart_min is %v, want less than 1440", d.DepartMin)
	}
	if len(d.Pace) == 0 {
		v.fault(at, "pace is empty: give the minutes per km of the route")
	}
	to := 0.0
	for i, piece := range d.Pace {
		at := entry("drive.pace", i, "")
		v.number(at, "min_per_km", piece.MinPerKm, 0, unlimited())
		v.number(at, "to_km", piece.ToKm, 0, unlimited())
		if !(piece.ToKm > to) {
			v.fault(at, "to_km is %v, want more than %v", piece.ToKm, to)
		}
		to = piece.ToKm
	}
	if !(math.Abs(to-length) <= Tolerance) {
		v.fault(at, "pace ends at km %v, want the route's end at km %v", to, length)
	}
}

func (v *validator) tank(at place, t Tank) {
	if t.ID == "" {
		v.fault(at, "has no id")
	}
	if v.tanks[t.ID] != "" {
		v.fault(at, "has the id of an earlier tank: give every tank its own")
	}
	if t.Kind != Supply && t.Kind != Waste {
		v.fault(at, "kind is %q, want %q or %q", t.Kind, Supply, Waste)
	}
	v.tanks[t.ID] = t.Kind
	v.number(at, "capacity", t.Capacity, 0, unlimited())
	if !(t.Capacity > 0) {
		v.fault(at, "capacity is %v, want more than 0", t.Capacity)
	}
	v.number(at, "reserve", t.Reserve, 0, t.Capacity)
	v.number(at, "start", t.Start, 0, t.Capacity)
	v.number(at, "per_km", t.PerKm, -unlimited(), unlimited())
	if e := t.End; e != nil {
		v.end(at.in(".end", -1, ""), t, *e)
	}
}

func (v *validator) end(at place, t Tank, e End) {
	if e.AtLeast != nil && t.Kind != Supply {
		v.fault(at, "at_least is for supply tanks, this one is %s", t.Kind)
	}
	if e.AtMost != nil && t.Kind != Waste {
		v.fault(at, "at_most is for waste tanks, this one is %s", t.Kind)
	}
	if e.RefillPrice != nil && e.AtLeast == nil {
		v.fault(at, "refill_price needs at_least")
	}
	if e.AtLeast != nil {
		v.number(at, "at_least", *e.AtLeast, 0, t.Capacity)
	}
	if e.AtMost != nil {
		v.number(at, "at_most", *e.AtMost, 0, t.Capacity)
	}
	if e.RefillPrice != nil {
		v.number(at, "refill_price", *e.RefillPrice, 0, unlimited())
	}
}

func (v *validator) stop(at place, s Stop) {
	v.number(at, "km", s.Km, 0, unlimited())
	v.number(at, "detour_km", s.DetourKm, 0, unlimited())
	v.number(at, "detour_min", s.DetourMin, 0, unlimited())
	v.number(at, "stop_min", s.StopMin, 0, unlimited())
	v.number(at, "fee", s.Fee, 0, unlimited())
	last := -unlimited()
	for i, w := range s.Open {
		at := at.in(".open", i, "")
		v.number(at, "start", w[0], -unlimited(), unlimited())
		v.number(at, "end", w[1], w[0], unlimited())
		if w[0] < last {
			v.fault(at, "starts at %v, before the window above it ends (%v): sort and merge windows", w[0], last)
		}
		last = w[1]
	}
	if len(s.Serves) > MostTanks {
		v.fault(at, "serves %d times, want one service a tank, %d at most", len(s.Serves), MostTanks)
		return
	}
	for i, x := range s.Serves {
		at := at.in(".serves", i, x.Tank)
		if slices.ContainsFunc(s.Serves[:i], func(y Service) bool { return y.Tank == x.Tank }) {
			v.fault(at, "serves a tank twice")
		}
		v.service(at, x, s)
	}
	if s.Night != nil {
		v.night(at.in(".night", -1, ""), *s.Night)
	}
}

func (v *validator) service(at place, x Service, of Stop) {
	kind, known := v.tanks[x.Tank]
	if !known {
		v.fault(at, "serves a tank that the problem does not have")
	}
	v.number(at, "price", x.Price, 0, unlimited())
	if kind == Waste && x.Price != 0 {
		v.fault(at, "price is %v, but emptying has only a fee", x.Price)
	}
	v.number(at, "min", x.Min, 0, unlimited())
	v.number(at, "fee", x.Fee, 0, unlimited())
	v.number(at, "spare", x.Spare, 0, unlimited())
	if of.Night == nil && x.GuestsOnly {
		v.fault(at, "guests_only where no night is offered")
	}
}

func (v *validator) night(at place, n Night) {
	v.number(at, "fee", n.Fee, 0, unlimited())
	if n.Nights < 1 || n.Nights > MostNights {
		v.fault(at, "nights is %d, want 1 to %d", n.Nights, MostNights)
	}
	for tank, use := range n.Use {
		if v.tanks[tank] == "" || math.IsNaN(use) || math.IsInf(use, 0) {
			v.use(at, n.Use)
			return
		}
	}
}

// use names the first fault, in order of the tanks' ids.
func (v *validator) use(at place, use map[string]float64) {
	for _, tank := range slices.Sorted(maps.Keys(use)) {
		if v.tanks[tank] == "" {
			v.fault(at, "uses tank %q, which the problem does not have", tank)
		}
		v.number(at, "use of "+tank, use[tank], -unlimited(), unlimited())
	}
}
