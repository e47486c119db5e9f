package osm

import (
	"cmp"
	"context"
	"encoding/binary"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"

	"github.com/paulmach/orb"
)

// This file reads OSM XML, also as Overpass writes it ("out center"). Unpacking and parsing text is slow, so the file is
// read once: positions of all nodes (16 bytes each) and corners of all ways (1–3 bytes each) are kept packed, tags only
// of what is wanted. Country-size data come as PBF, which needs no such store.
// Source: wiki.openstreetmap.org/wiki/OSM_XML, wiki.openstreetmap.org/wiki/Overpass_API/Overpass_QL#out.

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

// parseXML reads the whole file. at tells the offset in the packed file, for errors.
func parseXML(ctx context.Context, r io.Reader, want Want, at func() int64) (*xmlFile, error) {
	x := &xmlFile{}
	d := xml.NewDecoder(r)
	p := xmlParser{x: x, want: want}
	for n := 0; ; n++ {
		if n%1024 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		tok, err := d.RawToken()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, &offsetError{at(), err}
		}
		switch t := tok.(type) {
		case xml.StartElement:
			err = p.start(t)
		case xml.EndElement:
			err = p.end(t.Name.Local)
		}
		if err != nil {
			return nil, &offsetError{at(), err}
		}
	}
	if !p.closed {
		return nil, wrongAt(at(), "the file is cut off: </osm> is missing")
	}
	p.setDate(p.newest) // a file that does not state its date is as new as its newest object
	slices.SortFunc(x.packed, func(a, b packedNode) int { return cmp.Compare(a.id, b.id) })
	slices.SortFunc(x.plain, func(a, b packedWay) int { return cmp.Compare(a.id, b.id) })
	return x, nil
}

// An xmlParser keeps the object that is being read.
type xmlParser struct {
	x      *xmlFile
	want   Want
	typ    byte // of the open object; 0 outside
	id     int64
	at     packedNode
	tags   Tags
	refs   []int64
	member []Member
	center *orb.Point
	newest string // timestamp of an object
	opened bool
	closed bool
}

func (p *xmlParser) start(t xml.StartElement) error {
	name := t.Name.Local
	if !p.opened {
		if name != "osm" {
			return fmt.Errorf("the first element is <%s>, want <osm>: not an OpenStreetMap file", name)
		}
		p.opened = true
		p.setDate(attr(t, "timestamp"))
		return nil
	}
	switch name {
	case "meta":
		p.setDate(attr(t, "osm_base"))
	case "node", "way", "relation":
		return p.object(name[0], t)
	case "tag":
		if p.typ != 0 {
			p.tags[attr(t, "k")] = attr(t, "v")
		}
	case "nd":
		if p.typ == 'w' {
			ref, err := number(t, "ref")
			if err != nil {
				return err
			}
			p.refs = append(p.refs, ref)
		}
	case "member":
		if typ := attr(t, "type"); p.typ == 'r' && (typ == "node" || typ == "way" || typ == "relation") {
			ref, err := number(t, "ref")
			if err != nil {
				return err
			}
			p.member = append(p.member, Member{Type: typ[0], ID: ref, Role: attr(t, "role")})
		}
	case "center":
		if p.typ == 'w' || p.typ == 'r' {
			c, err := degrees(t)
			if err != nil {
				return err
			}
			at := c.point()
			p.center = &at
		}
	}
	return nil
}

func (p *xmlParser) object(typ byte, t xml.StartElement) (err error) {
	p.typ, p.center = 0, nil
	if t := attr(t, "timestamp"); t > p.newest {
		p.newest = t
	}
	if attr(t, "visible") == "false" || attr(t, "action") == "delete" {
		return nil
	}
	if p.id, err = number(t, "id"); err != nil {
		return err
	}
	if typ == 'n' {
		if p.at, err = degrees(t); err != nil {
			return err
		}
		p.at.id = p.id
	}
	p.typ, p.tags, p.refs, p.member = typ, Tags{}, p.refs[:0], nil
	return nil
}

func (p *xmlParser) end(name string) error {
	if name == "osm" {
		p.closed = true
		return nil
	}
	if p.typ == 0 || name != "node" && name != "way" && name != "relation" {
		return nil
	}
	wanted := p.want.Matches(p.tags)
	switch p.typ {
	case 'n':
		p.x.packed = append(p.x.packed, p.at)
		if wanted {
			p.x.nodes = append(p.x.nodes, Node{ID: p.id, Point: p.at.point(), Tags: p.tags})
		}
	case 'w':
		if wanted {
			p.x.ways = append(p.x.ways, Way{ID: p.id, Tags: p.tags, Refs: slices.Clone(p.refs), Center: p.center})
		} else {
			p.x.plain = append(p.x.plain, packedWay{p.id, packRefs(p.refs)})
		}
	case 'r':
		if wanted {
			p.x.relations = append(p.x.relations, Relation{ID: p.id, Tags: p.tags, Members: p.member, Center: p.center})
		}
	}
	p.typ = 0
	return nil
}

func (p *xmlParser) setDate(stamp string) {
	if len(stamp) >= 10 && p.x.date == "" {
		p.x.date = stamp[:10]
	}
}

func attr(t xml.StartElement, name string) string {
	for _, a := range t.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func number(t xml.StartElement, name string) (int64, error) {
	v, err := strconv.ParseInt(attr(t, name), 10, 64)
	if err != nil {
		return 0, fmt.Errorf("<%s %s=%q>: want a whole number", t.Name.Local, name, attr(t, name))
	}
	return v, nil
}

func degrees(t xml.StartElement) (n packedNode, err error) {
	lat, err1 := strconv.ParseFloat(attr(t, "lat"), 64)
	lon, err2 := strconv.ParseFloat(attr(t, "lon"), 64)
	if err1 != nil || err2 != nil || !valid(orb.Point{lon, lat}) {
		return n, fmt.Errorf("<%s lat=%q lon=%q>: want degrees", t.Name.Local, attr(t, "lat"), attr(t, "lon"))
	}
	return packedNode{lon: int32(math.Round(lon * 1e7)), lat: int32(math.Round(lat * 1e7))}, nil
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

func (x *xmlFile) Relations(ctx context.Context, fn func(Relation) error) error {
	for _, r := range x.relations {
		if err := fn(r); err != nil {
			return err
		}
	}
	return ctx.Err()
}

func (x *xmlFile) Ways(ctx context.Context, also ids, fn func(Way) error) error {
	for _, w := range x.ways {
		if err := fn(w); err != nil {
			return err
		}
	}
	for _, w := range x.plain {
		if also.index(w.id) < 0 {
			continue
		}
		if err := fn(Way{ID: w.id, Refs: unpackRefs(w.refs)}); err != nil {
			return err
		}
	}
	return ctx.Err()
}

func (x *xmlFile) Nodes(ctx context.Context, also ids, fn func(Node) error) error {
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
