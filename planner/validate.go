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
	v.lists(p.RequireOne)
	v.mass(p)
	return v.err
}

// MostLists is how many lists a problem may have of which one stop is required.
const MostLists = 32

func (v *validator) lists(lists [][]string) {
	if len(lists) > MostLists {
		v.fault(whole("require_one"), "has %d lists, want %d at most", len(lists), MostLists)
	}
	for i, list := range lists {
		if len(list) == 0 {
			v.fault(entry("require_one", i, ""), "is empty: name the stops of which one is required")
		}
	}
}

func (v *validator) mass(p *Problem) {
	if p.Mass == nil {
		return
	}
	at := whole("mass")
	v.number(at, "most", p.Mass.Most, -unlimited(), unlimited())
	for _, id := range slices.Sorted(maps.Keys(p.Mass.Per)) {
		if v.tanks[id] == "" {
			v.fault(at, "weighs tank %q, which the problem does not have", id)
		}
		if v.number(at, "per "+id, p.Mass.Per[id], 0, unlimited()); !(p.Mass.Per[id] > 0) {
			v.fault(at, "per %s is 0, want more: leave tanks out that do not count", id)
		}
	}
	supply := p.Mass.Supply(p.Tanks)
	for _, t := range p.Tanks {
		if p.Mass.Per[t.ID] > 0 && t.Kind == Supply && (t.ID != supply || t.End != nil && t.End.RefillPrice != nil) {
			v.fault(at, "weighs tank %q: it may weigh one supply tank, and none with a price", t.ID)
		}
	}
	for i, s := range p.Stops {
		for j, x := range s.Serves {
			if x.Price > 0 && p.Mass.Per[x.Tank] > 0 {
				v.fault(entry("stops", i, s.ID).in(".serves", j, x.Tank), "price is %v, want 0 where the mass of the tank is limited: give a fee", x.Price)
			}
		}
	}
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
	v.number(at, "move_km", d.MoveKm, 0, unlimited())
	if d.EndByMin != 0 {
		v.number(at, "end_by_min", d.EndByMin, d.DepartMin, 1440)
	}
	for _, day := range d.RestDays {
		if day < 1 {
			v.fault(at, "rest_days has day %d, want 1 or more: the trip begins on day 0", day)
		}
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
	v.number(at, "min", n.Min, 0, unlimited())
	if in := n.CheckIn; in != nil {
		v.number(at, "check_in start", in[0], 0, 1440)
		v.number(at, "check_in end", in[1], in[0], 1440)
	}
	if len(n.ByNight) > 0 {
		v.byNight(at, n)
	}
}

// byNight wants a use for each night, all of one sign, that add up.
func (v *validator) byNight(at place, n Night) {
	for _, tank := range slices.Sorted(maps.Keys(n.ByNight)) {
		by := n.ByNight[tank]
		if v.tanks[tank] == "" {
			v.fault(at, "uses tank %q by night, which the problem does not have", tank)
		}
		if len(by) != n.Nights {
			v.fault(at, "has %d uses of %s by night, want %d", len(by), tank, n.Nights)
			return
		}
		sum := 0.0
		for _, use := range by {
			v.number(at, "use of "+tank+" by night", use, -unlimited(), unlimited())
			if sum*use < 0 {
				v.fault(at, "uses %s by night with both signs: give nights of one sign", tank)
			}
			sum += use
		}
		if !(math.Abs(sum-n.Use[tank]) <= Tolerance*float64(n.Nights)+1e-9*math.Abs(sum)) {
			v.fault(at, "uses %v of %s by night in all, and %v in use: want the same", sum, tank, n.Use[tank])
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
