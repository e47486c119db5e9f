package data

import (
	"fmt"

	"github.com/paulmach/orb"
)

// routeFromGeoJSON collects the lines of any GeoJSON object (RFC 7946).
func routeFromGeoJSON(text []byte) (Route, error) {
	root, err := parseJSON(text)
	if err != nil {
		return Route{}, err
	}
	g := geoJSON{text: text}
	if err := g.object(root); err != nil {
		return Route{}, err
	}
	if len(g.route.Parts) == 0 {
		return Route{}, fmt.Errorf("line 1: the file holds no line (%d points, %d areas); export the route as a LineString", g.points, g.areas)
	}
	if g.points > 0 || g.areas > 0 {
		g.route.note("left out: %d points and %d areas; only lines make a route", g.points, g.areas)
	}
	g.route.tidyHeights()
	return g.route, nil
}

type geoJSON struct {
	text          []byte
	route         Route
	points, areas int // left out
}

func (g *geoJSON) fail(n node, format string, args ...any) error {
	return at1(g.text, n.offset, fmt.Errorf(format, args...))
}

// object reads a FeatureCollection, Feature or geometry.
func (g *geoJSON) object(n node) error {
	if n.kind != '{' {
		return g.fail(n, "a GeoJSON object is expected here, starting with {")
	}
	kind := n.get("type")
	if kind.kind != '"' {
		return g.fail(n, "the object has no type; a route is a LineString, MultiLineString, Feature or FeatureCollection")
	}
	switch kind.text {
	case "FeatureCollection":
		g.name(n.get("name"))
		return g.each(n, "features")
	case "GeometryCollection":
		return g.each(n, "geometries")
	case "Feature":
		geometry := n.get("geometry")
		if geometry.kind == 'n' { // allowed: a feature without place
			return nil
		}
		if geometry.kind == 0 {
			return g.fail(n, "the feature has no geometry")
		}
		before := len(g.route.Parts)
		if err := g.object(geometry); err != nil {
			return err
		}
		if len(g.route.Parts) > before {
			g.name(n.get("properties").get("name"))
		}
		return nil
	case "LineString":
		return g.line(n.get("coordinates"))
	case "MultiLineString":
		lines := n.get("coordinates")
		if lines.kind != '[' || lines.nums != nil {
			return g.fail(lines, "the coordinates of a MultiLineString are lists of positions")
		}
		for _, line := range lines.items {
			if err := g.line(line); err != nil {
				return err
			}
		}
		return nil
	case "Point":
		g.points++
	case "MultiPoint":
		g.points += len(n.get("coordinates").items)
	case "Polygon", "MultiPolygon":
		g.areas++
	case "Topology":
		return g.fail(kind, "this is TopoJSON; export the route as GeoJSON")
	default:
		return g.fail(kind, "unknown type %q; a route is a LineString, MultiLineString, Feature or FeatureCollection", kind.text)
	}
	return nil
}

func (g *geoJSON) each(n node, key string) error {
	list := n.get(key)
	if list.kind != '[' || list.nums != nil {
		return g.fail(list, "%s must be a list of objects", key)
	}
	for _, item := range list.items {
		if err := g.object(item); err != nil {
			return err
		}
	}
	return nil
}

func (g *geoJSON) name(n node) {
	if g.route.Name == "" {
		g.route.Name = n.text
	}
}

func (g *geoJSON) line(n node) error {
	if n.kind != '[' || n.nums != nil {
		return g.fail(n, "the coordinates of a line are a list of positions")
	}
	if len(n.items) < 2 {
		return g.fail(n, "a line needs two positions or more, here are %d", len(n.items))
	}
	line, heights := make(orb.LineString, len(n.items)), make([]float64, len(n.items))
	for i, item := range n.items {
		if item.kind != '[' || len(item.nums) < 2 {
			return g.fail(item, "a position is a list of numbers: [longitude, latitude]")
		}
		p, err := checkPoint(item.nums[0], item.nums[1])
		if err != nil {
			return g.fail(item, "%w", err)
		}
		line[i], heights[i] = p, nanIfMissing(item.nums, 2)
	}
	g.route.add(line, heights)
	return nil
}
