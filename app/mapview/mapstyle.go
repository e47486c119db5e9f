package mapview

import (
	"encoding/json"
	"strings"
)

// A palette is the colours of the map; the style sheet has the same ones for
// all the rest.
type palette struct{ land, sea, water, coast, road, edge, ink, soft, sheet, accent string }

var (
	light = palette{"#f1eee4", "#dbe7ea", "#c3d9dd", "#8f978f", "#d3ccbc", "#7d857f", "#17211f", "#4d5955", "#ffffff", "#0b4a8f"}
	dark  = palette{"#1a2220", "#0d1a20", "#12303a", "#5c6965", "#3b4542", "#7f8a85", "#e9ede8", "#aab5b0", "#171f1d", "#8fbdf5"}
)

// mapSources are the names of what the map shows, empty at first.
var mapSources = []string{"land", "backdrop", "route", "places", "stops", "others", "draft", "cursor"}

// A look is what the colours of the map go by.
type look struct {
	dim bool // the palette of the night
	sea bool // the backdrop has islands to fill, so that what is left is water
}

// mapLayers are the layers of the map in its look.
func mapLayers(l look) []map[string]any {
	c := light
	if l.dim {
		c = dark
	}
	ground := c.land
	if l.sea {
		ground = c.sea
	}
	text := strings.NewReplacer("$ground", ground, "$land", c.land, "$sea", c.sea, "$water", c.water, "$coast", c.coast, "$road", c.road,
		"$edge", c.edge, "$ink", c.ink, "$soft", c.soft, "$sheet", c.sheet, "$accent", c.accent).Replace(layerText)
	var layers []map[string]any
	if err := json.Unmarshal([]byte(text), &layers); err != nil {
		panic(err) // the text is part of the program
	}
	return layers
}

