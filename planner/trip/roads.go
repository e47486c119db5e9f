package trip

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/planner"
)

// Roads say what a road network knows of a trip: how fast its route is driven,
// and what it takes to call at places beside it. A nil Roads knows nothing:
// detours are then straight distance × circuity, and the speed is the trip's.
type Roads interface {
	// Course puts the route of a trip on roads. lengthKm is its length as
	// drawn: all positions are along that.
	Course(t Trip, lengthKm float64) (Course, error)
	// Ways lists the ways to places from the course asked for last, any
	// number for each; a place without one is not known to the roads.
	Ways(places []*Place) ([]Way, error)
}

// A Course is a route on roads.
type Course struct {
	Pace     []planner.Pace // by section, ascending; none: the trip's speed
	Off      [][2]float64   // from km to km: off the roads, kept as drawn, ascending
	Ferries  []Crossing     // on ferries that take vehicles, ascending
	Cautions []string       // what to mind on the way
}

// entryM is how far from a place its road must be to be told apart: own choice.
const entryM = 30

// A Way is what it takes to call at a place by road, or why that is not
// possible.
type Way struct {
	Place    int     // index among those asked for
	LeaveKm  float64 // where the route is left
	RejoinKm float64 // ≥ LeaveKm
	ThereKm  float64 // from there to the place
	Km, Min  float64 // more than driving on, there and back together
	Closed   string  // what keeps this vehicle from getting there, and where; else ""
	Entry    Entry
}

// An Entry is where a vehicle leaves the roads for a place.
type Entry struct {
	Point orb.Point `json:"point"`
	Road  string    `json:"road,omitempty"` // its number or name; "" if it has none
}

// km is where along the route the place counts as lying: with half of the
// extra way before it, the place is reached after as many kilometres as on the
// road, however much of the route the way leaves out.
func (w Way) km() float64 { return w.LeaveKm + w.ThereKm - w.Km/2 }

// wayKm is km on the route and on land: a way that is left at a pier counts there.
func (b *Built) wayKm(w Way) float64 {
	km := min(max(w.km(), 0), b.axis.lengthKm)
	if f, sea := b.axis.atSea(km); sea && w.LeaveKm < (f.FromKm+f.ToKm)/2 {
		return f.FromKm
	} else if sea {
		return f.ToKm
	}
	return km
}

// course asks for the route on roads and takes its speeds.
func (b *Built) course(r Roads) (Course, error) {
	if r == nil {
		return Course{}, nil
	}
	c, err := r.Course(b.Trip, b.axis.lengthKm)
	if err != nil {
		return Course{}, fmt.Errorf("trip: the route on roads: %w", err)
	}
	if n := len(c.Pace); n > 0 {
		c.Pace[n-1].ToKm = b.axis.lengthKm // a hair beside it is rounding
		b.Problem.Drive.Pace = c.Pace
	}
	b.off = c.Off
	return c, nil
}

// byRoad puts true ways in place of estimates. A pass from where no road
// leads to the place is dropped, unless the route is off the roads there. A
// place that the vehicle cannot get to stays a candidate with the reason.
func (b *Built) byRoad(r Roads, stops []planner.Stop) ([]planner.Stop, error) {
	if r == nil {
		return stops, nil
	}
	var asked []*Place
	number, passes := map[string]int{}, map[string][]int{} // place → index in asked; its candidates
	for _, s := range stops {
		known := b.calls[s.ID]
		id := known.place.ID
		if _, seen := number[id]; !seen {
			number[id] = len(asked)
			asked = append(asked, known.place)
		}
		if p := passes[id]; len(p) == 0 || p[len(p)-1] != known.candidate {
			passes[id] = append(p, known.candidate)
		}
	}
	ways, err := r.Ways(asked)
	if err != nil {
		return nil, fmt.Errorf("trip: ways to places: %w", err)
	}
	of := make([][]Way, len(asked))
	for _, w := range ways {
		of[w.Place] = append(of[w.Place], w)
	}
	best, dropped := map[int]Way{}, map[int]bool{} // by candidate
	for id, n := range number {
		b.choose(of[n], passes[id], best, dropped)
	}
	return b.rewrite(stops, best, dropped), nil
}

