package osm

import (
	"cmp"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/data/plain"
	"ullage/planner/trip"
)

// An object is a node, way or relation by its tags.
type object struct {
	typ  byte // 'n', 'w' or 'r'
	id   int64
	tags file.Tags
}

// placeOf makes a place of an object's tags; ok is false if they make none: no wanted tag, out of use, not
// for the public, or a service area or shop of which no tank is served.
func placeOf(o object, at orb.Point) (p trip.Place, ok bool) {
	tags := o.tags
	kind, by := kindOf(tags)
	if kind == "" || leftOut(tags) {
		return trip.Place{}, false
	}
	p = trip.Place{
		ID:       string(o.typ) + strconv.FormatInt(o.id, 10), // n123, w45, r6
		Kind:     kind,
		Name:     plain.Text(cmp.Or(tags["name"], tags["brand"])),
		Point:    at,
		Offers:   offersOf(kind, tags),
		Access:   tags["access"],
		Fee:      feeOf(tags),
		Charge:   tags["charge"],
		Hours:    tags["opening_hours"],
		Operator: plain.Text(cmp.Or(tags["operator"], tags["brand"])),
		Limits:   tag.Limits(tags),
		Stay:     stayOf(kind, by, tags),
		EleM:     elevation(tags["ele"]),
		Contact:  contactOf(tags),
	}
	return p, len(p.Offers) > 0 || p.Stay != nil
}

// elevation reads metres above the sea: "1842", "1842.5 m", "-2"; nil if the
// text is none, or no height on land. Source: Key:ele of wiki.openstreetmap.org.
func elevation(text string) *float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "m")), 64)
	if err != nil || !(v > -450 && v < 9000) {
		return nil
	}
	return &v
}
