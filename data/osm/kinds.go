package osm

import (
	"ullage/data/osm/file"
	"ullage/data/osm/tag"
)

// This file says which tags make an object a place, and of which kind.

// kindRules in order of weight: an object is of the kind of the first rule that it meets, so a motorhome stopover
// with a water point is a stopover that offers water. Sources: the wiki page of each tag, as Tag:amenity=fuel.
var kindRules = []struct {
	key, value, kind string
}{
	{"amenity", "fuel", "fuel"},                    // Tag:amenity=fuel
	{"tourism", "caravan_site", "stopover"},        // Tag:tourism=caravan_site
	{"tourism", "camp_site", "campsite"},           // Tag:tourism=camp_site
	{"amenity", "sanitary_dump_station", "dump"},   // Tag:amenity=sanitary_dump_station
	{"amenity", "water_point", "water"},            // Tag:amenity=water_point: larger amounts
	{"amenity", "drinking_water", "water"},         // Tag:amenity=drinking_water: often by the bottle
	{"man_made", "water_tap", "tap"},               // Tag:man_made=water_tap: not potable by itself
	{"highway", "services", "service"},             // Tag:highway=services
	{"highway", "rest_area", "service"},            // Tag:highway=rest_area
	{"shop", "gas", "gas"},                         // Tag:shop=gas: bottled gas
	{"sanitary_dump_station", "yes", "dump"},       // Key:sanitary_dump_station, property of another object
	{"sanitary_dump_station", "customers", "dump"}, // the same
	{"sanitary_dump_station", "public", "dump"},    // the same, old value
	{"water_point", "yes", "water"},                // property of another object
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
func kindOf(tags file.Tags) (kind, by string) {
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
