package roads

import (
	"math"

	"github.com/paulmach/orb"

	"ullage/data/hours"
	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// This file caps the speed of main roads without a stated limit at the country's limit outside towns. Only roads of two
// directions on one carriageway: others may be expressways with a higher one. It matters where the limit is low: a class of road
// says what is driven on average, and for smaller classes that is less than any limit. Towns are not known, so that no limit
// of towns is assumed.

// usualLimit says that a road is one whose usual limit is worth a look.
func usualLimit(t file.Tags, r *net.Road) bool {
	stated := tag.First(t, "maxspeed", "maxspeed:forward", "maxspeed:backward", "maxspeed:motorhome", "zone:maxspeed", "maxspeed:type", "source:maxspeed")
	oneWay := r.Access[0] == net.Closed || r.Access[1] == net.Closed
	return stated == "" && !oneWay && t["motorroad"] != "yes" && (r.Class == net.Trunk || r.Class == net.Primary)
}

// cellDeg is how far apart two roads may be that are taken to lie in one country: some kilometres.
const cellDeg = 0.05

// usualLimits are the limits outside towns in km/h, by cell, as far as asked for.
type usualLimits map[[2]int32]float32

// at returns the limit outside towns at a position; 0 where the country is not known. Near a border it is the higher one.
func (u usualLimits) at(p orb.Point) (kmh float32) {
	cell := [2]int32{int32(math.Floor(p[0] / cellDeg)), int32(math.Floor(p[1] / cellDeg))}
	if kmh, known := u[cell]; known {
		return kmh
	}
	for _, country := range hours.CountriesAt(p[1], p[0]) {
		if limits, ok := contexts[country]; ok {
			kmh = max(kmh, limits[1])
		}
	}
	u[cell] = kmh
	return kmh
}
