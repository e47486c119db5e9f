package itinerary

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/app/show"
	"ullage/planner/trip"
)

// StopsGPX writes the stops as waypoints, where one drives in, and the route as
// a route, for a satnav or any map (GPX 1.1, https://www.topografix.com/GPX/1/1/gpx.xsd).
// It is put together as text: an encoder of structs is 60 kB of program.
func StopsGPX(v say.Voice, t trip.Trip, it trip.Itinerary) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"Ullage\">\n", xml.Header)
	for _, n := range draw.Numbers(it.Days) {
		at := entry(n.Call) // a satnav leads there by road
		fmt.Fprintf(&b, " <wpt lat=\"%v\" lon=\"%v\"><name>%d %s</name><desc>%s</desc>%s</wpt>\n",
			at[1], at[0], n.N, escaped(show.Called(v, n.Call)), escaped(toDo(v, it, n.Call)), link(n.Call.Contact.Website))
	}
	fmt.Fprintf(&b, " <rte><name>%s</name>\n", escaped(t.Name))
	for _, p := range t.Route {
		fmt.Fprintf(&b, "  <rtept lat=\"%v\" lon=\"%v\"/>\n", p[1], p[0])
	}
	b.WriteString(" </rte>\n</gpx>\n")
	return b.Bytes()
}

// link is an address of the web as a waypoint has it; nothing without one.
func link(address string) string {
	if address == "" {
		return ""
	}
	return "<link href=\"" + escaped(address) + "\"/>"
}

// escaped is text as it stands in XML.
func escaped(text string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(text)) // a builder takes all
	return b.String()
}

// toDo says in a line when to be at a stop and what to do there.
func toDo(v say.Voice, it trip.Itinerary, c trip.Call) string {
	parts := []string{v.Clock(c.ArriveMin)}
	if c.Night {
		parts = append(parts, show.Nights(v, c.Nights))
	}
	for _, t := range c.Tasks {
		parts = append(parts, show.When(v, c, t, show.Task(v, t, stripOf(it.Strips, t.Tank).Name)))
	}
	parts = append(parts, c.Contact.All()...)
	return strings.Join(parts, ", ")
}
