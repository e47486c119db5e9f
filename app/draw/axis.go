package draw

import (
	"math"
	"slices"
	"sort"

	"ullage/planner/trip"
)

// An Axis lays a trip out from left to right: kilometres take width while the
// vehicle drives, and each night takes a slot of its own, because a night
// uses water and current without a kilometre. A stop by day takes no width:
// what it changes is a jump. The zero value puts everything at 0.
type Axis struct{ knots []Moment }

// A Moment is one point of the trip, in the three ways to name it.
type Moment struct{ X, Km, Min float64 }

// A night takes at most nightShare of the width, all nights together at most
// nightsShare: the rest is left for the road.
const (
	nightShare  = 0.045
	nightsShare = 0.3
)

// NewAxis lays out an itinerary. One without days (a refused plan) is laid
// out by kilometres alone. O(n log n) in the points of the strips.
func NewAxis(it trip.Itinerary) Axis {
	knots := moments(it)
	if len(knots) < 2 {
		return Axis{[]Moment{{}, {X: 1, Km: it.LengthKm}}}
	}
	nights, count := nightsOf(it.Days)
	road := knots[len(knots)-1].Km - knots[0].Km
	slot := 1.0 // all nights in one place: the width is theirs
	if count > 0 && road > 0 {
		share := math.Min(nightShare*float64(count), nightsShare)
		slot = share * road / (1 - share) / float64(count)
	}
	for i := 1; i < len(knots); i++ {
		w := knots[i].Km - knots[i-1].Km
		for _, n := range nights {
			over := math.Min(knots[i].Min, n.to) - math.Max(knots[i-1].Min, n.from)
			if over > 0 {
				w += slot * float64(n.count) * over / (n.to - n.from)
			}
		}
		knots[i].X = knots[i-1].X + w
	}
	if whole := knots[len(knots)-1].X; whole > 0 {
		for i := range knots {
			knots[i].X /= whole
		}
	}
	return Axis{knots}
}

// moments collects every known (km, min) of the itinerary in order of time;
// kilometres never go back.
func moments(it trip.Itinerary) []Moment {
	var ms []Moment
	add := func(km, min float64) {
		if !math.IsNaN(km+min) && !math.IsInf(km+min, 0) {
			ms = append(ms, Moment{Km: km, Min: min})
		}
	}
	for _, d := range it.Days {
		add(d.FromKm, d.StartMin)
		for _, c := range d.Calls {
			add(c.Km, c.ArriveMin)
			add(c.Km, c.LeaveMin)
		}
		add(d.ToKm, d.EndMin)
	}
	if len(it.Days) > 0 {
		for _, s := range it.Strips {
			for _, p := range s.Points {
				add(p.Km, p.Min)
			}
		}
	}
	sort.Slice(ms, func(i, j int) bool { // one sort for all types: less program
		a, b := ms[i], ms[j]
		return a.Min < b.Min || a.Min == b.Min && a.Km < b.Km
	})
	ms = slices.Compact(ms)
	for i := 1; i < len(ms); i++ {
		ms[i].Km = math.Max(ms[i].Km, ms[i-1].Km)
	}
	return ms
}

// A rest is the time between two days, and how many nights it holds.
type rest struct {
	from, to float64
	count    int
}

func nightsOf(days []trip.Day) (rests []rest, count int) {
	for i := 1; i < len(days); i++ {
		r := rest{days[i-1].EndMin, days[i].StartMin, 0}
		r.count = int(math.Floor(r.to/1440) - math.Floor(r.from/1440))
		if r.to > r.from && r.count > 0 {
			rests, count = append(rests, r), count+r.count
		}
	}
	return rests, count
}

// AtMin returns the moment at a time. Times before the start and after the
// end give the first and the last moment.
func (a Axis) AtMin(min float64) Moment {
	return a.at(min, func(m Moment) float64 { return m.Min })
}

// AtX returns the moment at a share of the width, from 0 to 1. Where a stop
// makes several moments of one X it is the last of them.
func (a Axis) AtX(x float64) Moment {
	return a.at(x, func(m Moment) float64 { return m.X })
}

// AtKm returns the first moment at a position along the route.
func (a Axis) AtKm(km float64) Moment {
	i := 0
	for i < len(a.knots)-1 && a.knots[i].Km < km {
		i++
	}
	if i == 0 || a.knots[i].Km <= a.knots[i-1].Km {
		return a.knot(i)
	}
	p, q := a.knots[i-1], a.knots[i]
	return between(p, q, (math.Min(km, q.Km)-p.Km)/(q.Km-p.Km))
}

func (a Axis) knot(i int) Moment {
	if len(a.knots) == 0 {
		return Moment{}
	}
	return a.knots[i]
}

// at finds the last moment whose measure is not above v.
func (a Axis) at(v float64, measure func(Moment) float64) Moment {
	n := len(a.knots)
	if n == 0 {
		return Moment{}
	}
	i := n
	for i > 0 && !(measure(a.knots[i-1]) <= v) {
		i--
	}
	if i == 0 || i == n {
		return a.knots[max(i-1, 0)]
	}
	p, q := a.knots[i-1], a.knots[i]
	return between(p, q, (v-measure(p))/(measure(q)-measure(p)))
}

func between(p, q Moment, t float64) Moment {
	return Moment{p.X + t*(q.X-p.X), p.Km + t*(q.Km-p.Km), p.Min + t*(q.Min-p.Min)}
}

// End returns the last moment of the trip.
func (a Axis) End() Moment {
	if len(a.knots) == 0 {
		return Moment{}
	}
	return a.knots[len(a.knots)-1]
}

// Start returns the first moment of the trip.
func (a Axis) Start() Moment { return a.knot(0) }
