package osm

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sort"

	"github.com/paulmach/orb"

	"ullage/geo/road/net"
)

// RoadOptions say how to read roads. The zero value reads silently.
type RoadOptions struct {
	Progress func(done, total int64) // bytes of the file taken in; called from ReadRoads, often
}

// ReadRoads reads the roads, ferries, barriers and turn restrictions of an OpenStreetMap file, for [road.Build]. name is used
// in errors. The file is scanned three times, relations, ways, nodes, as by [Read]; only what roads need is held in memory.
// A file without roads gives an empty input and no error. What was left out is said in Notes.
func ReadRoads(ctx context.Context, name string, r io.ReadSeeker, opt RoadOptions) (net.Input, error) {
	f, err := Open(ctx, r, roadTags(), opt.Progress)
	if err != nil {
		return net.Input{}, fmt.Errorf("read %s: %w", name, err)
	}
	in, err := roads(ctx, f)
	if errors.Is(err, errOrder) {
		f.scanAll()
		in, err = roads(ctx, f)
	}
	if err != nil {
		return net.Input{}, fmt.Errorf("read %s: %w", name, err)
	}
	return in, nil
}

func roadTags() Want {
	w := Want{{"route", "ferry"}, {"type", "restriction"}}
	for _, c := range roadClasses {
		w = append(w, Tag{"highway", c.value})
	}
	for _, b := range barriers {
		w = append(w, Tag{"barrier", b.value})
	}
	for _, r := range railways {
		w = append(w, Tag{"railway", r})
	}
	return w
}

// A rawRoad is a way before its nodes are known.
type rawRoad struct {
	way     Way
	road    net.Road
	minutes float64 // a ferry's crossing; 0 unknown
	usual   bool    // its limit is the country's
}

// roads goes relations → ways → nodes; each step learns what the next must keep.
func roads(ctx context.Context, f *File) (net.Input, error) {
	x := &roadReader{left: map[string]int{}}
	// 1. Turn restrictions.
	var bans []Relation
	err := f.Relations(ctx, func(r Relation) error {
		if r.Tags["type"] == "restriction" {
			bans = append(bans, r)
		}
		return nil
	})
	if err != nil {
		return net.Input{}, err
	}
	// 2. Ways that a motor vehicle may use, and bridges.
	var bridges [][]int64
	var ways []*rawRoad // pointers, so that sorting them adds no code
	var refs []int64
	err = f.Ways(ctx, nil, func(w Way) error {
		if isBridge(w.Tags) {
			bridges = append(bridges, w.Refs)
			refs = append(refs, w.Refs...)
		}
		raw, ok := x.roadOf(w)
		if !ok || len(w.Refs) < 2 {
			return nil
		}
		raw.way.Tags = nil
		ways = append(ways, &raw)
		refs = append(refs, w.Refs...)
		return nil
	})
	if err != nil {
		return net.Input{}, err
	}
	// 3. Where their nodes are, and which are barriers.
	corners := collect(refs)
	in := net.Input{Nodes: make([]net.Node, len(corners))}
	known := make([]bool, len(corners))
	err = f.Nodes(ctx, corners, func(n Node) error {
		if i := corners.index(n.ID); i >= 0 {
			in.Nodes[i].Point, known[i] = n.Point, true
			if g := gateOf(n.Tags); g != nil { // a node may come again without its tags
				in.Nodes[i].Gate = g
			}
		}
		return nil
	})
	if err != nil {
		return net.Input{}, err
	}
	// 4. In order of number, whatever the order of the file.
	sort.Slice(ways, func(a, b int) bool { return ways[a].way.ID < ways[b].way.ID }) // one sort for all types: less program
	sort.Slice(bans, func(a, b int) bool { return bans[a].ID < bans[b].ID })
	for _, w := range ways {
		for i, id := range w.way.Refs {
			if k := corners.index(id); i < len(w.way.Points) && !known[k] {
				in.Nodes[k].Point, known[k] = w.way.Points[i], true
			}
		}
	}
	for _, w := range ways {
		x.add(&in, w, corners, known)
	}
	markUnder(&in, bridges, corners, known)
	for _, r := range bans {
		in.Turns = append(in.Turns, x.turnsOf(r, corners)...)
	}
	in.Turns = append(in.Turns, sharpTurns(&in)...)
	in.Date = f.Date()
	in.Notes = x.notes()
	return in, nil
}

// A roadReader counts what is left out.
type roadReader struct {
	left  map[string]int
	usual map[[2]int32]float32 // limit outside towns, by cell
}

// notes in order of their text.
func (x *roadReader) notes() (list []string) {
	for why, n := range x.left {
		list = append(list, fmt.Sprintf("%d %s", n, why))
	}
	slices.Sort(list)
	return list
}

// add adds a way; where nodes are missing, as at the edge of an extract, it is cut.
func (x *roadReader) add(in *net.Input, w *rawRoad, corners ids, known []bool) {
	var nodes []int32
	flush := func() {
		if len(nodes) > 1 {
			r := w.road
			if w.minutes > 0 {
				r.Kmh[0] = float32(kmhOf(in, nodes, w.minutes))
				r.Kmh[1] = r.Kmh[0]
			}
			if w.usual {
				r.Kmh[0] = x.usualKmh(in.Nodes[nodes[0]].Point)
				r.Kmh[1] = r.Kmh[0]
			}
			in.Ways = append(in.Ways, net.Way{ID: w.way.ID, Nodes: nodes, Road: r})
		}
		nodes = nil
	}
	for _, id := range w.way.Refs {
		k := corners.index(id)
		if !known[k] {
			x.left["times a road leaves the data: its nodes are not in the file"]++
			flush()
			continue
		}
		if len(nodes) == 0 || nodes[len(nodes)-1] != int32(k) {
			nodes = append(nodes, int32(k))
		}
	}
	flush()
}

// kmhOf is the speed of a crossing, in steps of 0.1 km/h.
func kmhOf(in *net.Input, nodes []int32, minutes float64) float64 {
	var ls orb.LineString
	for _, k := range nodes {
		ls = append(ls, in.Nodes[k].Point)
	}
	return min(100, max(0.5, float64(int(lengthM(ls)/minutes*0.6+0.5))/10))
}
