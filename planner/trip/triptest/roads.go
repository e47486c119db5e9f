package triptest

import (
	"ullage/planner"
	"ullage/planner/trip"
)

// Boats are roads that know ferries only.
type Boats struct {
	Ferries []trip.Crossing
	Off     [][2]float64
}

func (c Boats) Course(trip.Trip, float64) (trip.Course, error) {
	return trip.Course{Ferries: c.Ferries, Off: c.Off}, nil
}

func (Boats) Ways([]*trip.Place) ([]trip.Way, error) { return nil, nil }

// Paced are roads that know a pace only.
type Paced []planner.Pace

func (p Paced) Course(trip.Trip, float64) (trip.Course, error) { return trip.Course{Pace: p}, nil }

func (Paced) Ways([]*trip.Place) ([]trip.Way, error) { return nil, nil }

// Signposts are roads that say what a test wants.
type Signposts struct {
	On  trip.Course
	By  map[string][]trip.Way // by place, their numbers are filled in
	Err error
}

func (s Signposts) Course(trip.Trip, float64) (trip.Course, error) { return s.On, s.Err }

func (s Signposts) Ways(places []*trip.Place) ([]trip.Way, error) {
	var out []trip.Way
	for i, p := range places {
		for _, w := range s.By[p.ID] {
			w.Place = i
			out = append(out, w)
		}
	}
	return out, nil
}
