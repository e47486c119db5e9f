package osm

import (
	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/planner/trip"
)

// This file says which tags make an object a place, and of which kind.

// kindRules in order of weight: an object is of the kind of the first rule that it meets, so a motorhome stopover
// with a water point is a stopover that offers water. Sources: the wiki page of each tag, as Tag:amenity=fuel.
var kindRules = []struct {
	key, value string
	kind       trip.PlaceKind
}{
	{"amenity", "fuel", trip.FuelStation},                 // Tag:amenity=fuel
	{"tourism", "caravan_site", trip.Stopover},            // Tag:tourism=caravan_site
	{"tourism", "camp_site", trip.Campsite},               // Tag:tourism=camp_site
	{"amenity", "sanitary_dump_station", trip.Disposal},   // Tag:amenity=sanitary_dump_station
	{"amenity", "water_point", trip.WaterPoint},           // Tag:amenity=water_point: larger amounts
	{"amenity", "drinking_water", trip.WaterPoint},        // Tag:amenity=drinking_water: often by the bottle
	{"man_made", "water_tap", trip.WaterTap},              // Tag:man_made=water_tap: not potable by itself
	{"highway", "services", trip.ServiceArea},             // Tag:highway=services
	{"highway", "rest_area", trip.ServiceArea},            // Tag:highway=rest_area
	{"shop", "gas", trip.GasShop},                         // Tag:shop=gas: bottled gas
	{"sanitary_dump_station", "yes", trip.Disposal},       // Key:sanitary_dump_station, property of another object
	{"sanitary_dump_station", "customers", trip.Disposal}, // the same
	{"sanitary_dump_station", "public", trip.Disposal},    // the same, old value
	{"water_point", "yes", trip.WaterPoint},               // property of another object
}

// placeTags are all tags that make an object a place.
func placeTags() file.Want {
	w := make(file.Want, len(kindRules))
	for i, r := range kindRules {
		w[i] = file.Tag{Key: r.key, Value: r.value}
	}
	return w
}

// kindOf returns the kind of a place and the tag that says so; "" if the object is none.
func kindOf(tags file.Tags) (kind trip.PlaceKind, by string) {
	for _, r := range kindRules {
		if tags[r.key] == r.value {
			return r.kind, r.key + "=" + r.value
		}
	}
	return "", ""
}

// closedBy are tags of what is out of use: left out. Source: Key:disused, Key:abandoned, Lifecycle_prefix,
// Key:operational_status. A prefixed key as disused:amenity=fuel is no amenity=fuel and so never a place.
var closedBy = tag.Values{
	"disused":            "yes",
	"abandoned":          "yes",
	"demolished":         "yes",
	"removed":            "yes",
	"razed":              "yes",
	"construction":       "yes",
	"proposed":           "yes",
	"operational_status": "closed broken out_of_order nonoperational",
}

// shutTo are tags that keep a hirer's vehicle out: left out. Source: Key:access; a dump station with access=private
// should not even be mapped (Tag:amenity=sanitary_dump_station). access=boat was seen on fuel jetties.
var shutTo = tag.Values{
	"access":        "no private military employees delivery agricultural forestry boat",
	"boat":          "only designated",
	"motorboat":     "designated",
	"vehicle":       "no private",
	"motor_vehicle": "no private",
	"motorcar":      "no private",
}

// leftOut reports whether a tag puts the object out of use or out of reach.
func leftOut(tags file.Tags) bool { return closedBy.In(tags) || shutTo.In(tags) }

// sites are kinds of place made for nights.
var sites = []trip.PlaceKind{trip.Stopover, trip.Campsite}
