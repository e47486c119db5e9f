package mapview

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// TestMapLayers: every palette gives a style without a colour left out, whose
// layers have names of their own and sources that the map has.
func TestMapLayers(t *testing.T) {
	for _, dim := range []bool{false, true} {
		for _, sea := range []bool{false, true} {
			layers := mapLayers(look{dim, sea})
			text, err := json.Marshal(layers)
			if err != nil || strings.Contains(string(text), "$") {
				t.Errorf("a colour is left out: %v, %s", err, text)
			}
			var ids []string
			for _, l := range layers {
				id, _ := l["id"].(string)
				if id == "" || slices.Contains(ids, id) {
					t.Errorf("layer %q: want a name of its own", id)
				}
				ids = append(ids, id)
				if source, ok := l["source"].(string); ok && !slices.Contains(mapSources, source) {
					t.Errorf("layer %q: no source %q", id, source)
				}
			}
		}
	}
}
