package job

import (
	"context"
	"fmt"
	"sync"

	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// roads are what the handler knows of roads. Plans and drawings ask at once,
// so each question is asked alone.
type roads struct {
	mu    sync.Mutex
	guide *byroad.Guide // nil: none
}

func (r *roads) set(g *byroad.Guide) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.guide = g
}

// trip returns what a plan asks of the roads; nil if there are none.
func (r *roads) trip(ctx context.Context) trip.Roads {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.guide == nil {
		return nil
	}
	return &oneByOne{&r.mu, r.guide.Trip(ctx)}
}

// oneByOne lets nobody else ask meanwhile.
type oneByOne struct {
	mu *sync.Mutex
	trip.Roads
}

func (o *oneByOne) Course(t trip.Trip, lengthKm float64) (trip.Course, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.Roads.Course(t, lengthKm)
}

func (o *oneByOne) Ways(places []*trip.Place) ([]trip.Way, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.Roads.Ways(places)
}

// follow answers a drawing.
func (r *roads) follow(ctx context.Context, f Follow) (Followed, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.guide == nil {
		return Followed{}, fmt.Errorf("the roads are not read yet")
	}
	if f.Track {
		legs, err := r.guide.Match(ctx, f.Vehicle, f.Points)
		return Followed{legs}, err
	}
	if f.Others && len(f.Points) == 2 {
		legs, err := r.guide.Others(ctx, f.Vehicle, [2]point{f.Points[0], f.Points[1]}, f.WithinM)
		return Followed{legs}, err
	}
	pairs := make([][2]point, len(f.Points)/2)
	for i := range pairs {
		pairs[i] = [2]point{f.Points[2*i], f.Points[2*i+1]}
	}
	legs, err := r.guide.Follow(ctx, f.Vehicle, pairs, f.WithinM)
	return Followed{legs}, err
}