// layerText is the list of MapLibre style layers, bottom first, with the names
// of colours in place of the colours. As text it takes a fifth of the room in
// the program that Go literals take.
const layerText = `[
  {"id":"ground","paint":{"background-color":"$ground"},"type":"background"},
  {"id":"land","paint":{"fill-color":"$land"},"source":"land","type":"fill"},
  {"filter":["all",["in",["get","class"],["literal",["water"]]],["==",["geometry-type"],"Polygon"]],"id":"lake","paint":{"fill-color":"$water"},"source":"backdrop","type":"fill"},
  {"filter":["in",["get","class"],["literal",["river"]]],"id":"river","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$water","line-width":["interpolate",["linear"],["zoom"],7,0.8,13,2.5]},"source":"backdrop","type":"line"},
  {"filter":["in",["get","class"],["literal",["coast"]]],"id":"coast","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$coast","line-width":1},"source":"backdrop","type":"line"},
  {"filter":["in",["get","class"],["literal",["ferry"]]],"id":"ferry","paint":{"line-color":"$edge","line-dasharray":[4,4],"line-width":1},"source":"backdrop","type":"line"},
  {"filter":["in",["get","class"],["literal",["secondary","tertiary"]]],"id":"lanes","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$road","line-width":["interpolate",["linear"],["zoom"],7,0.4,13,2]},"source":"backdrop","type":"line"},
  {"filter":["in",["get","class"],["literal",["primary","trunk"]]],"id":"roads","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$road","line-width":["interpolate",["linear"],["zoom"],7,1,13,3.5]},"source":"backdrop","type":"line"},
  {"filter":["in",["get","class"],["literal",["motorway"]]],"id":"motorways","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$road","line-width":["interpolate",["linear"],["zoom"],7,1.6,13,5]},"source":"backdrop","type":"line"},
  {"id":"route-casing","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$sheet","line-width":7},"source":"route","type":"line"},
  {"filter":["!",["to-boolean",["get","off"]]],"id":"route","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$accent","line-width":3.5},"source":"route","type":"line"},
  {"filter":["to-boolean",["get","off"]],"id":"route-off","paint":{"line-color":"$sheet","line-dasharray":[1.5,1.5],"line-width":3.5},"source":"route","type":"line"},
  {"filter":["all",["in",["get","class"],["literal",["town"]]],["\u003c=",["get","rank"],2]],"id":"town-dots","paint":{"circle-color":"$soft","circle-radius":2.2},"source":"backdrop","type":"circle"},
  {"filter":["all",["in",["get","class"],["literal",["town"]]],["\u003e=",["get","rank"],3]],"id":"villages","layout":{"text-field":["get","name"],"text-font":["sans-serif"],"text-justify":"auto","text-radial-offset":0.45,"text-size":11.5,"text-variable-anchor":["top","bottom","left","right"]},"minzoom":9,"paint":{"text-color":"$soft","text-halo-color":"$land","text-halo-width":1.6},"source":"backdrop","type":"symbol"},
  {"filter":["all",["in",["get","class"],["literal",["town"]]],["==",["get","rank"],2]],"id":"towns","layout":{"text-field":["get","name"],"text-font":["sans-serif"],"text-justify":"auto","text-radial-offset":0.45,"text-size":12.5,"text-variable-anchor":["top","bottom","left","right"]},"minzoom":6,"paint":{"text-color":"$ink","text-halo-color":"$land","text-halo-width":1.6},"source":"backdrop","type":"symbol"},
  {"filter":["all",["in",["get","class"],["literal",["town"]]],["\u003c=",["get","rank"],1]],"id":"cities","layout":{"text-field":["get","name"],"text-font":["sans-serif"],"text-justify":"auto","text-radial-offset":0.45,"text-size":14,"text-variable-anchor":["top","bottom","left","right"]},"minzoom":3,"paint":{"text-color":"$ink","text-halo-color":"$land","text-halo-width":1.6},"source":"backdrop","type":"symbol"},
  {"id":"route-reach","paint":{"line-color":"$accent","line-opacity":0,"line-width":28},"source":"route","type":"line"},
  {"id":"places","paint":{"circle-color":"$sheet","circle-radius":["interpolate",["linear"],["zoom"],7,2.2,13,5],"circle-stroke-color":["case",["get","out"],"$road","$soft"],"circle-stroke-width":1.3},"source":"places","type":"circle"},
  {"id":"places-reach","paint":{"circle-opacity":0,"circle-radius":14},"source":"places","type":"circle"},
  {"id":"cursor-halo","paint":{"circle-color":"$accent","circle-opacity":0.25,"circle-radius":15},"source":"cursor","type":"circle"},
  {"id":"stops","paint":{"circle-color":["case",["get","stay"],"$sheet","$ink"],"circle-radius":11,"circle-stroke-color":["case",["get","stay"],"$ink","$sheet"],"circle-stroke-width":2},"source":"stops","type":"circle"},
  {"id":"stop-numbers","layout":{"text-allow-overlap":true,"text-field":["to-string",["get","n"]],"text-font":["sans-serif"],"text-padding":6,"text-size":12.5},"paint":{"text-color":["case",["get","stay"],"$ink","$sheet"]},"source":"stops","type":"symbol"},
  {"id":"cursor","paint":{"circle-color":"$accent","circle-radius":6,"circle-stroke-color":"$sheet","circle-stroke-width":2},"source":"cursor","type":"circle"},
  {"filter":["==",["geometry-type"],"LineString"],"id":"others","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$soft","line-width":4},"source":"others","type":"line"},
  {"filter":["==",["geometry-type"],"LineString"],"id":"draft-casing","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$sheet","line-width":8},"source":"draft","type":"line"},
  {"filter":["all",["==",["geometry-type"],"LineString"],["!",["get","off"]]],"id":"draft","layout":{"line-cap":"round","line-join":"round"},"paint":{"line-color":"$accent","line-width":4},"source":"draft","type":"line"},
  {"filter":["all",["==",["geometry-type"],"LineString"],["get","off"]],"id":"draft-off","paint":{"line-color":"$accent","line-dasharray":[2,1.5],"line-width":3},"source":"draft","type":"line"},
  {"filter":["==",["geometry-type"],"LineString"],"id":"draft-reach","paint":{"line-color":"$accent","line-opacity":0,"line-width":22},"source":"draft","type":"line"},
  {"filter":["==",["geometry-type"],"Point"],"id":"draft-points","paint":{"circle-color":["case",["get","chosen"],"$accent","$sheet"],"circle-radius":8,"circle-stroke-color":"$accent","circle-stroke-width":3},"source":"draft","type":"circle"},
  {"filter":["==",["geometry-type"],"LineString"],"id":"others-reach","paint":{"line-color":"$soft","line-opacity":0,"line-width":22},"source":"others","type":"line"},
  {"filter":["==",["geometry-type"],"Point"],"id":"other-letters","layout":{"text-allow-overlap":true,"text-field":["get","letter"],"text-font":["sans-serif"],"text-size":16},"paint":{"text-color":"$ink","text-halo-color":"$sheet","text-halo-width":3},"source":"others","type":"symbol"}
]
`
