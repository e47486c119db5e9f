package osm

import (
	"github.com/paulmach/orb"

	"ullage/data/osm/file"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// A builder gathers the extract.
type builder struct {
	x        Extract
	date     trip.Date
	backdrop bool
	adrift   int // wanted objects whose position the file does not hold
	shut     int // places that are private, out of use or not for cars
}

func (b *builder) node(n file.Node) {
	b.x.Objects++
	b.place(object{'n', n.ID, n.Tags}, n.Point)
	if b.backdrop {
		b.x.Backdrop.addTown(n)
	}
}

func (b *builder) way(w file.Way, ls orb.LineString, gates []orb.Point) {
	b.x.Objects++
	switch {
	case w.Center != nil && len(ls) < len(w.Refs):
		b.place(object{'w', w.ID, w.Tags}, *w.Center)
	case len(ls) > 0:
		b.placeOn(object{'w', w.ID, w.Tags}, ls, gates)
	default:
		b.adrift++
	}
	if b.backdrop {
		b.x.Backdrop.addLine(w.Tags, ls)
	}
}

func (b *builder) area(r file.Relation, rings []orb.LineString, gates []orb.Point) {
	b.x.Objects++
	switch {
	case len(rings) > 0:
		b.placeOn(object{'r', r.ID, r.Tags}, largest(rings), gates)
	case r.Center != nil:
		b.place(object{'r', r.ID, r.Tags}, *r.Center)
	default:
		b.adrift++
	}
	if b.backdrop {
		for _, ring := range rings {
			b.x.Backdrop.addLine(r.Tags, ring)
		}
	}
}

func (b *builder) place(o object, at orb.Point) {
	p, ok := placeOf(o, at)
	switch kind, _ := kindOf(o.tags); {
	case ok:
		p.Date = b.date
		b.x.Places = append(b.x.Places, p)
	case kind != "" && leftOut(o.tags):
		b.shut++
	}
}

// placeOn adds a place on a line or ring.
func (b *builder) placeOn(o object, ls orb.LineString, gates []orb.Point) {
	n := len(b.x.Places)
	b.place(o, position(ls))
	if len(b.x.Places) == n {
		return
	}
	b.x.Places[n].Gates = gates
	if closed(ls) {
		b.x.Places[n].Outline = ls
	}
}

func (b *builder) done() Extract {
	b.x.Date = b.date
	lend(b.x.Places)
	b.note(placesShut, b.shut)
	b.note(placesAdrift, b.adrift)
	return b.x
}

// note tells how many were left out, and why by the kind.
func (b *builder) note(why fact.Kind, n int) {
	if n > 0 {
		b.x.Notes = append(b.x.Notes, fact.Of(why, fact.V{"n": fact.Count(n)}))
	}
}
