package osm

import (
	"context"
	"sort"

	"github.com/paulmach/orb"
)

// A scan is what is taken in of a file: relations → ways → nodes; each step learns what the next must keep.
type scan struct {
	want  Want
	areas []Relation
	ways  []Way // wanted, and the outlines of areas
	nodes []Node

	members ids // ways of areas
	refs    []int64
	corners ids // nodes whose position is needed …
	at      []orb.Point
	known   []bool
	gates   *gates
}

func extract(ctx context.Context, f *File, want Want, opt Options) (Extract, error) {
	s := &scan{want: want, gates: newGates()}
	for _, step := range []func(context.Context, *File) error{s.relations, s.waysOf, s.nodesOf} {
		if err := step(ctx, f); err != nil {
			return Extract{}, err
		}
	}
	// In order of type and number, whatever the order of the file.
	sort.Slice(s.nodes, func(a, b int) bool { return s.nodes[a].ID < s.nodes[b].ID }) // one sort for all, it is less program
	sort.Slice(s.ways, func(a, b int) bool { return s.ways[a].ID < s.ways[b].ID })
	sort.Slice(s.areas, func(a, b int) bool { return s.areas[a].ID < s.areas[b].ID })
	b := &builder{date: f.Date(), backdrop: !opt.NoBackdrop}
	for _, n := range s.nodes {
		b.node(n)
	}
	outlines := make(map[int64]Way, len(s.members))
	for _, w := range s.ways {
		if s.members.index(w.ID) >= 0 {
			outlines[w.ID] = w
		}
		if want.Matches(w.Tags) {
			b.way(w, s.line(w), s.gates.among(w.Refs, w.Tags))
		}
	}
	for _, r := range s.areas {
		rings, gates := s.outline(r, outlines)
		b.area(r, rings, gates)
	}
	return b.done(), nil
}

// relations finds areas made of several ways: which ways make their outline.
func (s *scan) relations(ctx context.Context, f *File) error {
	var members []int64
	err := f.Relations(ctx, func(r Relation) error {
		if t := r.Tags["type"]; t != "multipolygon" && t != "site" && t != "boundary" || !s.want.Matches(r.Tags) {
			return nil
		}
		s.areas = append(s.areas, r)
		for _, m := range r.Members {
			if isOutline(m) {
				members = append(members, m.ID)
			}
			if isEntrance(m) {
				s.refs = append(s.refs, m.ID)
			}
		}
		return nil
	})
	s.members = collect(members)
	return err
}

// waysOf finds the wanted ways and the outlines: which nodes they go through.
func (s *scan) waysOf(ctx context.Context, f *File) error {
	return f.Ways(ctx, s.members, func(w Way) error {
		if !s.want.Matches(w.Tags) && s.members.index(w.ID) < 0 {
			return nil
		}
		s.ways = append(s.ways, w)
		if w.Points == nil {
			s.refs = append(s.refs, w.Refs...)
		}
		return nil
	})
}

// nodesOf finds the wanted nodes, and where the nodes of the ways are.
func (s *scan) nodesOf(ctx context.Context, f *File) error {
	s.corners, s.refs = collect(s.refs), nil
	s.at, s.known = make([]orb.Point, len(s.corners)), make([]bool, len(s.corners))
	return f.Nodes(ctx, s.corners, func(n Node) error {
		if i := s.corners.index(n.ID); i >= 0 {
			s.at[i], s.known[i] = n.Point, true
			s.gates.look(n)
		}
		if s.want.Matches(n.Tags) {
			s.nodes = append(s.nodes, n)
		}
		return nil
	})
}

// line is a way as far as its nodes are known.
func (s *scan) line(w Way) (ls orb.LineString) {
	if w.Points != nil {
		return w.Points
	}
	for _, id := range w.Refs {
		if i := s.corners.index(id); i >= 0 && s.known[i] {
			ls = append(ls, s.at[i])
		}
	}
	return ls
}

// outline puts the rings of an area together and finds its gates: those that the area names, else those on the outline.
func (s *scan) outline(r Relation, ways map[int64]Way) (rings []orb.LineString, gates []orb.Point) {
	var lines []orb.LineString
	var refs []int64
	for _, m := range r.Members {
		if w, ok := ways[m.ID]; ok && isOutline(m) {
			if ls := s.line(w); len(ls) > 1 {
				lines = append(lines, ls)
				refs = append(refs, w.Refs...)
			}
		}
		if i := s.corners.index(m.ID); i >= 0 && s.known[i] && isEntrance(m) {
			gates = append(gates, s.at[i])
		}
	}
	if gates == nil {
		gates = s.gates.among(refs, r.Tags)
	}
	return joinRings(lines), gates
}

func isOutline(m Member) bool { return m.Type == 'w' && m.Role != "inner" }
