package page

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"

	"ullage/app/draw"
	"ullage/planner/trip"
)

// stopsGPX writes the stops as waypoints and the route as a route, for a
// satnav or any map (GPX 1.1, https://www.topografix.com/GPX/1/1/gpx.xsd).
func stopsGPX(t trip.Trip, it trip.Itinerary) ([]byte, error) {
	type point struct {
		Lat  float64 `xml:"lat,attr"`
		Lon  float64 `xml:"lon,attr"`
		Name string  `xml:"name,omitempty"`
		Desc string  `xml:"desc,omitempty"`
	}
	type route struct {
		Name   string  `xml:"name,omitempty"`
		Points []point `xml:"rtept"`
	}
	doc := struct {
		XMLName xml.Name `xml:"http://www.topografix.com/GPX/1/1 gpx"`
		Version string   `xml:"version,attr"`
		Creator string   `xml:"creator,attr"`
		Stops   []point  `xml:"wpt"`
		Route   route    `xml:"rte"`
	}{Version: "1.1", Creator: say.title, Route: route{Name: t.Name}}
	for _, n := range draw.Numbers(it.Days) {
		c := n.Call
		doc.Stops = append(doc.Stops, point{c.Point[1], c.Point[0], fmt.Sprintf("%d %s", n.N, nameOf(c)), toDo(it, c)})
	}
	for _, p := range t.Route {
		doc.Route.Points = append(doc.Route.Points, point{Lat: p[1], Lon: p[0]})
	}
	var b bytes.Buffer
	b.WriteString(xml.Header)
	e := xml.NewEncoder(&b)
	e.Indent("", " ")
	if err := e.Encode(doc); err != nil {
		return nil, fmt.Errorf("write GPX: %w", err)
	}
	return b.Bytes(), nil
}

// toDo says in a line when to be at a stop and what to do there.
func toDo(it trip.Itinerary, c trip.Call) string {
	parts := []string{clock(c.ArriveMin)}
	if c.Night {
		parts = append(parts, nights(c.Nights))
	}
	for _, t := range c.Tasks {
		name := t.Tank
		for _, s := range it.Strips {
			if s.Tank == t.Tank {
				name = s.Name
			}
		}
		parts = append(parts, fmt.Sprintf("%s %s %s", t.Verb, amount(t.Amount, t.Unit), name))
	}
	return strings.Join(parts, ", ")
}
