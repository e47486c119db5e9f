package data

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"ullage/planner/fact"
)

// routeFromGPX reads the tracks of a GPX file (GPX 1.1 schema,
// https://www.topografix.com/GPX/1/1/; 1.0 has the same elements), or its
// routes if there are no tracks. The root has been opened.
func routeFromGPX(x *xmlFile) (Route, error) {
	var g gpx
	for {
		t, err := x.next()
		if errors.Is(err, io.EOF) && len(x.path) == 0 {
			return g.finish()
		}
		if err != nil {
			return Route{}, err
		}
		switch t := t.(type) {
		case xml.StartElement:
			err = g.start(x, t)
		case xml.CharData:
			g.text.Write(t)
		case xml.EndElement:
			g.end(x, t)
		}
		if err != nil {
			return Route{}, err
		}
	}
}

type gpx struct {
	tracks, routes          Route
	part                    partReader
	text                    strings.Builder
	name                    string // of the whole file
	waypoints, short, empty int
}

func (g *gpx) start(x *xmlFile, t xml.StartElement) error {
	g.text.Reset()
	switch t.Name.Local {
	case "trkseg", "rte":
		g.part = partReader{}
	case "wpt":
		g.waypoints++
	case "trkpt", "rtept":
		return g.point(t)
	case "rpt":
		// Points of the road between two route points, in an extension that
		// many devices write; without them a route is straight lines.
		if x.inside("rtept") {
			return g.point(t)
		}
	}
	return nil
}

func (g *gpx) point(t xml.StartElement) error {
	var lat, lon string
	for _, a := range t.Attr {
		switch a.Name.Local {
		case "lat":
			lat = a.Value
		case "lon":
			lon = a.Value
		}
	}
	return g.part.add(lon, lat)
}

// end ends an element.
func (g *gpx) end(x *xmlFile, t xml.EndElement) {
	parent := x.open()
	text := strings.TrimSpace(g.text.String())
	switch t.Name.Local {
	case "ele":
		if parent == "trkpt" || parent == "rtept" {
			g.part.height(text)
		}
	case "name":
		switch {
		case parent == "trk" && g.tracks.Name == "":
			g.tracks.Name = text
		case parent == "rte" && g.routes.Name == "":
			g.routes.Name = text
		case (parent == "metadata" || parent == "gpx") && g.name == "":
			g.name = text
		}
	case "trkseg":
		g.close(&g.tracks)
	case "rte":
		g.close(&g.routes)
	}
}

func (g *gpx) close(r *Route) {
	switch len(g.part.points) {
	case 0:
		g.empty++
	case 1:
		g.short++
	default:
		r.add(g.part.points, g.part.heights)
	}
	g.part = partReader{}
}

func (g *gpx) finish() (Route, error) {
	r := g.tracks
	switch {
	case len(g.tracks.Parts) == 0 && len(g.routes.Parts) > 0:
		r = g.routes
	case len(g.tracks.Parts) == 0 && g.waypoints > 0:
		err := fmt.Errorf("the file holds %d waypoints but no track and no route; export the track, or join the waypoints to a route", g.waypoints)
		return Route{}, fact.Fail(err, onlyWaypoints, fact.V{"n": fact.Count(g.waypoints)})
	case len(g.tracks.Parts) == 0:
		return Route{}, fact.Fail(errors.New("the file holds no track and no route of two points or more; export the track"), noLine, nil)
	case len(g.routes.Parts) > 0:
		r.noteOut(routesBeside, len(g.routes.Parts))
	}
	if r.Name == "" {
		r.Name = g.name
	}
	r.noteOut(wayPoints, g.waypoints)
	r.noteOut(shortSegments, g.empty+g.short)
	return r, nil
}
