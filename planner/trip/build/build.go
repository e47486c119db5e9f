package build

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"ullage/geo"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Hours says when a place is open over a number of days: windows in minutes
// since 00:00 local of from's day, ascending. known is false if the place's
// hours cannot be told; then windows mean nothing.
type Hours func(p trip.Place, from time.Time, days int) (windows [][2]float64, known bool)

// Options of [Trip]. The zero value is valid.
type Options struct {
	Hours Hours      // nil: no opening hours are known
	Roads trip.Roads // nil: ways to places are estimates
}

// Built is a trip made into a problem, with what is needed to read a plan of
// the problem back. It is not changed after [Trip].
type Built struct {
	Trip       trip.Trip
	Problem    *planner.Problem
	Candidates []trip.Candidate // every place of use in the corridor, at each pass, ascending Km

	Axis   trip.Axis
	Use    trip.Usage
	Weight *trip.Weight // nil: not known
	Places []trip.Place
	Hours  Hours
	Roads  trip.Roads
	Course trip.Course // as the roads know it
	Start  time.Time
	Around []planner.Stop  // all of use, also those that the problem leaves out
	Calls  map[string]Call // by stop id
	Notes  []fact.Fact     // what was done about tanks
	Apart  fact.Fact       // the map data are of somewhere else
}

// A Call is what is known about one stop of the problem.
type Call struct {
	Place     *trip.Place
	Candidate int         // index in Built.Candidates
	Hours     bool        // opening hours are known
	Km        float64     // where the nights were asked for
	Entry     *trip.Entry // nil: not known
}

// Trip makes a trip and the places around it into a problem.
//
// A place is a candidate at each separate pass of the route within
// CorridorKm of it (not where another pass is much nearer), if it offers a service to one of the vehicle's tanks or a
// night that the wishes allow. Places that do neither are dropped; places
// that would, but are too low, closed, private or avoided, stay among the
// candidates with the reason and are no stop of the problem. Of several
// stops beside each other that are equal, the problem has the nearest only
// (see [thin]).
//
// The error names the first fault of the trip, or the required place that
// cannot be used. places is kept, not changed. O(places × log route +
// candidates²).
func Trip(t trip.Trip, places []trip.Place, opt Options) (*Built, error) {
	if err := t.Validate(); err != nil {
		return nil, err
	}
	line, err := geo.Measure(t.Route)
	if err != nil {
		return nil, fmt.Errorf("trip: route: %w", err)
	}
	start, _ := time.Parse(trip.DateLayout, t.Start)
	if t.Currency == "" {
		t.Currency = "EUR"
	}
	b := &Built{Trip: t, Places: places, Hours: opt.Hours, Roads: opt.Roads, Start: start, Calls: map[string]Call{}, Axis: trip.NewAxis(line.LengthM()/1000, nil)}
	b.Problem = problem(t, b.Axis.LengthKm)
	if err := b.course(); err != nil {
		return nil, err
	}
	if err := b.sail(); err != nil {
		return nil, err
	}
	if b.Use, err = trip.NewUsage(t, b.Problem.Drive.Pace, b.Axis); err != nil {
		return nil, err
	}
	b.Weight = weigh(t)
	b.tanks()

	corridor := geo.NewCorridor(line)
	b.Apart = b.elsewhere(corridor)
	var stops []planner.Stop
	for i := range places {
		passes := b.ashore(worthwhile(corridor.Passes(places[i].Point, t.CorridorKm*1000)), places[i].Point, line)
		if len(passes) == 0 {
			continue
		}
		o := b.offer(&places[i], passes[0].AlongM/1000, opt.Hours)
		if o.empty() {
			continue
		}
		for n, pass := range passes {
			stops = append(stops, b.stops(o, n, pass)...)
		}
	}
	if stops, err = b.byRoad(stops); err != nil {
		return nil, err
	}
	stops = b.afterSettingOff(stops)
	b.sort(stops)
	b.sites()
	b.spare()
	if err := b.require(); err != nil {
		return nil, err
	}
	b.Problem.Stops = thin(b.Around, b.Axis)
	return b, b.Problem.Validate()
}

// worthwhile drops passes that are much farther off than the nearest one:
// where a road winds up a valley, the same place is left and come back to
// from every bend. A place passed on the way out and back has two near passes
// and keeps both.
func worthwhile(passes []geo.Pass) []geo.Pass {
	nearest := math.Inf(1)
	for _, p := range passes {
		nearest = min(nearest, p.OffM)
	}
	return slices.DeleteFunc(passes, func(p geo.Pass) bool { return p.OffM > 2*nearest+1000 })
}

// problem is a problem without tanks and stops.
func problem(t trip.Trip, lengthKm float64) *planner.Problem {
	p := &planner.Problem{
		Format:       planner.ProblemFormat,
		LengthKm:     lengthKm,
		TimeCostPerH: t.ValuePerH,
		Backup:       t.Backup,
		Drive: planner.Drive{
			MaxKmPerDay:  t.Day.MaxKm,
			MaxMinPerDay: t.Day.MaxMin,
			DepartMin:    t.Day.DepartMin,
			Pace:         []planner.Pace{{ToKm: lengthKm, MinPerKm: 60 / min(t.Day.SpeedKmh, t.Vehicle.TopKmh())}},
		},
	}
	if t.Stays.MinNights > 0 || t.Stays.MaxNights > 0 {
		p.Nights = &planner.Range{Min: t.Stays.MinNights, Max: cmp.Or(t.Stays.MaxNights, anyNights)}
	}
	return p
}

