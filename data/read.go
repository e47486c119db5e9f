package data

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"

	"ullage/data/foreign"
	"ullage/data/plain"
	"ullage/data/wrong"
	"ullage/planner/fact"
)

// maxRouteBytes bounds what is read: a track of ten points per second over
// three weeks is about this large.
const maxRouteBytes = 64 << 20

// Kinds of what keeps a file from being a route.
const (
	noRouteFile fact.Kind = "route.no_file" // it is of another kind
	mapAsRoute  fact.Kind = "route.is_map"  // it is OpenStreetMap data
	routePacked fact.Kind = "route.packed"  // it is compressed
	routeLarge  fact.Kind = "route.large"   // {most}
)

// ReadRoute reads a route from GeoJSON (RFC 7946), GPX 1.0 or 1.1, or KML 2.2;
// which of them is found from the content, name is for errors only.
//
// Every line counts as a part, in the order of the file: of GeoJSON
// LineString and MultiLineString, of GPX track segments, or routes if there
// are no tracks, of KML LineString and gx:Track. Points and areas are left
// out and noted. The text may be UTF-8, UTF-16 or, as XML, ISO-8859-1.
//
// The error names the file, line and column. Files over 64 MB are refused.
func ReadRoute(name string, r io.Reader) (Route, error) {
	all, err := io.ReadAll(io.LimitReader(r, maxRouteBytes+1))
	if err != nil {
		return Route{}, wrong.In(name, err)
	}
	if len(all) > maxRouteBytes {
		return Route{}, wrong.In(name, fact.Fail(fmt.Errorf("more than %d MB is too much for a route; simplify it, or cut it to the days that matter", maxRouteBytes>>20), routeLarge, fact.V{"most": fact.Quantity(maxRouteBytes>>20, "MB", 0)}))
	}
	if err := foreign.Recognise(name, all); err != nil {
		return Route{}, err
	}
	text, err := utf8Text(all)
	if err != nil {
		return Route{}, wrong.In(name, err)
	}
	var route Route
	switch trimmed := bytes.TrimSpace(text); {
	case len(trimmed) == 0:
		return Route{}, wrong.In(name, wrong.ErrEmpty)
	case trimmed[0] == '{':
		route, err = routeFromGeoJSON(text)
	case trimmed[0] == '<':
		route, err = routeFromXML(text)
	case bytes.HasPrefix(all, []byte{0x1f, 0x8b}) || bytes.HasPrefix(all, []byte("BZh")):
		err = fact.Fail(errors.New("the file is compressed; unpack it first"), routePacked, nil)
	default:
		err = fact.Fail(errors.New("line 1: neither GeoJSON, GPX nor KML; export the route as one of them"), noRouteFile, nil)
	}
	if err != nil {
		return Route{}, wrong.In(name, err)
	}
	route.Name = plain.Text(route.Name)
	route.noteGaps()
	return route, nil
}

// routeFromXML reads GPX or KML, whichever the root element names.
func routeFromXML(text []byte) (Route, error) {
	x := &xmlFile{Decoder: xml.NewDecoder(bytes.NewReader(text))}
	x.CharsetReader = charsetReader
	root, err := x.next()
	if err != nil {
		return Route{}, x.wrap(err)
	}
	var route Route
	switch start, _ := root.(xml.StartElement); start.Name.Local {
	case "gpx":
		route, err = routeFromGPX(x)
	case "kml", "Document", "Folder", "Placemark": // some programs leave out the root
		route, err = routeFromKML(x)
	case "osm":
		err = fact.Fail(errors.New("these are OpenStreetMap data, not a route; open them as places"), mapAsRoute, nil)
	default:
		err = fact.Fail(fmt.Errorf("the root element is <%s>; a route is GPX (<gpx>), KML (<kml>) or GeoJSON", start.Name.Local), noRouteFile, nil)
	}
	if err != nil {
		return Route{}, x.wrap(err)
	}
	route.tidyHeights()
	return route, nil
}
