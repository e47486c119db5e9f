package osm

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"sort"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"ullage/data"
	"ullage/data/osm/file"
	"ullage/data/strict"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file reads OpenStreetMap objects as GeoJSON features: what a web front end of Overpass exports, or a converter makes of an
// extract. Their properties are the tags, or hold them as "tags"; the object is named by the feature's id or by @id.

// noPlaces: none of {n} features is a place; their properties begin with {list}.
const noPlaces fact.Kind = "places.none"

// ReadGeoJSON reads places as this program writes them, or OpenStreetMap objects as features. name is used in errors. What
// is no place is passed over; an error says where the text is wrong, or that none of it is a place.
func ReadGeoJSON(name string, r io.Reader) (Extract, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return Extract{}, wrong.In(name, err)
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	own, err := data.ReadPlaces(name, bytes.NewReader(text))
	if errors.Is(err, data.ErrForeign) {
		return readTagged(name, text)
	}
	x := Extract{Places: own, Objects: len(own)}
	for _, p := range own {
		x.Date = max(x.Date, p.Date)
	}
	return x, err
}

func readTagged(name string, text []byte) (Extract, error) {
	root, err := strict.Parse(text)
	if err != nil {
		return Extract{}, wrong.In(name, err)
	}
	b := builder{date: dateOf(root)}
	features := root.Get("features").Items
	if root.Get("type").Text == "Feature" {
		features = []strict.Value{root}
	}
	var all []shaped
	for i, f := range features {
		ls, err := shapeOf(f.Get("geometry"))
		if err != nil {
			return Extract{}, wrong.In(name, strict.At(text, f.Offset, err))
		}
		if len(ls) > 0 {
			all = append(all, shaped{objectOf(f, i), ls})
		}
	}
	sort.SliceStable(all, func(a, b int) bool { // as in an extract
		x, y := all[a], all[b]
		return rank(x.typ) < rank(y.typ) || x.typ == y.typ && x.id < y.id
	})
	for i, o := range all {
		if i == 0 || o.typ != all[i-1].typ || o.id != all[i-1].id {
			b.object(o)
		}
	}
	if x := b.done(); len(x.Places) > 0 || b.shut > 0 {
		return x, nil
	}
	err = fmt.Errorf("none of its %d features has the tags of a place (amenity=fuel, tourism=caravan_site, amenity=sanitary_dump_station …); their properties begin with %s",
		len(features), strings.Join(someKeys(features), ", "))
	return Extract{}, wrong.In(name, fact.Fail(err, noPlaces, fact.V{"n": fact.Count(len(features)), "list": fact.Texts(someKeys(features))}))
}

// TaggedPlace tells whether the properties of a feature, as JSON, are the tags of a place.
func TaggedPlace(properties []byte) bool {
	p, err := strict.Parse(properties)
	if err != nil {
		return false
	}
	kind, _ := kindOf(tagsOf(p))
	return kind != ""
}

// tagsOf are the tags among the properties of a feature.
func tagsOf(properties strict.Value) file.Tags {
	if inner := properties.Get("tags"); inner.Kind == '{' {
		properties = inner
	}
	tags := file.Tags{}
	for key, v := range properties.Members() {
		if v.Kind == '"' && !strings.HasPrefix(key, "@") {
			tags[key] = v.Text
		}
	}
	return tags
}

// shaped is an object on a point, line or ring.
type shaped struct {
	object
	shape orb.LineString
}

// rank orders types as an extract does; features without a name of their own come last.
func rank(typ byte) int { return strings.IndexByte("nwrf", typ) }

func (b *builder) object(o shaped) {
	b.x.Objects++
	if len(o.shape) == 1 {
		b.place(o.object, o.shape[0])
		return
	}
	b.placeOn(o.object, o.shape, nil)
}

// dateOf is the day of the data, where an export says it: "timestamp": "2025-01-19T20:21:22Z".
func dateOf(root strict.Value) trip.Date {
	d, _ := trip.ParseDate(first(root.Get("timestamp").Text, 10))
	return d
}

func first(s string, n int) string { return s[:min(n, len(s))] }

// objectOf is the object of a feature; one that does not say which it is gets its number in the file.
func objectOf(f strict.Value, i int) object {
	p := f.Get("properties")
	o := object{typ: 'f', id: int64(i + 1), tags: tagsOf(p)}
	for _, id := range []strict.Value{p.Get("@id"), f.Get("id"), p.Get("id")} {
		if typ, number, ok := named(id, p.Get("type").Text, f.Get("geometry").Get("type").Text); ok {
			o.typ, o.id = typ, number
			return o
		}
	}
	return o
}

// named reads the name of an object: "way/123", or 123 of a type, of which the shape tells where nothing else does.
func named(id strict.Value, stated, shape string) (typ byte, number int64, ok bool) {
	kind, digits, both := strings.Cut(id.Text, "/")
	if id.Kind == '0' && id.Nums[0] == math.Trunc(id.Nums[0]) && math.Abs(id.Nums[0]) < 1<<53 {
		digits = strconv.FormatInt(int64(id.Nums[0]), 10)
		if kind = stated; kind == "" {
			kind = map[bool]string{true: "node", false: "way"}[shape == "Point"]
		}
		both = true
	}
	number, err := strconv.ParseInt(digits, 10, 64)
	if !both || err != nil {
		return 0, 0, false
	}
	switch kind {
	case "node", "way", "relation":
		return kind[0], number, true
	}
	return 0, 0, false
}

// shapeOf is the line or ring of a geometry, of several the longest; a point is a line of one. nil: it has none.
func shapeOf(g strict.Value) (orb.LineString, error) {
	c := g.Get("coordinates")
	switch g.Get("type").Text {
	case "Point":
		return points([]strict.Value{c})
	case "LineString":
		return points(c.Items)
	case "Polygon":
		return longest(c.Items[:min(1, len(c.Items))])
	case "MultiLineString":
		return longest(c.Items)
	case "MultiPolygon":
		var rings []strict.Value
		for _, polygon := range c.Items {
			rings = append(rings, polygon.Items[:min(1, len(polygon.Items))]...)
		}
		return longest(rings)
	}
	return nil, nil
}

func longest(lines []strict.Value) (orb.LineString, error) {
	var all []orb.LineString
	for _, line := range lines {
		ls, err := points(line.Items)
		if err != nil {
			return nil, err
		}
		all = append(all, ls)
	}
	if len(all) == 0 {
		return nil, nil
	}
	return largest(all), nil
}

func points(list []strict.Value) (orb.LineString, error) {
	ls := make(orb.LineString, len(list))
	for i, v := range list {
		switch {
		case len(v.Nums) < 2:
			return nil, fmt.Errorf("a position is a list of numbers: [longitude, latitude]")
		case !(math.Abs(v.Nums[0]) <= 180 && math.Abs(v.Nums[1]) <= 90):
			return nil, fmt.Errorf("%v, %v is no longitude and latitude in degrees", v.Nums[0], v.Nums[1])
		}
		ls[i] = orb.Point{v.Nums[0], v.Nums[1]}
	}
	return ls, nil
}

// someKeys are the first properties of the first feature that has any.
func someKeys(features []strict.Value) []string {
	for _, f := range features {
		var keys []string
		for key := range f.Get("properties").Members() {
			if keys = append(keys, strconv.Quote(key)); len(keys) == 4 {
				break
			}
		}
		if len(keys) > 0 {
			return keys
		}
	}
	return []string{"nothing"}
}