// unseen is the share of a tank that no gauge in a vehicle shows (common
// practice, no source).
const unseen = 0.02

// anyNights stands for "any number" where the problem wants one.
const anyNights = 999

// Kinds of what is said of a tank as the trip begins.
const (
	belowReserve fact.Kind = "start.below_reserve"
	atReserve    fact.Kind = "start.at_reserve"
	gasStuck     fact.Kind = "start.gas_stuck"
)

// tanks fills in the problem's tanks. A tank that sets off below its reserve
// would refuse every plan; its reserve is halved down to what there is, and
// the trip carries a caution.
//
// On the road it may also give way by what a gauge does not show.
func (b *Built) tanks() {
	for _, k := range b.Trip.Vehicle.Tanks {
		room := b.room(k)
		level := min(b.Trip.LevelOf(k), room)
		reserve, headroom := min(max(k.Reserve, b.stuck(k)), room), level
		if k.Kind == planner.Waste {
			headroom = room - level
		}
		if headroom < reserve {
			reserve = headroom / 2
			b.Notes = append(b.Notes, fact.Of(belowReserve, fact.V{"tank": k.Called()}))
		} else if least := headroom - unseen*k.Capacity; b.Trip.DoneKm > 0 && least < reserve {
			// A plan may well arrive at the place that helps with nothing but the
			// reserve: going on from just before it must not fail by a spoonful.
			reserve = max(least, reserve/2)
			b.Notes = append(b.Notes, fact.Of(atReserve, fact.V{"tank": k.Called()}))
		}
		b.Problem.Tanks = append(b.Problem.Tanks, planner.Tank{
			ID: k.ID, Name: k.Name, Unit: k.Unit, Kind: k.Kind, Capacity: room, Reserve: reserve, Start: level, PerKm: b.Use.PerKm(k).High, End: k.End})
	}
}

// forcedNights is how many nights the daily limits make out of the route.
func (b *Built) forcedNights() int {
	d := b.Problem.Drive
	days := max(b.Problem.LengthKm/d.MaxKmPerDay, d.Minutes(0, b.Problem.LengthKm)/d.MaxMinPerDay)
	return max(0, int(math.Ceil(days-1e-9))-1)
}

// Days is for how many days opening hours are asked: all the days that the
// trip can last, as far as that is known.
func (b *Built) Days() int {
	nights := b.Trip.Stays.MaxNights
	if nights == 0 {
		nights = 2*max(b.forcedNights(), b.Trip.Stays.MinNights) + 7
	}
	return nights + 2
}

// sort brings stops and candidates into the order of the route.
func (b *Built) sort(stops []planner.Stop) {
	b.Around = make([]planner.Stop, len(stops))
	for to, from := range along(len(stops), func(i int) (float64, string) { return stops[i].Km, stops[i].ID }) {
		b.Around[to] = stops[from]
	}
	sorted, at := make([]trip.Candidate, len(b.Candidates)), make([]int, len(b.Candidates))
	for to, from := range along(len(b.Candidates), func(i int) (float64, string) { return b.Candidates[i].Km, b.Candidates[i].Stop }) {
		sorted[to], at[from] = b.Candidates[from], to
	}
	b.Candidates = sorted
	for id, c := range b.Calls {
		c.Candidate = at[c.Candidate]
		b.Calls[id] = c
	}
}

// along lists the numbers from 0 to n − 1 by km, then by id.
func along(n int, key func(i int) (km float64, id string)) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		km, id := key(i)
		other, otherID := key(j)
		return cmp.Or(cmp.Compare(km, other), cmp.Compare(id, otherID))
	})
	return order
}

// require marks the first pass of each required place.
func (b *Built) require() error {
	for _, id := range b.Trip.Require {
		i := slices.IndexFunc(b.Candidates, func(c trip.Candidate) bool { return c.Place == id && c.Excluded == nil })
		if i < 0 {
			return b.unusable(id)
		}
		for j := range b.Around {
			if b.Around[j].ID == b.Candidates[i].Stop {
				b.Around[j].Required = true
			}
		}
	}
	return nil
}

// Whole is the problem with every place of use, also those that it leaves out
// as no better: a closure may lead there.
func (b *Built) Whole() *planner.Problem {
	whole := *b.Problem
	whole.Stops = b.Around
	return &whole
}

// An Unusable error is about a required place that cannot be used.
type Unusable struct {
	Place    string
	WithinKm float64    // none of its services or nights is of use so near to the route
	Why      *fact.Fact // why it is left out; nil: not near enough
}

func (e *Unusable) Error() string {
	why := fmt.Sprintf("none of its services or nights is of use within %v km of the route", e.WithinKm)
	if e.Why != nil {
		why = "it is left out (" + string(e.Why.Kind) + ")"
	}
	return fmt.Sprintf("trip: required place %s cannot be used: %s: remove it from the required places or change the trip", e.Place, why)
}

func (b *Built) unusable(place string) error {
	e := &Unusable{Place: place, WithinKm: b.Trip.CorridorKm}
	if i := slices.IndexFunc(b.Candidates, func(c trip.Candidate) bool { return c.Place == place }); i >= 0 {
		e.Why = b.Candidates[i].Excluded
	}
	return e
}
