package osm

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sort"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// Options say how to read. The zero value reads everything silently.
type Options struct {
	Progress   func(done, total int64) // bytes of the file taken in; called from Read, often
	NoBackdrop bool                    // places only
}

// An Extract is what the planner and the map need of a file.
type Extract struct {
	Places   []trip.Place // by type and number
	Backdrop Backdrop
	Date     string   // of the data, 2025-01-19; "" if the file does not say
	Objects  int      // objects that had a wanted tag
	Notes    []string // what was left out and why, for people
}

// Read reads an OpenStreetMap file. name is used in errors. The file is scanned up to three times: relations, then ways,
// then nodes, so that only what is wanted is held in memory. Nothing found is not an error.
// Errors name the file and where they can the byte offset.
func Read(ctx context.Context, name string, r io.ReadSeeker, opt Options) (Extract, error) {
	want := placeTags()
	if !opt.NoBackdrop {
		want = append(want, backdropTags()...)
	}
	f, err := Open(ctx, r, want, opt.Progress)
	if err != nil {
		return Extract{}, fmt.Errorf("read %s: %w", name, err)
	}
	x, err := extract(ctx, f, want, opt)
	if errors.Is(err, errOrder) {
		f.scanAll()
		x, err = extract(ctx, f, want, opt)
	}
	if err != nil {
		return Extract{}, fmt.Errorf("read %s: %w", name, err)
	}
	return x, nil
}

// extract goes relations → ways → nodes; each step learns what the next must keep.
func extract(ctx context.Context, f *File, want Want, opt Options) (Extract, error) {
	// 1. Areas made of several ways: which ways make their outline.
	var areas []Relation
	var memberWays []int64
	err := f.Relations(ctx, func(r Relation) error {
		if t := r.Tags["type"]; t != "multipolygon" && t != "site" && t != "boundary" {
			return nil
		}
		areas = append(areas, r)
		for _, m := range r.Members {
			if m.Type == 'w' && m.Role != "inner" {
				memberWays = append(memberWays, m.ID)
			}
		}
		return nil
	})
	if err != nil {
		return Extract{}, err
	}
	// 2. Wanted ways, and the outlines: which nodes they go through.
	members := collect(memberWays)
	var ways []Way
	var refs []int64
	err = f.Ways(ctx, members, func(w Way) error {
		ways = append(ways, w)
		if w.Points == nil {
			refs = append(refs, w.Refs...)
		}
		return nil
	})
	if err != nil {
		return Extract{}, err
	}
	// 3. Wanted nodes, and where the nodes of the ways are.
	corners := collect(refs)
	at := make([]orb.Point, len(corners))
	known := make([]bool, len(corners))
	var nodes []Node
	err = f.Nodes(ctx, corners, func(n Node) error {
		if i := corners.index(n.ID); i >= 0 {
			at[i], known[i] = n.Point, true
		}
		if want.Matches(n.Tags) {
			nodes = append(nodes, n)
		}
		return nil
	})
	if err != nil {
		return Extract{}, err
	}
	// 4. In order of type and number, whatever the order of the file.
	sort.Slice(nodes, func(a, b int) bool { return nodes[a].ID < nodes[b].ID }) // one sort for all, it is less program
	sort.Slice(ways, func(a, b int) bool { return ways[a].ID < ways[b].ID })
	sort.Slice(areas, func(a, b int) bool { return areas[a].ID < areas[b].ID })
	outlines := make(map[int64]Way, len(members))
	for _, w := range ways {
		if members.index(w.ID) >= 0 {
			outlines[w.ID] = w
		}
	}
	line := func(w Way) (ls orb.LineString) {
		if w.Points != nil {
			return w.Points
		}
		for _, id := range w.Refs {
			if i := corners.index(id); i >= 0 && known[i] {
				ls = append(ls, at[i])
			}
		}
		return ls
	}
	b := &builder{date: f.Date(), backdrop: !opt.NoBackdrop}
	for _, n := range nodes {
		b.node(n)
	}
	for _, w := range ways {
		b.way(w, line(w), want)
	}
	for _, r := range areas {
		var outer []orb.LineString
		for _, m := range r.Members {
			if w, ok := outlines[m.ID]; ok && m.Type == 'w' && m.Role != "inner" {
				if ls := line(w); len(ls) > 1 {
					outer = append(outer, ls)
				}
			}
		}
		b.area(r, joinRings(outer))
	}
	return b.done(), nil
}

// A builder gathers the extract.
type builder struct {
	x        Extract
	date     string
	backdrop bool
	outlines []outline
	adrift   int // wanted objects whose position the file does not hold
	shut     int // places that are private, out of use or not for cars
}

func (b *builder) node(n Node) {
	b.x.Objects++
	b.place('n', n.ID, n.Point, n.Tags)
	if b.backdrop {
		b.x.Backdrop.addTown(n)
	}
}

func (b *builder) way(w Way, ls orb.LineString, want Want) {
	if !want.Matches(w.Tags) {
		return // only the outline of an area
	}
	b.x.Objects++
	switch {
	case w.Center != nil && len(ls) < len(w.Refs):
		b.place('w', w.ID, *w.Center, w.Tags)
	case len(ls) > 0:
		b.placeOn('w', w.ID, ls, w.Tags)
	default:
		b.adrift++
	}
	if b.backdrop {
		b.x.Backdrop.addLine(w.Tags, ls)
	}
}

func (b *builder) area(r Relation, rings []orb.LineString) {
	b.x.Objects++
	switch {
	case len(rings) > 0:
		b.placeOn('r', r.ID, largest(rings), r.Tags)
	case r.Center != nil:
		b.place('r', r.ID, *r.Center, r.Tags)
	default:
		b.adrift++
	}
	if b.backdrop {
		for _, ring := range rings {
			b.x.Backdrop.addLine(r.Tags, ring)
		}
	}
}

func (b *builder) place(typ byte, id int64, at orb.Point, tags Tags) {
	p, ok := placeOf(typ, id, at, tags)
	switch kind, _ := kindOf(tags); {
	case ok:
		p.Date = b.date
		b.x.Places = append(b.x.Places, p)
	case kind != "" && leftOut(tags):
		b.shut++
	}
}

// placeOn adds a place on a line or ring.
func (b *builder) placeOn(typ byte, id int64, ls orb.LineString, tags Tags) {
	n := len(b.x.Places)
	b.place(typ, id, position(ls), tags)
	if len(b.x.Places) > n && b.x.Places[n].Stay != nil && closed(ls) {
		b.outlines = append(b.outlines, outline{n, ls})
	}
}

func (b *builder) done() Extract {
	b.x.Date = b.date
	lend(b.x.Places, b.outlines)
	b.note(b.shut, "private, out of use or not for cars")
	b.note(b.adrift, "the file does not hold their position")
	return b.x
}

// note tells how many were left out and why.
func (b *builder) note(n int, why string) {
	if n > 0 {
		b.x.Notes = append(b.x.Notes, fmt.Sprintf("left out: %d (%s)", n, why))
	}
}
