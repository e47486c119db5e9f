package osm

// This file says which tags make an object a place, and of which kind.

// kindRules in order of weight: an object is of the kind of the first rule that it meets, so a motorhome stopover
// with a water point is a stopover that offers water. Sources: the wiki page of each tag, as Tag:amenity=fuel.
var kindRules = []struct {
	Tag
	kind string
}{
	{Tag{"amenity", "fuel"}, "fuel"},                    // Tag:amenity=fuel
	{Tag{"tourism", "caravan_site"}, "stopover"},        // Tag:tourism=caravan_site
	{Tag{"tourism", "camp_site"}, "campsite"},           // Tag:tourism=camp_site
	{Tag{"amenity", "sanitary_dump_station"}, "dump"},   // Tag:amenity=sanitary_dump_station
	{Tag{"amenity", "water_point"}, "water"},            // Tag:amenity=water_point: larger amounts
	{Tag{"amenity", "drinking_water"}, "water"},         // Tag:amenity=drinking_water: often by the bottle
	{Tag{"man_made", "water_tap"}, "tap"},               // Tag:man_made=water_tap: not potable by itself
	{Tag{"highway", "services"}, "service"},             // Tag:highway=services
	{Tag{"highway", "rest_area"}, "service"},            // Tag:highway=rest_area
	{Tag{"shop", "gas"}, "gas"},                         // Tag:shop=gas: bottled gas
	{Tag{"sanitary_dump_station", "yes"}, "dump"},       // Key:sanitary_dump_station, property of another object
	{Tag{"sanitary_dump_station", "customers"}, "dump"}, // the same
	{Tag{"sanitary_dump_station", "public"}, "dump"},    // the same, old value
	{Tag{"water_point", "yes"}, "water"},                // property of another object
}

// placeTags are all tags that make an object a place.
func placeTags() Want {
	w := make(Want, len(kindRules))
	for i, r := range kindRules {
		w[i] = r.Tag
	}
	return w
}

// kindOf returns the kind of a place and the tag that says so; "" if the object is none.
func kindOf(tags Tags) (kind string, by Tag) {
	for _, r := range kindRules {
		if tags[r.Key] == r.Value {
			return r.kind, r.Tag
		}
	}
	return "", Tag{}
}

// closedBy are tags of what is out of use: left out. Source: Key:disused, Key:abandoned, Lifecycle_prefix,
// Key:operational_status. A prefixed key as disused:amenity=fuel is no amenity=fuel and so never a place.
var closedBy = map[Tag]bool{
	{"disused", "yes"}:                       true,
	{"abandoned", "yes"}:                     true,
	{"demolished", "yes"}:                    true,
	{"removed", "yes"}:                       true,
	{"razed", "yes"}:                         true,
	{"construction", "yes"}:                  true,
	{"proposed", "yes"}:                      true,
	{"operational_status", "closed"}:         true,
	{"operational_status", "broken"}:         true,
	{"operational_status", "out_of_order"}:   true,
	{"operational_status", "nonoperational"}: true,
}

// shutTo are tags that keep a hirer's vehicle out: left out. Source: Key:access; a dump station with access=private
// should not even be mapped (Tag:amenity=sanitary_dump_station).
var shutTo = map[Tag]bool{
	{"access", "no"}:             true,
	{"access", "private"}:        true,
	{"access", "military"}:       true,
	{"access", "employees"}:      true,
	{"access", "delivery"}:       true,
	{"access", "agricultural"}:   true,
	{"access", "forestry"}:       true,
	{"access", "boat"}:           true, // seen on fuel jetties
	{"boat", "only"}:             true,
	{"boat", "designated"}:       true,
	{"motorboat", "designated"}:  true,
	{"vehicle", "no"}:            true,
	{"vehicle", "private"}:       true,
	{"motor_vehicle", "no"}:      true,
	{"motor_vehicle", "private"}: true,
	{"motorcar", "no"}:           true,
	{"motorcar", "private"}:      true,
}

// leftOut reports whether a tag puts the object out of use or out of reach.
func leftOut(tags Tags) bool {
	for k, v := range tags {
		if t := (Tag{k, v}); closedBy[t] || shutTo[t] {
			return true
		}
	}
	return false
}
