package file

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"sort"
	"strconv"

	"github.com/paulmach/orb"
)

// This file makes objects of XML tags.

// parseXML reads the whole text. Errors name the offset of the tag in it.
func parseXML(ctx context.Context, r io.Reader, p *xmlParser) (*xmlFile, error) {
	x := p.x
	tokens := newXMLTokens(r)
	for n := 0; ; n++ {
		if n%1024 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		t, err := tokens.next()
		if err == io.EOF {
			break
		}
		if err == nil {
			err = p.take(t)
		}
		if len(x.packed) > maxXMLNodes {
			err = fmt.Errorf("more than %d nodes are too many for XML; pack the file as PBF: osmium cat IN -o OUT.osm.pbf", maxXMLNodes)
		}
		if errors.Is(err, io.ErrUnexpectedEOF) { // of the unpacking
			return nil, faultAt(tokens.dropped+int64(len(tokens.buf)), "%w; fetch it again", ErrCut)
		}
		if isTooMuch(err) {
			return nil, err
		}
		if err != nil {
			return nil, &Fault{tokens.start, err}
		}
	}
	if !p.closed {
		return nil, faultAt(tokens.dropped+int64(len(tokens.buf)), "%w: </osm> is missing; fetch it again", ErrCut)
	}
	sort.Slice(x.packed, func(a, b int) bool { return x.packed[a].id < x.packed[b].id }) // most files have them in order: little to do
	sort.Slice(x.plain, func(a, b int) bool { return x.plain[a].id < x.plain[b].id })
	x.date = cmp.Or(p.date, p.newest) // a file that does not state its date is as new as its newest object
	return x, nil
}

// An xmlParser keeps the object that is being read.
type xmlParser struct {
	x              *xmlFile
	look           lookup
	kept           kept
	opened, closed bool   // <osm>, </osm>
	date, newest   string // stated; of the newest object

	typ    byte // of the open object; 0 outside
	id     int64
	at     packedNode
	text   []byte // keys and values one after the other …
	ends   []int  // … and where each ends
	wanted bool
	refs   []int64
	member []Member
	center *orb.Point
}

func newXMLParser(want Want, most int64) *xmlParser {
	return &xmlParser{x: &xmlFile{}, look: newLookup(want), kept: kept{most: most}}
}

// take takes one tag in.
func (p *xmlParser) take(t *xmlTag) (err error) {
	if !p.opened {
		if t.name != "osm" {
			return fmt.Errorf("the first element is <%.20s>, want <osm>: %w", t.name, ErrNotOSM)
		}
		p.opened = true
		p.date = day(t.get("timestamp"))
	}
	if !t.end {
		err = p.start(t)
	}
	if len(p.text) > mostText || max(len(p.refs), len(p.member)) > mostObjects {
		return errCrowded
	}
	if (t.end || t.empty) && err == nil {
		err = p.end(t.name)
	}
	return err
}

func (p *xmlParser) start(t *xmlTag) error {
	switch t.name {
	case "meta":
		p.date = cmp.Or(p.date, day(t.get("osm_base")))
	case "node", "way", "relation":
		return p.object(t)
	case "tag":
		if p.typ != 0 {
			p.tag(t.get("k"), t.get("v"))
		}
	case "nd":
		if p.typ == 'w' {
			return p.corner(t)
		}
	case "member":
		if p.typ == 'r' {
			return p.part(t)
		}
	case "center":
		if p.typ == 'w' || p.typ == 'r' {
			c, err := degrees(t)
			at := c.point()
			p.center = &at
			return err
		}
	}
	return nil
}

// corner takes a node of a way, with its position where the file gives it ("out geom").
func (p *xmlParser) corner(t *xmlTag) error {
	ref, err := number(t, "ref")
	p.refs = append(p.refs, ref)
	if err != nil || t.get("lat") == nil {
		return err
	}
	at, err := degrees(t)
	at.id = ref
	p.x.packed = append(p.x.packed, at)
	return err
}

