package data

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"ullage/planner/fact"
)

// routeFromKML reads the lines of a KML file (OGC KML 2.2, OGC 07-147r2:
// LineString; gx:Track of its extension namespace, which KML 2.3 took over).
// The root has been opened.
func routeFromKML(x *xmlFile) (Route, error) {
	var k kml
	for {
		t, err := x.next()
		if errors.Is(err, io.EOF) && len(x.path) == 0 {
			return k.finish()
		}
		if err != nil {
			return Route{}, err
		}
		switch t := t.(type) {
		case xml.StartElement:
			k.text.Reset()
			switch t.Name.Local {
			case "LineString", "Track":
				k.part = partReader{}
			case "NetworkLink":
				k.links++
			}
		case xml.CharData:
			k.text.Write(t)
		case xml.EndElement:
			if err := k.end(x, t.Name.Local); err != nil {
				return Route{}, err
			}
		}
	}
}

type kml struct {
	route                       Route
	part                        partReader
	text                        strings.Builder
	points, areas, links, short int
}

// end ends an element.
func (k *kml) end(x *xmlFile, name string) error {
	parent := x.open()
	text := k.text.String()
	k.text.Reset()
	switch name {
	case "name":
		if k.route.Name == "" && (parent == "Document" || parent == "Folder" || parent == "Placemark") {
			k.route.Name = strings.TrimSpace(text)
		}
	case "coordinates":
		if parent == "LineString" {
			return k.tuples(text)
		}
	case "coord":
		if parent == "Track" {
			return k.tuple(strings.Fields(text))
		}
	case "LineString", "Track":
		k.line()
	case "Point":
		k.points++
	case "Polygon":
		k.areas++
	case "LinearRing":
		if !strings.HasSuffix(parent, "BoundaryIs") { // of a Polygon, which counts by itself
			k.areas++
		}
	}
	return nil
}

// line ends a line.
func (k *kml) line() {
	if len(k.part.points) < 2 {
		k.short++
		return
	}
	k.route.add(k.part.points, k.part.heights)
}

// tuples adds the positions of a LineString.
func (k *kml) tuples(text string) error {
	for _, tuple := range strings.Fields(text) {
		if err := k.tuple(strings.Split(tuple, ",")); err != nil {
			return err
		}
	}
	return nil
}

// tuple adds a position: longitude, latitude and perhaps height.
func (k *kml) tuple(numbers []string) error {
	if len(numbers) < 2 {
		return fmt.Errorf("%q is no position; longitude and latitude are expected, with a comma and no space between them", strings.Join(numbers, ","))
	}
	if err := k.part.add(numbers[0], numbers[1]); err != nil {
		return err
	}
	if len(numbers) > 2 {
		k.part.height(numbers[2])
	}
	return nil
}

func (k *kml) finish() (Route, error) {
	if len(k.route.Parts) == 0 {
		if k.links > 0 {
			return Route{}, fact.Fail(errors.New("the file holds no line, only links to other files; open the file that holds the route"), onlyLinks, nil)
		}
		err := fmt.Errorf("the file holds no line of two points or more (%d points, %d areas); export the route as a LineString or track", k.points, k.areas)
		return Route{}, fact.Fail(err, noLine, nil)
	}
	k.route.noteShapes(k.points, k.areas)
	k.route.noteOut(shortLines, k.short)
	return k.route, nil
}
