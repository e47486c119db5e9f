package page

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/app/draw"
)

// readBackdrop reads the GeoJSON that comes with a file of places. It calls
// rest after every feature, so that a page can breathe in between.
func readBackdrop(text string, rest func()) (draw.Backdrop, error) {
	var out draw.Backdrop
	d := json.NewDecoder(strings.NewReader(text))
	for { // to the array of features
		t, err := d.Token()
		if err != nil {
			return out, fmt.Errorf("backdrop: %w", err)
		}
		if t == json.Token("features") {
			break
		}
	}
	if _, err := d.Token(); err != nil {
		return out, fmt.Errorf("backdrop: %w", err)
	}
	for d.More() {
		var f struct {
			Geometry struct {
				Type        string
				Coordinates json.RawMessage
			}
			Properties struct {
				Class, Name string
				Rank        int
			}
		}
		if err := d.Decode(&f); err != nil {
			return out, fmt.Errorf("backdrop: %w", err)
		}
		var err error
		switch f.Geometry.Type {
		case "Point":
			town := draw.Town{Name: f.Properties.Name, Rank: f.Properties.Rank}
			err = json.Unmarshal(f.Geometry.Coordinates, &town.Point)
			out.Towns = append(out.Towns, town)
		case "LineString":
			var ls orb.LineString
			err = json.Unmarshal(f.Geometry.Coordinates, &ls)
			out.Lines = append(out.Lines, draw.BackdropLine{Class: f.Properties.Class, Points: ls})
		case "Polygon":
			var rings []orb.LineString
			err = json.Unmarshal(f.Geometry.Coordinates, &rings)
			for _, r := range rings {
				out.Lines = append(out.Lines, draw.BackdropLine{Class: f.Properties.Class, Points: r})
			}
		}
		if err != nil {
			return out, fmt.Errorf("backdrop: %w", err)
		}
		rest()
	}
	out.Land = land(out.Lines)
	return out, nil
}

// land joins the coast into rings. Land lies left of a coastline
// (OpenStreetMap wiki, Tag:natural=coastline), so a ring that runs
// anticlockwise is an island. Where a coast ends at the edge of the extract
// nothing is filled: nil.
func land(lines []draw.BackdropLine) []orb.LineString {
	var coasts []orb.LineString
	for _, l := range lines {
		if l.Class == "coast" && len(l.Points) > 1 {
			coasts = append(coasts, l.Points)
		}
	}
	starts := map[orb.Point]int{}
	for i, c := range coasts {
		starts[c[0]] = i
	}
	used := make([]bool, len(coasts))
	var out []orb.LineString
	for i := range coasts {
		if used[i] {
			continue
		}
		used[i] = true
		ring := slices.Clone(coasts[i])
		for ring[0] != ring[len(ring)-1] {
			next, ok := starts[ring[len(ring)-1]]
			if !ok || used[next] {
				return nil
			}
			used[next] = true
			ring = append(ring, coasts[next][1:]...)
		}
		if planar.Area(orb.Ring(ring)) != 0 && orb.Ring(ring).Orientation() == orb.CCW {
			out = append(out, ring)
		}
	}
	return out
}
