package browser

import (
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Sketch draws shapes above the map in place of those before, for what follows
// the pointer: it costs no frame of the map, which without a graphics card are
// a tenth of a second each. It does not move with the map.
func (m *Map) Sketch(shapes ...Shape) {
	_, _ = try(func() app.Value { return m.draw(shapes) })
}

func (m *Map) draw(shapes []Shape) app.Value {
	if m.sketch == nil {
		m.sketch = element("svg")
		m.sketch.Call("setAttribute", "class", "sketch")
		m.sketch.Call("setAttribute", "aria-hidden", "true")
		m.v.Call("getCanvasContainer").Call("appendChild", m.sketch)
	}
	for i := len(m.shapes); i < len(shapes); i++ {
		m.shapes = append(m.shapes, element("path"))
		m.sketch.Call("appendChild", m.shapes[i])
	}
	for i, path := range m.shapes {
		s := Shape{}
		if i < len(shapes) {
			s = shapes[i]
		}
		if i < len(m.sketched) && m.sketched[i] == s {
			continue
		}
		path.Call("setAttribute", "class", s.Class)
		path.Call("setAttribute", "d", s.Path)
	}
	m.sketched = append(make([]Shape, 0, len(m.shapes)), shapes...)[:len(m.shapes)]
	return app.Undefined()
}

func element(name string) app.Value {
	return app.Window().Get("document").Call("createElementNS", "http://www.w3.org/2000/svg", name)
}

// Projection returns where positions are on the map as it stands now, in pixels
// from its upper left corner. The map may be turned but is never tilted, so two
// points tell the place of all.
func (m *Map) Projection() func(lng, lat float64) (x, y float64) {
	const beside = 1e-3 // of the world
	middle := m.Middle()
	x0, y0 := mercator(middle[0], middle[1])
	ax, ay := m.project(middle[0], middle[1])
	bx, by := m.project(middle[0]+360*beside, middle[1])
	east, south := (bx-ax)/beside, (by-ay)/beside // pixels for the world's width to the east
	return func(lng, lat float64) (x, y float64) {
		x, y = mercator(lng, lat)
		x, y = x-x0, y-y0
		return ax + x*east - y*south, ay + x*south + y*east
	}
}

// mercator is a position on the square of the world, x to the east, y to the south.
func mercator(lng, lat float64) (x, y float64) {
	return (lng + 180) / 360, (1 - math.Asinh(math.Tan(lat*math.Pi/180))/math.Pi) / 2
}

func (m *Map) project(lng, lat float64) (x, y float64) {
	p, err := try(func() app.Value { return m.v.Call("project", []any{lng, lat}) })
	if err != nil {
		return 0, 0
	}
	return p.Get("x").Float(), p.Get("y").Float()
}

// Settled calls f once the map has drawn all that it was given, or begins to move.
func (m *Map) Settled(f func()) {
	var stops []func()
	done := func(app.Value) {
		for _, stop := range stops {
			stop()
		}
		f()
	}
	stops = append(stops, m.on("idle", "", done), m.on("movestart", "", done))
}
