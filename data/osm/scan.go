package osm

import (
	"context"
	"sort"

	"github.com/paulmach/orb"

	"ullage/data/osm/file"
)

// A scan is what is taken in of a file: relations → ways → nodes; each step learns what the next must keep.
type scan struct {
	want  file.Want
	areas []file.Relation
	ways  []file.Way // wanted, and the outlines of areas
	nodes []file.Node

	members file.IDs // ways of areas
	refs    []int64
	corners file.IDs // nodes whose position is needed …
	at      []orb.Point
	known   []bool
	gates   *gates
}

// read goes through the file.
func (s *scan) read(ctx context.Context, f *file.File) error {
	for _, step := range []func(context.Context, *file.File) error{s.relations, s.waysOf, s.nodesOf} {
		if err := step(ctx, f); err != nil {
			return err
		}
	}
	return nil
}

// extract builds what was read, in order of type and number, whatever the order of the file.
func (s *scan) extract(b builder) Extract {
	sort.Slice(s.nodes, func(a, b int) bool { return s.nodes[a].ID < s.nodes[b].ID }) // one sort for all, it is less program
	sort.Slice(s.ways, func(a, b int) bool { return s.ways[a].ID < s.ways[b].ID })
	sort.Slice(s.areas, func(a, b int) bool { return s.areas[a].ID < s.areas[b].ID })
	for _, n := range s.nodes {
		b.node(n)
	}
	outlines := make(map[int64]file.Way, len(s.members))
	for _, w := range s.ways {
		if s.members.Index(w.ID) >= 0 {
			outlines[w.ID] = w
		}
		if s.want.Matches(w.Tags) {
			b.way(w, s.line(w), s.gates.among(w.Refs, w.Tags))
		}
	}
	for _, r := range s.areas {
		rings, gates := s.outline(r, outlines)
		b.area(r, rings, gates)
	}
	return b.done()
}

// relations finds areas made of several ways: which ways make their outline.
func (s *scan) relations(ctx context.Context, f *file.File) error {
	var members []int64
	err := f.Relations(ctx, func(r file.Relation) error {
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
	s.members = file.Collect(members)
	return err
}

// waysOf finds the wanted ways and the outlines: which nodes they go through.
func (s *scan) waysOf(ctx context.Context, f *file.File) error {
	return f.Ways(ctx, s.members, func(w file.Way) error {
		if !s.want.Matches(w.Tags) && s.members.Index(w.ID) < 0 {
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
func (s *scan) nodesOf(ctx context.Context, f *file.File) error {
	s.corners, s.refs = file.Collect(s.refs), nil
	s.at, s.known = make([]orb.Point, len(s.corners)), make([]bool, len(s.corners))
	return f.Nodes(ctx, s.corners, func(n file.Node) error {
		if i := s.corners.Index(n.ID); i >= 0 {
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
func (s *scan) line(w file.Way) (ls orb.LineString) {
	if w.Points != nil {
		return w.Points
	}
	for _, id := range w.Refs {
		if i := s.corners.Index(id); i >= 0 && s.known[i] {
			ls = append(ls, s.at[i])
		}
	}
	return ls
}

// outline puts the rings of an area together and finds its gates: those that the area names, else those on the outline.
func (s *scan) outline(r file.Relation, ways map[int64]file.Way) (rings []orb.LineString, gates []orb.Point) {
	var lines []orb.LineString
	var refs []int64
	for _, m := range r.Members {
		if w, ok := ways[m.ID]; ok && isOutline(m) {
			if ls := s.line(w); len(ls) > 1 {
				lines = append(lines, ls)
				refs = append(refs, w.Refs...)
			}
		}
		if i := s.corners.Index(m.ID); i >= 0 && s.known[i] && isEntrance(m) {
			gates = append(gates, s.at[i])
		}
	}
	if gates == nil {
		gates = s.gates.among(refs, r.Tags)
	}
	return joinRings(lines), gates
}

func isOutline(m file.Member) bool { return m.Type == 'w' && m.Role != "inner" }