// choose gives each pass the shortest of the ways that are nearest to it.
func (b *Built) choose(ways []Way, passes []int, best map[int]Way, dropped map[int]bool) {
	if len(ways) == 0 {
		return // the roads do not know the place: estimates stay
	}
	for _, w := range ways {
		if w.Closed != "" {
			for _, c := range passes {
				if !b.isOff(b.Candidates[c].Km) {
					b.Candidates[c].Excluded = w.Closed
				}
			}
			return
		}
	}
	for _, w := range ways {
		at, off := -1, math.Inf(1)
		for _, c := range passes {
			if d := math.Abs(b.Candidates[c].Km - w.km()); d < off {
				at, off = c, d
			}
		}
		if old, ok := best[at]; !ok || w.Min < old.Min || w.Min == old.Min && w.Km < old.Km {
			best[at] = w
		}
	}
	for _, c := range passes {
		if _, ok := best[c]; !ok && !b.isOff(b.Candidates[c].Km) {
			dropped[c] = true
		}
	}
}

// isOff tells whether the route is off the roads at a position.
func (b *Built) isOff(km float64) bool {
	for _, o := range b.off {
		if km >= o[0] && km <= o[1] {
			return true
		}
	}
	return false
}

// rewrite takes ways into stops and candidates and leaves out what was
// dropped or cannot be reached.
func (b *Built) rewrite(stops []planner.Stop, best map[int]Way, dropped map[int]bool) []planner.Stop {
	at := make([]int, len(b.Candidates))
	var kept []Candidate
	for i, c := range b.Candidates {
		if w, ok := best[i]; ok {
			c.Km, c.ByRoad = b.wayKm(w), true
		}
		at[i] = len(kept)
		if !dropped[i] {
			kept = append(kept, c)
		}
	}
	var out []planner.Stop
	for _, s := range stops {
		known := b.calls[s.ID]
		c := known.candidate
		if dropped[c] || b.Candidates[c].Excluded != "" {
			delete(b.calls, s.ID)
			continue
		}
		if w, ok := best[c]; ok {
			s.Km, s.DetourKm, s.DetourMin = b.axis.driven(b.wayKm(w)), max(w.Km, 0), max(w.Min, 0)
			known.entry = &w.Entry
		}
		known.candidate = at[c]
		b.calls[s.ID] = known
		out = append(out, s)
	}
	b.Candidates = kept
	return out
}

// estimates says how many of a plan's calls rest on an estimate of the way.
func estimates(days []Day) (estimated, calls int) {
	for _, d := range days {
		for _, c := range d.Calls {
			calls++
			if !c.ByRoad {
				estimated++
			}
		}
	}
	return estimated, calls
}

// wayCaution says what the distances off the route are: of a plan's days, or,
// where there is no plan, of the places.
func wayCaution(days []Day, places []Candidate) string {
	estimated, calls := estimates(days)
	for _, p := range places {
		if days == nil && p.Excluded == "" {
			if calls++; !p.ByRoad {
				estimated++
			}
		}
	}
	switch {
	case calls > 0 && estimated == 0:
		return "Ways off the route follow the roads of the map data that are open to a vehicle of this height, width, length and mass. Barriers, new signs and works are not in the data: your eyes and the sign on the road decide."
	case estimated < calls:
		return "Ways off the route follow the roads of the map data; those that say estimate are straight line × circuity, since no road is known there. Check each approach with a road sign and your eyes before you turn in."
	}
	return "Distances off the route are estimates (straight line × circuity), not roads: check each approach with a map, a road sign and your eyes before you turn in."
}
