package job

import (
	"encoding/json"
	"math"

	"github.com/paulmach/orb"

	"ullage/data/osm"
)

type point = orb.Point

// bounds returns west, south, east, north of points; zeros if there are none.
func bounds(points []point) [4]float64 {
	if len(points) == 0 {
		return [4]float64{}
	}
	b := orb.MultiPoint(points).Bound()
	return [4]float64{b.Min[0], b.Min[1], b.Max[0], b.Max[1]}
}

// feature is GeoJSON (RFC 7946) as the map draws it.
type feature struct {
	Type       string         `json:"type"`
	Geometry   geometry       `json:"geometry"`
	Properties map[string]any `json:"properties"`
}

type geometry struct {
	Type        string `json:"type"`
	Coordinates any    `json:"coordinates"`
}

// backdropGeoJSON writes lines with a property class, lakes as areas, and
// towns with name and rank. Points are rounded to 1e-5 degrees, a metre.
func backdropGeoJSON(b osm.Backdrop) string {
	out := struct {
		Type     string    `json:"type"`
		Features []feature `json:"features"`
	}{"FeatureCollection", make([]feature, 0, len(b.Lines)+len(b.Towns))}
	for _, l := range b.Lines {
		f := feature{"Feature", geometry{"LineString", rounded(l.Points)}, map[string]any{"class": l.Class}}
		if n := len(l.Points); l.Class == "water" && n > 3 && l.Points[0] == l.Points[n-1] {
			f.Geometry = geometry{"Polygon", []any{rounded(l.Points)}}
		}
		out.Features = append(out.Features, f)
	}
	for _, t := range b.Towns {
		out.Features = append(out.Features, feature{"Feature", geometry{"Point", rounded(orb.LineString{t.Point})[0]},
			map[string]any{"class": "town", "name": t.Name, "rank": t.Rank}})
	}
	text, err := json.Marshal(out)
	if err != nil {
		return "" // a position that is not finite: no backdrop, the plan stands
	}
	return string(text)
}

func rounded(ls orb.LineString) orb.LineString {
	out := make(orb.LineString, len(ls))
	for i, p := range ls {
		out[i] = point{math.Round(p[0]*1e5) / 1e5, math.Round(p[1]*1e5) / 1e5}
	}
	return out
}
