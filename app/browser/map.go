package browser

import (
	"errors"
	"fmt"
	"math"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// MapReady calls f once the map library is loaded, at once if it is. Until
// then, and where it never loads, the page shows its drawn overview.
func MapReady(f func()) (stop func()) {
	if app.IsServer {
		return func() {}
	}
	if app.Window().Get("maplibregl").Truthy() {
		f()
		return func() {}
	}
	return listen(app.Window(), "maplibre-ready", map[string]any{"once": true}, func(app.Value) { f() })
}

// padding is the room around what a map shows at first, in pixels.
const padding = 24

// MapOptions say what a map shows at first.
type MapOptions struct {
	Sources []string         // names of the GeoJSON sources, empty at first
	Layers  []map[string]any // MapLibre style layers, bottom first
	Bounds  [4]float64       // west, south, east, north, degrees
	Label   string           // for people who do not see it
}

// A Shape is a line above a map: an SVG path in pixels from the map's upper
// left corner, and the class that gives it its look.
type Shape struct{ Class, Path string }

// A Map is a MapLibre map in an element of the page. It has no glyph server:
// text is drawn from the fonts of the device.
type Map struct {
	v        app.Value
	data     map[string]string // by source: what it shows, or will when the style is ready
	ready    bool
	stops    []func()
	pointer  string // CSS cursor
	refit    func() // nil once a person has moved the map
	sketch   app.Value
	shapes   []app.Value // of the sketch
	sketched []Shape     // what they show
}

// A MapEvent is where something happened on the map.
type MapEvent struct {
	Lng, Lat float64 // degrees
	X, Y     float64 // pixels from the map's upper left corner
	Index    int     // property "index" of the uppermost feature hit; −1 if none
}

// NewMap makes a map in container. It returns an error where the browser has
// no WebGL2 or the library is not loaded: then draw an overview instead.
func NewMap(container app.Value, opt MapOptions) (*Map, error) {
	if app.IsServer {
		return nil, ErrNoBrowser
	}
	lib := app.Window().Get("maplibregl")
	if !lib.Truthy() {
		return nil, errors.New("the map library is not loaded")
	}
	sources := map[string]any{}
	for _, s := range opt.Sources {
		sources[s] = map[string]any{"type": "geojson", "data": nothing()}
	}
	layers := make([]any, len(opt.Layers))
	for i, l := range opt.Layers {
		layers[i] = l
	}
	v, err := try(func() app.Value {
		return lib.Get("Map").New(map[string]any{
			"container":          container,
			"style":              map[string]any{"version": 8, "sources": sources, "layers": layers},
			"bounds":             []any{opt.Bounds[0], opt.Bounds[1], opt.Bounds[2], opt.Bounds[3]},
			"fitBoundsOptions":   map[string]any{"padding": padding},
			"attributionControl": false,
			"locale":             map[string]any{"Map.Title": opt.Label},
			"fadeDuration":       0,
			"maxPitch":           0, // see Projection
		})
	})
	if err != nil {
		return nil, fmt.Errorf("no map: %w", err)
	}
	m := &Map{v: v, data: map[string]string{}}
	m.refit = func() { m.fit(opt.Bounds, padding, 0) }
	m.on("resize", "", func(app.Value) {
		if m.refit != nil {
			m.refit()
		}
	})
	m.on("movestart", "", func(e app.Value) {
		if e.Get("originalEvent").Truthy() {
			m.refit = nil
		}
	})
	m.On("load", "", func(MapEvent) {
		m.ready = true
		for source, text := range m.data {
			if err := m.setData(source, text); err != nil {
				app.Log(err)
			}
		}
	})
	return m, nil
}

func nothing() map[string]any {
	return map[string]any{"type": "FeatureCollection", "features": []any{}}
}

// SetData replaces what a source shows by a GeoJSON text. The same text as
// before costs nothing: no tile is made, no frame drawn.
func (m *Map) SetData(source, geojson string) error {
	if was, set := m.data[source]; set && was == geojson {
		return nil
	}
	m.data[source] = geojson
	if !m.ready {
		return nil
	}
	return m.setData(source, geojson)
}

func (m *Map) setData(source, geojson string) error {
	_, err := try(func() app.Value {
		// The browser's parser: ours would take 30 times as long.
		data := app.Window().Get("JSON").Call("parse", geojson)
		return m.v.Call("getSource", source).Call("setData", data)
	})
	if err != nil {
		return fmt.Errorf("map source %s: %w", source, err)
	}
	return nil
}

// Repaint takes the paint of each layer as given: for another colour scheme.
func (m *Map) Repaint(layers []map[string]any) {
	for _, l := range layers {
		paint, _ := l["paint"].(map[string]any)
		for name, value := range paint {
			_, _ = try(func() app.Value { return m.v.Call("setPaintProperty", l["id"], name, value) })
		}
	}
}

// Fit moves the map so that the bounds (west, south, east, north) fill it
// within a padding in pixels, with so many more free below, and keeps them filling it when its size changes,
// until a person moves it. It does not animate.
func (m *Map) Fit(bounds [4]float64, padding, below int) {
	m.refit = func() { m.fit(bounds, padding, below) }
	m.refit()
}

func (m *Map) fit(bounds [4]float64, padding, below int) {
	room := map[string]any{"top": padding, "left": padding, "right": padding, "bottom": padding + below}
	_, _ = try(func() app.Value {
		return m.v.Call("fitBounds", []any{bounds[0], bounds[1], bounds[2], bounds[3]},
			map[string]any{"padding": room, "animate": false, "maxZoom": 14})
	})
}

// Resize takes the size of the container anew.
func (m *Map) Resize() { _, _ = try(func() app.Value { return m.v.Call("resize") }) }

// SetCursor sets the shape of the pointer over the map: "", crosshair, grab…
func (m *Map) SetCursor(shape string) {
	if m.pointer == shape {
		return
	}
	m.pointer = shape
	_, _ = try(func() app.Value {
		m.v.Call("getCanvas").Get("style").Set("cursor", shape)
		return app.Undefined()
	})
}

// On calls f on each event (click, mousemove, mouseleave…) over the features
// of a layer, or anywhere on the map if layer is "".
func (m *Map) On(event, layer string, f func(MapEvent)) {
	m.on(event, layer, func(e app.Value) { f(mapEvent(e)) })
}

func (m *Map) on(event, layer string, f func(app.Value)) (stop func()) {
	fn := app.FuncOf(func(_ app.Value, a []app.Value) any {
		defer guard("map " + event)
		f(first(a))
		return nil
	})
	args := []any{event}
	if layer != "" {
		args = append(args, layer)
	}
	args = append(args, fn)
	m.v.Call("on", args...)
	done := false
	stop = func() {
		if !done {
			done = true
			m.v.Call("off", args...)
			fn.Release()
		}
	}
	m.stops = append(m.stops, stop)
	return stop
}

// Drag lets a person move the features of a layer: begin says whether this
// one moves, move follows the pointer, end is called once at the last place.
func (m *Map) Drag(layer string, begin func(MapEvent) bool, move, end func(MapEvent)) {
	start := func(moving, over string) func(app.Value) {
		return func(e app.Value) {
			if touches := e.Get("originalEvent").Get("touches"); touches.Truthy() && touches.Get("length").Int() > 1 {
				return // two fingers zoom
			}
			if !begin(mapEvent(e)) {
				return
			}
			e.Call("preventDefault") // the map itself stays
			last := mapEvent(e)
			stop := m.on(moving, "", func(e app.Value) {
				last = mapEvent(e)
				move(last)
			})
			stopOver := func() {}
			stopOver = listen(app.Window(), over, nil, func(app.Value) {
				stop()
				stopOver()
				end(last)
			})
		}
	}
	m.on("mousedown", layer, start("mousemove", "mouseup"))
	m.on("touchstart", layer, start("touchmove", "touchend"))
}

// Zoom changes the scale by whole steps.
func (m *Map) Zoom(by int) {
	m.refit = nil
	_, _ = try(func() app.Value {
		return m.v.Call("zoomTo", m.v.Call("getZoom").Float()+float64(by))
	})
}

// Middle returns the position in the middle of the map: longitude, latitude.
func (m *Map) Middle() [2]float64 {
	c, err := try(func() app.Value { return m.v.Call("getCenter") })
	if err != nil {
		return [2]float64{}
	}
	return [2]float64{c.Get("lng").Float(), c.Get("lat").Float()}
}

// MetresPerPixel is the scale in the middle of the map, on a sphere of the
// earth's equator: 512 pixels are the world at zoom 0 (MapLibre).
func (m *Map) MetresPerPixel() float64 {
	zoom, err := try(func() app.Value { return m.v.Call("getZoom") })
	if err != nil {
		return 0
	}
	return 2 * math.Pi * 6378137 / 512 * math.Cos(m.Middle()[1]*math.Pi/180) / math.Exp2(zoom.Float())
}

// Close takes the map away and releases what belongs to it.
func (m *Map) Close() {
	for _, stop := range m.stops {
		stop()
	}
	m.stops = nil
	_, _ = try(func() app.Value { return m.v.Call("remove") })
}

func mapEvent(e app.Value) MapEvent {
	out := MapEvent{Index: -1}
	if ll := e.Get("lngLat"); ll.Truthy() {
		out.Lng, out.Lat = ll.Get("lng").Float(), ll.Get("lat").Float()
	}
	if p := e.Get("point"); p.Truthy() {
		out.X, out.Y = p.Get("x").Float(), p.Get("y").Float()
	}
	if fs := e.Get("features"); fs.Truthy() && fs.Get("length").Int() > 0 {
		props := fs.Index(0).Get("properties")
		if i := props.Get("index"); i.Type() == app.TypeNumber {
			out.Index = i.Int()
		}
	}
	return out
}
