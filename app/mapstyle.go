package page

// A palette is the colours of the map; the style sheet has the same ones for
// all the rest.
type palette struct{ land, sea, water, coast, road, edge, ink, soft, sheet, accent string }

var (
	light = palette{"#f1eee4", "#dbe7ea", "#c3d9dd", "#8f978f", "#d3ccbc", "#7d857f", "#17211f", "#4d5955", "#ffffff", "#0b4a8f"}
	dark  = palette{"#1a2220", "#0d1a20", "#12303a", "#5c6965", "#3b4542", "#7f8a85", "#e9ede8", "#aab5b0", "#171f1d", "#8fbdf5"}
)

// mapSources are the names of what the map shows, empty at first.
var mapSources = []string{"land", "backdrop", "route", "places", "stops", "draft", "cursor"}

// mapLayers are MapLibre style layers, bottom first. sea tells that the
// backdrop has islands to fill, so that what is left is water.
func mapLayers(dim, sea bool) []map[string]any {
	c := light
	if dim {
		c = dark
	}
	ground := c.land
	if sea {
		ground = c.sea
	}
	layer := func(id, kind, source string, filter []any, paint, layout map[string]any) map[string]any {
		l := map[string]any{"id": id, "type": kind, "paint": paint}
		if source != "" {
			l["source"] = source
		}
		if filter != nil {
			l["filter"] = filter
		}
		if layout != nil {
			l["layout"] = layout
		}
		return l
	}
	class := func(names ...any) []any { return []any{"in", []any{"get", "class"}, []any{"literal", names}} }
	wide := func(z7, z13 float64) []any {
		return []any{"interpolate", []any{"linear"}, []any{"zoom"}, 7, z7, 13, z13}
	}
	round := map[string]any{"line-join": "round", "line-cap": "round"}
	line := func(id string, width any, names ...any) map[string]any {
		return layer(id, "line", "backdrop", class(names...), map[string]any{"line-color": c.road, "line-width": width}, round)
	}
	words := func(id string, size any, color string, minZoom int, rank []any) map[string]any {
		l := layer(id, "symbol", "backdrop", []any{"all", class("town"), rank},
			map[string]any{"text-color": color, "text-halo-color": c.land, "text-halo-width": 1.6},
			map[string]any{"text-field": []any{"get", "name"}, "text-font": []any{"sans-serif"}, "text-size": size,
				"text-variable-anchor": []any{"top", "bottom", "left", "right"}, "text-radial-offset": 0.45, "text-justify": "auto"})
		l["minzoom"] = minZoom
		return l
	}
	rank := func(op string, n int) []any { return []any{op, []any{"get", "rank"}, n} }

	return []map[string]any{
		layer("ground", "background", "", nil, map[string]any{"background-color": ground}, nil),
		layer("land", "fill", "land", nil, map[string]any{"fill-color": c.land}, nil),
		layer("lake", "fill", "backdrop", []any{"all", class("water"), []any{"==", []any{"geometry-type"}, "Polygon"}}, map[string]any{"fill-color": c.water}, nil),
		layer("river", "line", "backdrop", class("river"), map[string]any{"line-color": c.water, "line-width": wide(0.8, 2.5)}, round),
		layer("coast", "line", "backdrop", class("coast"), map[string]any{"line-color": c.coast, "line-width": 1}, round),
		layer("ferry", "line", "backdrop", class("ferry"), map[string]any{"line-color": c.edge, "line-width": 1, "line-dasharray": []any{4, 4}}, nil),
		line("lanes", wide(0.4, 2), "secondary", "tertiary"),
		line("roads", wide(1, 3.5), "primary", "trunk"),
		line("motorways", wide(1.6, 5), "motorway"),
		layer("route-casing", "line", "route", nil, map[string]any{"line-color": c.sheet, "line-width": 7}, round),
		layer("route", "line", "route", nil, map[string]any{"line-color": c.accent, "line-width": 3.5}, round),
		layer("town-dots", "circle", "backdrop", []any{"all", class("town"), rank("<=", 2)}, map[string]any{"circle-radius": 2.2, "circle-color": c.soft}, nil),
		words("villages", 11.5, c.soft, 9, rank(">=", 3)),
		words("towns", 12.5, c.ink, 6, rank("==", 2)),
		words("cities", 14, c.ink, 3, rank("<=", 1)),
		layer("route-reach", "line", "route", nil, map[string]any{"line-color": c.accent, "line-width": 28, "line-opacity": 0}, nil),
		layer("places", "circle", "places", nil, map[string]any{
			"circle-radius": wide(2.2, 5), "circle-color": c.sheet, "circle-stroke-width": 1.3,
			"circle-stroke-color": []any{"case", []any{"get", "out"}, c.road, c.soft}}, nil),
		layer("places-reach", "circle", "places", nil, map[string]any{"circle-radius": 14, "circle-opacity": 0}, nil),
		layer("cursor-halo", "circle", "cursor", nil, map[string]any{"circle-radius": 15, "circle-color": c.accent, "circle-opacity": 0.25}, nil),
		layer("stops", "circle", "stops", nil, map[string]any{
			"circle-radius": 11, "circle-stroke-width": 2,
			"circle-color":        []any{"case", []any{"get", "stay"}, c.sheet, c.ink},
			"circle-stroke-color": []any{"case", []any{"get", "stay"}, c.ink, c.sheet}}, nil),
		layer("stop-numbers", "symbol", "stops", nil,
			map[string]any{"text-color": []any{"case", []any{"get", "stay"}, c.ink, c.sheet}},
			map[string]any{"text-field": []any{"to-string", []any{"get", "n"}}, "text-font": []any{"sans-serif"}, "text-size": 12.5,
				"text-allow-overlap": true, "text-padding": 6}),
		layer("cursor", "circle", "cursor", nil, map[string]any{
			"circle-radius": 6, "circle-color": c.accent, "circle-stroke-color": c.sheet, "circle-stroke-width": 2}, nil),
		layer("draft", "line", "draft", []any{"==", []any{"geometry-type"}, "LineString"},
			map[string]any{"line-color": c.accent, "line-width": 3, "line-dasharray": []any{2, 1.5}}, nil),
		layer("draft-points", "circle", "draft", []any{"==", []any{"geometry-type"}, "Point"}, map[string]any{
			"circle-radius": 8, "circle-color": c.sheet, "circle-stroke-color": c.accent, "circle-stroke-width": 3}, nil),
	}
}
