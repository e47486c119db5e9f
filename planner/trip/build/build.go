package build

import (
	"cmp"
	"slices"
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Built is a trip made into a problem, with what is needed to read a plan of
// the problem back. It is not changed after [Trip].
type Built struct {
	*Course
	Tanks
	Stops
	Problem *planner.Problem
	Places  []trip.Place
	Apart   fact.Fact // the map data are of somewhere else; nothing: they are not
	Missing fact.Fact // places to avoid that they do not have; nothing: none
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
// The error names the first fault of the trip, the required place that
// cannot be used, or that there are more stops than can be weighed ([planner.TooMany]). places is kept, not changed. O(places × log route +
// candidates²).
func Trip(t trip.Trip, places []trip.Place, opt Options) (*Built, error) {
	if err := t.Validate(); err != nil {
		return nil, err
	}
	course, err := setOff(t, opt)
	if err != nil {
		return nil, err
	}
	tanks := course.tanks()
	missing, err := course.known(places)
	if err != nil {
		return nil, err
	}
	near, apart := course.near(places)
	stops, err := course.stops(course.offers(near), tanks)
	if err != nil {
		return nil, err
	}
	b := &Built{Course: course, Tanks: tanks, Stops: stops, Places: places, Apart: apart, Missing: missing, Problem: course.problem(tanks, stops)}
	return b, b.Problem.Validate()
}

// stops is the fifth stage: what is offered at each pass, with the way there, in
// the order of the route.
func (c *Course) stops(offers []offer, tanks Tanks) (Stops, error) {
	g := &gathering{c, Stops{Calls: make(map[string]Call, len(offers))}}
	if err := g.tooMany(offers); err != nil {
		return Stops{}, err
	}
	for _, o := range offers {
		for n, pass := range o.passes {
			g.add(o, n, pass)
		}
	}
	if err := g.byRoad(); err != nil {
		return Stops{}, err
	}
	g.afterSettingOff()
	g.sort()
	g.sites()
	g.wishes()
	g.spare(tanks.List)
	return g.Stops, g.require()
}

// anyNights stands for "any number" where the problem wants one.
const anyNights = 999

// problem is the last stage.
func (c *Course) problem(tanks Tanks, stops Stops) *planner.Problem {
	p := &planner.Problem{Format: planner.ProblemFormat, LengthKm: c.lengthKm(), TimeCostPerH: c.Trip.ValuePerH, Backup: c.Trip.Backup,
		Drive: c.Drive, Tanks: tanks.List, Stops: thin(stops.Around, stops.Lists, c.Axis), RequireOne: stops.Lists, Mass: tanks.Mass}
	c.limits(p)
	if s := c.Trip.Stays; s.MinNights > 0 || s.MaxNights > 0 {
		p.Nights = &planner.Range{Min: s.MinNights, Max: cmp.Or(s.MaxNights, anyNights)}
	}
	return p
}

// Whole is the problem with every place of use, also those that it leaves out
// as no better: a closure may lead there.
func (b *Built) Whole() *planner.Problem {
	whole := *b.Problem
	whole.Stops = b.Around
	return &whole
}

// Eased is what was built, with more given up.
func (b *Built) Eased(e Ease) *Built {
	course, eased := *b.Course, *b
	course.Ease = e
	eased.Course, eased.Problem = &course, b.Problem.Clone()
	course.limits(eased.Problem)
	if e.ShortMoves {
		eased.onePass()
	}
	return &eased
}

// onePass offers the nights of a site at one pass of the route only, of those that lie
// near each other: where moves may be short nobody shall come back to where they were.
func (b *Built) onePass() {
	first := map[string]float64{} // km of the pass that is kept
	p := b.Problem
	for i := range p.Stops {
		s := &p.Stops[i]
		if s.Night == nil {
			continue
		}
		km, known := first[s.Site]
		if !known || s.Km-km >= moveKm {
			first[s.Site] = s.Km
			continue
		}
		if s.Km-km > anotherKm/2.0 && !s.Required {
			id := s.ID
			s.Night = nil
			s.Serves = slices.DeleteFunc(slices.Clone(s.Serves), func(x planner.Service) bool { return x.GuestsOnly })
			p.Unlisted(func(listed string) bool { return listed == id })
		}
	}
}
