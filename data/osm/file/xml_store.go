package file

import (
	"context"
	"encoding/binary"
	"slices"

	"github.com/paulmach/orb"
)

// This file reads OSM XML, also as Overpass writes it ("out center", "out geom"). Unpacking and parsing text is slow, so the file is
// read once: positions of all nodes (16 bytes each) and corners of all ways (1–3 bytes each) are kept packed, tags only
// of what is wanted. Country-size data come as PBF, which needs no such store.
// Source: wiki.openstreetmap.org/wiki/OSM_XML, wiki.openstreetmap.org/wiki/Overpass_API/Overpass_QL#out.

// maxXMLNodes keeps the store below 1 GB, which a browser's worker can hold.
const maxXMLNodes = 50_000_000

// A packedNode is a position in units of 1e-7 degrees.
type packedNode struct {
	id       int64
	lon, lat int32
}

func (n packedNode) point() orb.Point { return orb.Point{float64(n.lon) / 1e7, float64(n.lat) / 1e7} }

// A packedWay is a way without wanted tags.
type packedWay struct {
	id   int64
	refs []byte // differences as varints
}

// An xmlFile holds a parsed file.
type xmlFile struct {
	date      string
	packed    []packedNode
	nodes     []Node // with wanted tags
	ways      []Way  // with wanted tags
	plain     []packedWay
	relations []Relation
}

func packRefs(refs []int64) []byte {
	var b []byte
	last := int64(0)
	for _, r := range refs {
		b = binary.AppendVarint(b, r-last)
		last = r
	}
	return slices.Clip(b)
}

func unpackRefs(b []byte) (refs []int64) {
	last := int64(0)
	for len(b) > 0 {
		d, n := binary.Varint(b)
		b = b[n:]
		last += d
		refs = append(refs, last)
	}
	return refs
}

func (x *xmlFile) Date() string { return x.date }

func (x *xmlFile) Relations(ctx context.Context, fn func(Relation) error) error {
	for _, r := range x.relations {
		if err := fn(r); err != nil {
			return err
		}
	}
	return ctx.Err()
}

func (x *xmlFile) Ways(ctx context.Context, also IDs, fn func(Way) error) error {
	for _, w := range x.ways {
		if err := fn(w); err != nil {
			return err
		}
	}
	for _, w := range x.plain {
		if also.Index(w.id) < 0 {
			continue
		}
		if err := fn(Way{ID: w.id, Refs: unpackRefs(w.refs)}); err != nil {
			return err
		}
	}
	return ctx.Err()
}

func (x *xmlFile) Nodes(ctx context.Context, also IDs, fn func(Node) error) error {
	for _, n := range x.nodes {
		if err := fn(n); err != nil {
			return err
		}
	}
	next := 0
	for _, n := range x.packed {
		for next < len(also) && also[next] < n.id {
			next++
		}
		if next < len(also) && also[next] == n.id {
			if err := fn(Node{ID: n.id, Point: n.point()}); err != nil {
				return err
			}
		}
	}
	return ctx.Err()
}
