package onward

import (
	"cmp"
	"math"
	"slices"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// A Lesson is what a gauge changed.
type Lesson struct {
	Tank   string      `json:"tank"`
	Level  float64     `json:"level"`  // planned with from here
	Factor float64     `json:"factor"` // of the usual use; 0: not learnt for this tank
	Says   []fact.Fact `json:"says"`
}

// A watched tank is one between its last service and now.
type watched struct {
	tank  trip.Tank
	trip  trip.Trip
	use   trip.Usage
	strip trip.Strip

	from, expected trip.Level // after the last service, and now, as the plan has it
	nights         int        // since then
}

// look finds both moments in the plan, without what did not come about of it.
// A service that fills or empties the tank wholly makes up for one that was
// missed before.
func (g *watched) look(it trip.Itinerary, now Now) {
	points := slices.DeleteFunc(slices.Clone(g.strip.Points), func(l trip.Level) bool { return l.Stay })
	g.strip.Points = points
	g.from = points[0]
	undone, over, next, ahead := trip.Level{}, 0.0, 0, len(points) // ahead begins with leaving the first call that is not behind
	for _, d := range it.Days {
		for _, c := range d.Calls {
			// Leaving tells them apart: one can arrive where the trip begins, or a ferry lands.
			for next+1 < len(points) && !(points[next+1].Km == c.Km && points[next+1].Min >= c.LeaveMin-1e-6) {
				next++
			}
			if next+1 >= len(points) {
				continue
			}
			before, after := points[next], points[next+1] // arriving and leaving
			next += 2
			if !now.behind(c) {
				ahead = min(ahead, next-1)
				continue
			}
			over = c.LeaveMin
			g.nights += now.nights(c)
			undone = plus(undone, now.undone(c, g.tank, before, after), 1)
			if now.called(c) && slices.ContainsFunc(c.Tasks, func(x trip.Task) bool { return x.Tank == g.tank.ID }) {
				if g.brimful(after.L) {
					undone = trip.Level{}
				}
				g.nights, g.from = 0, within(plus(after, undone, -1), g.tank.Capacity)
			}
		}
	}
	g.expected = within(plus(g.onTheWay(points[:ahead], now, over), undone, -1), g.tank.Capacity)
}

// onTheWay is the level of the plan here and now: of its last moment that is
// behind, and the way from it to here. over is when the last call behind was left.
func (g *watched) onTheWay(behind []trip.Level, now Now, over float64) trip.Level {
	i := 0
	for j, p := range behind {
		if p.Km < now.here-hereKm || p.Km <= now.here+hereKm && p.Min <= max(now.min, over+1e-6) {
			i = j
		}
	}
	points := g.strip.Points
	if i+1 == len(points) || points[i+1].Km <= points[i].Km || now.here <= points[i].Km {
		return points[i]
	}
	a, b := points[i], points[i+1]
	f := math.Min((now.here-a.Km)/(b.Km-a.Km), 1)
	mix := func(x, y float64) float64 { return x + f*(y-x) }
	return trip.Level{Km: now.here, L: mix(a.L, b.L), Low: mix(a.Low, b.Low), Likely: mix(a.Likely, b.Likely), High: mix(a.High, b.High)}
}

// brimful: there is as much headroom as there can be.
func (g *watched) brimful(level float64) bool {
	if g.tank.Kind == planner.Waste {
		return level <= planner.Tolerance
	}
	return level >= g.tank.Capacity-planner.Tolerance
}

// Kinds of what a gauge says.
const (
	levelNow       fact.Kind = "onward.level"
	teachesNothing fact.Kind = "onward.teaches_nothing"
)

// learn takes what a gauge shows. factor is nil where nothing is to be learnt.
func (g watched) learn(s Shown) (lesson Lesson, factor *life.Factor, err error) {
	k := g.tank
	gauge := life.Gauge{Kind: s.Kind, Capacity: k.Capacity, LampAt: s.LampAt, Waste: k.Kind == planner.Waste}
	if gauge.LampAt == 0 {
		gauge.LampAt = k.Reserve
		if gauge.Waste {
			gauge.LampAt = k.Capacity - k.Reserve
		}
	}
	reading, err := gauge.Read(s.Value)
	if err != nil {
		return Lesson{}, nil, err
	}
	mean, level := g.level(reading)
	lesson = Lesson{Tank: k.ID, Level: level}
	lesson.Says = []fact.Fact{fact.Of(levelNow, fact.V{"tank": k.Called(), "level": fact.Quantity(level, k.Unit, 0),
		"likely": fact.Quantity(mean, k.Unit, 0), "planned": fact.Quantity(g.expected.Likely, k.Unit, 0)})}
	use, teaches := g.used()
	if !teaches {
		lesson.Says = append(lesson.Says, fact.Of(teachesNothing, nil))
		return lesson, nil, nil
	}
	old := life.NewFactor(use)
	for _, f := range g.trip.Learned {
		if f.Tank == k.ID {
			old = f
		}
	}
	z := quantile(g.trip.Confident())
	seen, err := old.Learn(life.Observation{
		From: life.Reading{Level: g.from.Likely, SD: (g.from.High - g.from.Low) / 2 / z, Low: g.from.Low, High: g.from.High}, To: reading,
		Waste: gauge.Waste, Unit: k.Unit, Likely: use.Likely, Day: use.Spread().Day, N: float64(g.nights) + g.driven()/100})
	if err != nil {
		return Lesson{}, nil, err
	}
	lesson.Says = append(lesson.Says, seen.Says)
	if seen.After.Readings == old.Readings {
		return lesson, nil, nil
	}
	lesson.Factor = seen.After.Factor
	return lesson, &seen.After, nil
}

// driven is the kilometres driven since the last service, ways off the route left out.
func (g watched) driven() float64 {
	return math.Max(g.use.Sea.Driven(g.expected.Km)-g.use.Sea.Driven(g.from.Km), 0)
}

// used is what the model says was used since the last service, before
// anything was learnt. teaches is false where the vehicle does not live, or
// where something else fills the tank on the way.
func (g watched) used() (use life.Use, teaches bool) {
	if !g.use.Lives {
		return life.Use{}, false
	}
	km := g.driven()
	middle := g.trip.Route[len(g.trip.Route)/2]
	night := g.use.Stay(nil, life.Where{Lat: middle.Lat(), Lon: middle.Lon()}, g.expected.Km)
	road := g.use.Road.Of(g.tank.ID).Times(km / 100)
	parts := append(slices.Clone(road.Parts), night.Of(g.tank.ID).Times(float64(g.nights)).Parts...)
	for _, p := range parts {
		if p.Amount < 0 {
			return life.Use{}, false
		}
	}
	use = life.NewUse(g.tank.ID, parts...)
	// The plan knows the places of the nights: its sum counts, shared as above.
	planned := math.Abs(g.from.Likely - g.expected.Likely)
	for _, f := range g.trip.Learned {
		if f.Tank == g.tank.ID {
			planned /= f.Factor
		}
	}
	if use.Likely > 0 {
		use = use.Times(planned / use.Likely)
	}
	return use, true
}

// level joins what the plan expects and what the gauge shows to a likely level
// and one to plan with. A gauge that contradicts the plan is believed.
func (g watched) level(r life.Reading) (mean, level float64) {
	z := quantile(g.trip.Confident())
	capacity := g.tank.Capacity
	prior := math.Max((g.expected.High-g.expected.Low)/2/math.Max(z, 0.5), 0.05*capacity)
	mean, sd := g.expected.Likely, prior
	if math.IsInf(r.SD, 1) {
		mean = math.Min(math.Max(mean, r.Low), r.High)
	} else {
		w := prior * prior / (prior*prior + r.SD*r.SD)
		sd = prior * math.Sqrt(1-w)
		if math.Abs(r.Level-mean) > 3*math.Hypot(prior, r.SD) {
			w, sd = 1, r.SD
		}
		mean += w * (r.Level - mean)
	}
	careful := mean - z*sd
	if g.tank.Kind == planner.Waste {
		careful = mean + z*sd
	}
	return mean, math.Min(math.Max(careful, r.Low), r.High)
}

// quantile of the standard normal distribution; never less than a hair.
func quantile(confidence float64) float64 {
	return cmp.Or(math.Sqrt2*math.Erfinv(2*confidence-1), 1e-3)
}

// paceOf is the average of the plan's driving, on the planner's axis.
func paceOf(it trip.Itinerary, sea trip.Axis) []planner.Pace {
	var km, min float64
	for _, d := range it.Days {
		km, min = km+d.DriveKm, min+d.DriveMin
	}
	return []planner.Pace{{ToKm: sea.Driven(it.LengthKm), MinPerKm: min / max(km, trip.Metre)}}
}

// seaOf is the axis of the plan's route with its ferries.
func seaOf(it trip.Itinerary) trip.Axis {
	var ferries []trip.Crossing
	for _, d := range it.Days {
		ferries = append(ferries, d.Ferries...)
	}
	return trip.NewAxis(it.LengthKm, ferries)
}