// part takes a member of a relation. Other members than objects do not exist.
func (p *xmlParser) part(t *xmlTag) error {
	switch typ := string(t.get("type")); typ {
	case "node", "way", "relation":
		ref, err := number(t, "ref")
		p.member = append(p.member, Member{Type: typ[0], ID: ref, Role: string(t.get("role"))})
		return err
	}
	return nil
}

// object begins an object.
func (p *xmlParser) object(t *xmlTag) (err error) {
	p.typ = 0
	if string(t.get("visible")) == "false" || string(t.get("action")) == "delete" {
		return nil
	}
	if p.id, err = number(t, "id"); err != nil {
		return err
	}
	if t.name == "node" {
		if p.at, err = degrees(t); err != nil {
			return err
		}
		p.at.id = p.id
	}
	if stamp := t.get("timestamp"); len(stamp) >= 10 && string(stamp[:10]) > p.newest {
		p.newest = day(stamp)
	}
	p.typ = t.name[0]
	p.text, p.ends, p.wanted = p.text[:0], p.ends[:0], false
	p.refs, p.member, p.center = p.refs[:0], nil, nil
	return nil
}

// tag takes a tag of the object. Most objects are not wanted, so texts are made only at the end.
func (p *xmlParser) tag(key, value []byte) {
	p.text = append(p.text, key...)
	p.ends = append(p.ends, len(p.text))
	p.text = append(p.text, value...)
	p.ends = append(p.ends, len(p.text))
	if k := p.look.keys[string(key)]; k != 0 && k&(p.look.values[string(value)]|p.look.every) != 0 {
		p.wanted = true
	}
}

func (p *xmlParser) tags() Tags {
	tags := make(Tags, len(p.ends)/2)
	from := 0
	for i := 0; i < len(p.ends); i += 2 {
		tags[string(p.text[from:p.ends[i]])] = string(p.text[p.ends[i]:p.ends[i+1]])
		from = p.ends[i+1]
	}
	return tags
}

// end ends an object, or the file.
func (p *xmlParser) end(name string) (err error) {
	switch {
	case name == "osm":
		p.closed = true
	case name == "node" && p.typ == 'n':
		p.x.packed = append(p.x.packed, p.at)
		if p.wanted {
			n := Node{ID: p.id, Point: p.at.point(), Tags: p.tags()}
			p.x.nodes, err = append(p.x.nodes, n), p.kept.object(n.Tags, 0)
		}
		p.typ = 0
	case name == "way" && p.typ == 'w':
		if p.wanted {
			w := Way{ID: p.id, Tags: p.tags(), Refs: slices.Clone(p.refs), Center: p.center}
			p.x.ways, err = append(p.x.ways, w), p.kept.object(w.Tags, len(w.Refs))
		} else {
			p.x.plain = append(p.x.plain, packedWay{p.id, packRefs(p.refs)})
		}
		p.typ = 0
	case name == "relation" && p.typ == 'r':
		if p.wanted {
			r := Relation{ID: p.id, Tags: p.tags(), Members: p.member, Center: p.center}
			p.x.relations, err = append(p.x.relations, r), p.kept.object(r.Tags, len(r.Members))
		}
		p.typ = 0
	}
	return err
}

// day returns the day of a timestamp: 2025-01-19 of 2025-01-19T21:20:31Z.
func day(stamp []byte) string {
	if len(stamp) < 10 {
		return ""
	}
	return string(stamp[:10])
}

func number(t *xmlTag, name string) (int64, error) {
	v, err := strconv.ParseInt(string(t.get(name)), 10, 64)
	if err != nil {
		return 0, fmt.Errorf("<%s %s=%q>: want a whole number", t.name, name, t.get(name))
	}
	return v, nil
}

func degrees(t *xmlTag) (n packedNode, err error) {
	lat, err1 := strconv.ParseFloat(string(t.get("lat")), 64)
	lon, err2 := strconv.ParseFloat(string(t.get("lon")), 64)
	if err1 != nil || err2 != nil || !onEarth(orb.Point{lon, lat}) {
		return n, fmt.Errorf("<%s lat=%q lon=%q>: want degrees", t.name, t.get("lat"), t.get("lon"))
	}
	return packedNode{lon: int32(math.Round(lon * 1e7)), lat: int32(math.Round(lat * 1e7))}, nil
}
