package job

import (
	"bytes"
	"context"
	"fmt"

	osmroads "ullage/data/osm/roads"

	"ullage/geo/road/net"
	"ullage/planner/byroad"
)

// What is too much for one page: bytes of files kept for their roads, and
// points of roads. A network takes about 0.6 kB a junction while it is built,
// and a browser gives a page at most 4 GB.
const (
	mostFileBytes  = 400 << 20
	mostRoadPoints = 12 << 20
	mostRoadBytes  = 2 << 30 // of memory, while they are read
)

// handleRoads is the part of Handle that reads roads of files.
func (h *Handler) handleRoads(ctx context.Context, id int, files []Open, emit func(Response)) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	work := paced(ctx, stop)
	work.busy = h.first
	read, err := h.readRoads(work, files, func(done, total int64) {
		emit(Response{ID: id, Progress: &Progress{done, total}})
	})
	if err != nil {
		emit(Response{ID: id, Error: err.Error()})
		return
	}
	emit(Response{ID: id, Roads: &read})
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
			Progress: every(1<<18, func(done, _ int64) { progress(before+done, total) }), Most: mostRoadBytes})
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
		out = RoadsRead{Roads: network.Edges(), Bytes: network.Bytes(), Notes: byroad.Omitted(network)}
	}
	out.TookMS = int(h.now().Sub(began).Milliseconds())
	return out, nil
}
