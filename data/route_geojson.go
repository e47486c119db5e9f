package data

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"ullage/data/strict"
	"ullage/planner/fact"
)

// routeFromGeoJSON collects the lines of any GeoJSON object (RFC 7946).
func routeFromGeoJSON(text []byte) (Route, error) {
	root, err := strict.Parse(text)
	if err != nil {
		return Route{}, err
	}
	g := geoJSON{text: text}
	if err := g.object(root); err != nil {
		return Route{}, err
	}
	if len(g.route.Parts) == 0 {
		return Route{}, fact.Fail(fmt.Errorf("line 1: the file holds no line (%d points, %d areas); export the route as a LineString", g.points, g.areas), noLine, nil)
	}
	g.route.noteShapes(g.points, g.areas)
	g.route.tidyHeights()
	return g.route, nil
}

type geoJSON struct {
	text          []byte
	route         Route
	points, areas int // left out
}

func (g *geoJSON) fail(n strict.Value, format string, args ...any) error {
	return strict.At(g.text, n.Offset, fmt.Errorf(format, args...))
}

// object reads a FeatureCollection, Feature or geometry.
func (g *geoJSON) object(n strict.Value) error {
	if n.Kind != '{' {
		return g.fail(n, "a GeoJSON object is expected here, starting with {")
	}
	kind := n.Get("type")
	if kind.Kind != '"' {
		return g.fail(n, "the object has no type; a route is a LineString, MultiLineString, Feature or FeatureCollection")
	}
	switch kind.Text {
	case "FeatureCollection":
		g.name(n.Get("name"))
		return g.each(n, "features")
	case "GeometryCollection":
		return g.each(n, "geometries")
	case "Feature":
		return g.feature(n)
	case "LineString":
		return g.line(n.Get("coordinates"))
	case "MultiLineString":
		return g.lines(n.Get("coordinates"))
	case "Point":
		g.points++
	case "MultiPoint":
		g.points += len(n.Get("coordinates").Items)
	case "Polygon", "MultiPolygon":
		g.areas++
	case "Topology":
		return g.fail(kind, "this is TopoJSON; export the route as GeoJSON")
	default:
		return g.fail(kind, "unknown type %q; a route is a LineString, MultiLineString, Feature or FeatureCollection", kind.Text)
	}
	return nil
}

// feature reads a geometry and, if that has lines, its name.
func (g *geoJSON) feature(n strict.Value) error {
	geometry := n.Get("geometry")
	if geometry.Kind == 'n' { // allowed: a feature without place
		return nil
	}
	if geometry.Kind == 0 {
		return g.fail(n, "the feature has no geometry")
	}
	before := len(g.route.Parts)
	if err := g.object(geometry); err != nil {
		return err
	}
	if len(g.route.Parts) > before {
		g.name(n.Get("properties").Get("name"))
	}
	return nil
}

func (g *geoJSON) each(n strict.Value, key string) error {
	list := n.Get(key)
	if list.Kind != '[' || list.Nums != nil {
		return g.fail(list, "%s must be a list of objects", key)
	}
	for _, item := range list.Items {
		if err := g.object(item); err != nil {
			return err
		}
	}
	return nil
}

func (g *geoJSON) name(n strict.Value) {
	if g.route.Name == "" {
		g.route.Name = n.Text
	}
}

func (g *geoJSON) lines(n strict.Value) error {
	if n.Kind != '[' || n.Nums != nil {
		return g.fail(n, "the coordinates of a MultiLineString are lists of positions")
	}
	for _, line := range n.Items {
		if err := g.line(line); err != nil {
			return err
		}
	}
	return nil
}

func (g *geoJSON) line(n strict.Value) error {
	if n.Kind != '[' || n.Nums != nil {
		return g.fail(n, "the coordinates of a line are a list of positions")
	}
	if len(n.Items) < 2 {
		return g.fail(n, "a line needs two positions or more, here are %d", len(n.Items))
	}
	line, heights := make(orb.LineString, len(n.Items)), make([]float64, len(n.Items))
	for i, item := range n.Items {
		if item.Kind != '[' || len(item.Nums) < 2 {
			return g.fail(item, "a position is a list of numbers: [longitude, latitude]")
		}
		p, err := checkPoint(item.Nums[0], item.Nums[1])
		if err != nil {
			return g.fail(item, "%w", err)
		}
		line[i], heights[i] = p, nanIfMissing(item.Nums, 2)
	}
	g.route.add(line, heights)
	return nil
}

func nanIfMissing(nums []float64, i int) float64 {
	if i < len(nums) {
		return nums[i]
	}
	return math.NaN()
}
