package page

import (
	_ "embed"
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
var mapSources = []string{"land", "backdrop", "route", "places", "stops", "draft", "cursor"}

// layerText is the list of MapLibre style layers, bottom first, with the names
// of colours in place of the colours. (As text it takes a fifth of the room in
// the program that Go literals take.)
//
//go:embed maplayers.json
var layerText string

// mapLayers are the layers in the palette of the day or of the night. sea tells
// that the backdrop has islands to fill, so that what is left is water.
func mapLayers(dim, sea bool) []map[string]any {
	c := light
	if dim {
		c = dark
	}
	ground := c.land
	if sea {
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
