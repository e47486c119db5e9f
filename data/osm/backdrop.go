package osm

import (
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/simplify"

	"ullage/data/osm/file"
	"ullage/data/plain"
)

// A Backdrop is what the map draws behind the route without a network: coast, roads, water, towns.
type Backdrop struct {
	Lines []BackdropLine
	Towns []Town
}

// A BackdropLine is one line of a class: coast, motorway, trunk, primary, secondary, tertiary, ferry, river, water.
type BackdropLine struct {
	Class  string
	Points orb.LineString // simplified to 8 m; closed for water
}

// A Town is a named point. Rank 1 is a city, 2 a town, 3 a village.
type Town struct {
	Name  string
	Point orb.Point
	Rank  int
}

// lineClasses in order of weight. Sources: Key:highway, Tag:natural=coastline, Tag:natural=water, Tag:waterway=river,
// Tag:route=ferry.
var lineClasses = []struct {
	key, value, class string
}{
	{"natural", "coastline", "coast"},
	{"highway", "motorway", "motorway"},
	{"highway", "trunk", "trunk"},
	{"highway", "primary", "primary"},
	{"highway", "secondary", "secondary"},
	{"highway", "tertiary", "tertiary"},
	{"route", "ferry", "ferry"},
	{"waterway", "river", "river"},
	{"natural", "water", "water"},
	{"landuse", "reservoir", "water"},
}

// townRanks by place=*. Source: Key:place.
var townRanks = map[string]int{"city": 1, "town": 2, "village": 3}

// leastWaterDeg is the least extent of a lake that is drawn: about 250 m.
const leastWaterDeg = 250 / 111_195.0

// toleranceDeg is how far a drawn line may leave the true one: about 8 m of latitude, less than a pixel at zoom 13. Lines are
// drawn, never measured.
const toleranceDeg = 7e-5

func backdropTags() file.Want {
	var w file.Want
	for _, c := range lineClasses {
		w = append(w, file.Tag{Key: c.key, Value: c.value})
	}
	for p := range townRanks {
		w = append(w, file.Tag{Key: "place", Value: p})
	}
	return w
}

func (b *Backdrop) addLine(tags file.Tags, ls orb.LineString) {
	if len(ls) < 2 {
		return
	}
	for _, c := range lineClasses {
		if tags[c.key] != c.value {
			continue
		}
		if box := ls.Bound(); c.class == "water" && flat(box.Min, box.Max) < leastWaterDeg {
			return
		}
		// Simplify changes its argument, which an area's outline may share.
		ls = simplify.DouglasPeucker(toleranceDeg).LineString(ls.Clone())
		b.Lines = append(b.Lines, BackdropLine{Class: c.class, Points: ls})
		return
	}
}

func (b *Backdrop) addTown(n file.Node) {
	if rank := townRanks[n.Tags["place"]]; rank > 0 && n.Tags["name"] != "" {
		b.Towns = append(b.Towns, Town{Name: plain.Text(n.Tags["name"]), Point: n.Point, Rank: rank})
	}
}
