package mapview

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/planner/byroad"
)

// sketch is what is drawn above the map while the point held of a draft is
// under the pointer: the legs before the drag, which the map still shows, made
// pale, the legs now, in pixels, and the point on top. at tells where a position
// is on the map.
func sketch(held orb.Point, before, now []byroad.Leg, at func(lng, lat float64) (x, y float64)) (out []browser.Shape) {
	add := func(class string, legs []byroad.Leg) {
		for _, l := range legs {
			look := class
			if l.Drawn && class == "leg" {
				look = "leg off"
			}
			out = append(out, browser.Shape{Class: look, Path: pathOf(l.Line, at)})
		}
	}
	add("before", before)
	add("casing", now)
	add("leg", now)
	x, y := at(held[0], held[1])
	b := appendPixel([]byte{'M'}, x-heldPx, y)
	return append(out, browser.Shape{Class: "held", Path: string(append(b, "a8 8 0 1 0 16 0a8 8 0 1 0-16 0"...))})
}

// heldPx is the radius of a point, as on the map.
const heldPx = 8

// pathOf is a line as SVG path data. What is within a pixel of the point before
// is left out: a leg of a hundred kilometres has thousands of bends.
func pathOf(line orb.LineString, at func(lng, lat float64) (x, y float64)) string {
	var b []byte
	lastX, lastY := math.Inf(1), math.Inf(1)
	for i, p := range line {
		x, y := at(p[0], p[1])
		if i > 0 && i < len(line)-1 && math.Hypot(x-lastX, y-lastY) < 1 {
			continue
		}
		b = append(b, "ML"[min(i, 1)])
		b = appendPixel(b, x, y)
		lastX, lastY = x, y
	}
	return string(b)
}

func appendPixel(b []byte, x, y float64) []byte {
	b = strconv.AppendFloat(b, x, 'f', 1, 64)
	return strconv.AppendFloat(append(b, ' '), y, 'f', 1, 64)
}
