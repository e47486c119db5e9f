package roads

import (
	"context"
	"sort"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/data/plain"
	"ullage/geo/road/net"
)

// This file goes through a file, relations → ways → nodes; each step learns what the next must keep.

// wanted are all tags that a road, a barrier, a bridge or a turn restriction may have.
func wanted() file.Want {
	w := file.Want{{Key: "route", Value: "ferry"}, {Key: "type", Value: "restriction"}}
	for _, c := range roadClasses {
		w = append(w, file.Tag{Key: "highway", Value: c.value})
	}
	for _, b := range tag.Barriers {
		w = append(w, file.Tag{Key: "barrier", Value: b.Value})
	}
	for _, r := range railways {
		w = append(w, file.Tag{Key: "railway", Value: r})
	}
	return w
}

// A surveyor gathers what is taken in of a file.
type surveyor struct {
	in      net.Input
	bans    []file.Relation // turn restrictions
	ways    []*rawRoad      // pointers, so that sorting them adds no code
	bridges [][]int64
	refs    []int64 // nodes of ways and bridges
	corners corners
	usual   usualLimits
}

// A rawRoad is a way before its nodes are known.
type rawRoad struct {
	way     file.Way
	road    net.Road
	minutes float64 // a ferry's crossing; 0 unknown
	usual   bool    // its limit is the country's
}

func survey(ctx context.Context, f *file.File) (net.Input, error) {
	s := &surveyor{usual: usualLimits{}}
	for _, step := range []func(context.Context, *file.File) error{s.relations, s.waysOf, s.nodesOf} {
		if err := step(ctx, f); err != nil {
			return net.Input{}, err
		}
	}
	s.in.Date = f.Date()
	s.finish()
	return s.in, nil
}

// relations finds turn restrictions.
func (s *surveyor) relations(ctx context.Context, f *file.File) error {
	return f.Relations(ctx, func(r file.Relation) error {
		if r.Tags["type"] == "restriction" {
			s.bans = append(s.bans, r)
		}
		return nil
	})
}

// waysOf finds ways that a motor vehicle may use, and bridges.
func (s *surveyor) waysOf(ctx context.Context, f *file.File) error {
	return f.Ways(ctx, nil, func(w file.Way) error {
		if isBridge(w.Tags) {
			s.bridges = append(s.bridges, w.Refs)
			s.refs = append(s.refs, w.Refs...)
		}
		raw, ok := s.roadOf(w)
		if !ok || len(w.Refs) < 2 {
			return nil
		}
		raw.way.Tags = nil
		s.ways = append(s.ways, &raw)
		s.refs = append(s.refs, w.Refs...)
		return nil
	})
}

// roadOf reads a way's tags; false for what is no road for motor vehicles.
func (s *surveyor) roadOf(w file.Way) (raw rawRoad, ok bool) {
	t := w.Tags
	raw.way = w
	r := &raw.road
	if r.Class, ok = classOf(t); !ok || t["area"] == "yes" {
		return raw, false
	}
	r.Access = tag.Access(t, r.Class)
	if r.Class == net.Ferry {
		raw.minutes = minutesOf(t["duration"])
		r.Flags |= net.GasRules
		if !takesVehicles(t) {
			s.in.Omitted[net.UnsaidFerries]++
			return raw, false
		}
	}
	switch onewayOf(t) {
	case along:
		r.Access[1] = net.Closed
	case against:
		r.Access[0] = net.Closed
	case changing:
		s.in.Omitted[net.ChangingRoads]++
		return raw, false
	}
	if r.Access[0] == net.Closed && r.Access[1] == net.Closed {
		return raw, false
	}
	if v := t["hgv"]; v != "" && v != "unknown" {
		r.Heavy = tag.Entry(v)
	}
	r.Name = plain.Text(tag.First(t, "ref", "name"))
	r.Kmh = [2]float32{speedOf(t, "forward"), speedOf(t, "backward")}
	raw.usual = usualLimit(t, r)
	r.Flags |= flagsOf(t)
	if readLimits(t, r); strings.Contains(r.Unclear, ":conditional=") {
		s.in.Omitted[net.RulesAtTimes]++
	}
	return raw, true
}

// nodesOf finds where the nodes of the ways are, and which are barriers.
func (s *surveyor) nodesOf(ctx context.Context, f *file.File) error {
	ids := file.Collect(s.refs)
	s.refs = nil
	s.corners = corners{ids, make([]bool, len(ids))}
	s.in.Nodes = make([]net.Node, len(ids))
	return f.Nodes(ctx, ids, func(n file.Node) error {
		if i := ids.Index(n.ID); i >= 0 {
			s.in.Nodes[i].Point, s.corners.known[i] = n.Point, true
			if g := gateOf(n.Tags); g != nil { // a node may come again without its tags
				s.in.Nodes[i].Gate = g
			}
		}
		return nil
	})
}

// finish puts the roads together, in order of number, whatever the order of the file.
func (s *surveyor) finish() {
	sort.Slice(s.ways, func(a, b int) bool { return s.ways[a].way.ID < s.ways[b].way.ID }) // one sort for all types: less program
	sort.Slice(s.bans, func(a, b int) bool { return s.bans[a].ID < s.bans[b].ID })
	for _, w := range s.ways {
		for i, id := range w.way.Refs {
			if k := s.corners.ids.Index(id); i < len(w.way.Points) && !s.corners.known[k] {
				s.in.Nodes[k].Point, s.corners.known[k] = w.way.Points[i], true
			}
		}
	}
	for _, w := range s.ways {
		s.add(w)
	}
	markUnder(&s.in, s.bridges, &s.corners)
	for _, r := range s.bans {
		s.forbid(r)
	}
	s.in.Turns = append(s.in.Turns, sharpTurns(&s.in)...)
}

// add adds a way; where nodes are missing, as at the edge of an extract, it is cut.
func (s *surveyor) add(w *rawRoad) {
	var nodes []int32
	for _, id := range w.way.Refs {
		k := s.corners.at(id)
		if k < 0 {
			s.in.Omitted[net.LeavesData]++
			s.piece(w, nodes)
			nodes = nil
			continue
		}
		if len(nodes) == 0 || nodes[len(nodes)-1] != int32(k) {
			nodes = append(nodes, int32(k))
		}
	}
	s.piece(w, nodes)
}

// piece adds a piece of a way, with the speeds that its place tells.
func (s *surveyor) piece(w *rawRoad, nodes []int32) {
	if len(nodes) < 2 {
		return
	}
	r := w.road
	if w.minutes > 0 {
		// A crossing, in steps of 0.1 km/h.
		kmh := min(100, max(0.5, float64(int(lengthM(&s.in, nodes)/w.minutes*0.6+0.5))/10))
		r.Kmh = [2]float32{float32(kmh), float32(kmh)}
	}
	if w.usual {
		kmh := s.usual.at(s.in.Nodes[nodes[0]].Point)
		r.Kmh = [2]float32{kmh, kmh}
	}
	s.in.Ways = append(s.in.Ways, net.Way{ID: w.way.ID, Nodes: nodes, Road: r})
}

// forbid adds the turns that a relation forbids or demands, unless it excepts motorhomes. What holds at times only is kept with
// its words.
func (s *surveyor) forbid(r file.Relation) {
	if exceptsUs(r.Tags) {
		return
	}
	for _, rule := range rulesOf(r.Tags) {
		if rule.At != "" {
			s.in.Omitted[net.TurnsAtTimes]++
		}
		s.in.Turns = append(s.in.Turns, turnsOver(rule, r.Members, s.corners.ids)...)
	}
}
