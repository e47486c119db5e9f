package job

import (
	"bytes"
	"context"
	"fmt"
	"sync"

	osmroads "ullage/data/osm/roads"
	"ullage/geo/road/net"
	"ullage/planner/byroad"
	"ullage/planner/trip"
)

// What is too much for one page: bytes of files kept for their roads, and
// points of roads. A network takes about 0.6 kB a junction while it is built,
// and a browser gives a page at most 4 GB.
const (
	mostFileBytes  = 400 << 20
	mostRoadPoints = 12 << 20
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

// keep holds a file of map data for its roads.
func (h *Handler) keep(o Open) {
	if !o.Add {
		h.files = nil
		h.roads.set(nil)
	}
	h.files = append(h.files, o)
}

// readRoads reads the roads of files, and has plans follow them from then on.
func (h *Handler) readRoads(ctx context.Context, files []Open, progress func(done, total int64)) (RoadsRead, error) {
	began := h.now()
	var total, before int64
	for _, f := range files {
		total += int64(len(f.Data))
	}
	if total > mostFileBytes {
		return RoadsRead{}, fmt.Errorf("the map data are too large for this page to read their roads: ways to places stay estimates; the command line can read them")
	}
	var inputs []net.Input
	points := 0
	for _, f := range files {
		in, err := osmroads.Read(ctx, f.Name, bytes.NewReader(f.Data), osmroads.Options{
			Progress: every(1<<18, func(done, _ int64) { progress(before+done, total) })})
		if err != nil {
			return RoadsRead{}, err
		}
		before += int64(len(f.Data))
		if points += len(in.Nodes); points > mostRoadPoints {
			return RoadsRead{}, fmt.Errorf("too many roads for this page: ways to places stay estimates; the command line can read them")
		}
		inputs = append(inputs, in)
	}
	out := RoadsRead{}
	if all := net.Join(inputs...); len(all.Ways) > 0 {
		network, err := net.Build(ctx, all)
		if err != nil {
			return RoadsRead{}, err
		}
		g, err := byroad.New(ctx, network)
		if err != nil {
			return RoadsRead{}, err
		}
		if err := ctx.Err(); err != nil { // other places are open by now
			return RoadsRead{}, err
		}
		h.roads.set(g)
		out = RoadsRead{Roads: network.Edges(), Bytes: network.Bytes(), Notes: network.Notes()}
	}
	out.TookMS = int(h.now().Sub(began).Milliseconds())
	return out, nil
}
