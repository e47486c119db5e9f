package roads

import (
	"regexp"
	"strconv"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// roadClasses by highway=*. Source: Key:highway. Not here, and so not roads for us: pedestrian, footway, path, cycleway,
// bridleway, steps, busway, construction, proposed, services.
var roadClasses = []struct {
	value string
	class net.Class
}{
	{"motorway", net.Motorway}, {"trunk", net.Trunk}, {"primary", net.Primary}, {"secondary", net.Secondary},
	{"tertiary", net.Tertiary}, {"unclassified", net.Unclassified}, {"residential", net.Residential}, {"road", net.Unclassified},
	{"living_street", net.Living}, {"service", net.Service}, {"track", net.Track},
	{"motorway_link", net.MotorwayLink}, {"trunk_link", net.TrunkLink}, {"primary_link", net.PrimaryLink},
	{"secondary_link", net.SecondaryLink}, {"tertiary_link", net.TertiaryLink},
}

// classOf returns the class of a road or ferry; false for what is none.
func classOf(t file.Tags) (net.Class, bool) {
	for _, c := range roadClasses {
		if t["highway"] == c.value {
			return c.class, true
		}
	}
	return net.Ferry, t["route"] == "ferry"
}

// takesVehicles: a ferry that says nothing may be for people on foot only.
func takesVehicles(t file.Tags) bool {
	for _, k := range []string{"motorhome", "motorcar", "motor_vehicle", "vehicle", "hgv", "car"} {
		if tag.HasWord("yes designated permissive destination customers", t[k]) {
			return true
		}
	}
	return false
}

// A direction is the one in which a road is driven.
type direction int

const (
	bothWays direction = iota
	along
	against
	changing // with the time of day
)

// onewayOf reads the direction. Source: Key:oneway, Tag:junction=roundabout, Tag:highway=motorway; a
// motorway link implies it in practice though not by the wiki.
func onewayOf(t file.Tags) direction {
	switch v := tag.First(t, "oneway:motor_vehicle", "oneway:vehicle", "oneway"); v {
	case "yes", "1", "true":
		return along
	case "-1", "reverse":
		return against
	case "no", "0", "false", "alternating":
		return bothWays
	case "reversible":
		return changing
	}
	if tag.HasWord("roundabout circular", t["junction"]) || tag.HasWord("motorway motorway_link", t["highway"]) {
		return along
	}
	return bothWays
}

// flagsOf reads what a road is besides its class. Sources: Key:toll, Key:tunnel, Key:covered, Key:bridge, Key:surface,
// Key:tracktype, Key:smoothness, Key:narrow, Key:hazmat, Key:tunnel:category.
func flagsOf(t file.Tags) (f net.Flags) {
	set := func(is bool, flag net.Flags) {
		if is {
			f |= flag
		}
	}
	set(tag.HasWord("yes", t["toll"]) || tag.HasWord("yes", t["toll:motorhome"]) || tag.HasWord("yes", t["toll:motorcar"]), net.Toll)
	set(t["tunnel"] != "" && !tag.HasWord("no culvert", t["tunnel"]), net.Tunnel)
	set(t["covered"] != "" && t["covered"] != "no", net.Covered)
	set(t["bridge"] != "" && t["bridge"] != "no", net.Bridge)
	set(tag.HasWord("yes", t["narrow"]), net.Narrow)
	set(tag.HasWord("unpaved compacted gravel fine_gravel pebblestone ground dirt earth grass mud sand clay rock", t["surface"]) ||
		tag.HasWord("grade2 grade3 grade4 grade5", t["tracktype"]), net.Unpaved)
	set(tag.HasWord("very_bad horrible very_horrible impassable", t["smoothness"]) || tag.HasWord("mud sand rock", t["surface"]) ||
		tag.HasWord("grade4 grade5", t["tracktype"]), net.SlowWay)
	for k, v := range t {
		set(strings.HasPrefix(k, "hazmat") && v == "no" || k == "tunnel:category" && v != "A", net.GasRules)
	}
	return f
}

var clock = regexp.MustCompile(`^(?:(\d{1,2}):)?(\d{1,3})(?::\d{2})?$`)
var isoDuration = regexp.MustCompile(`^PT(?:(\d+)H)?(?:(\d+)M)?$`)

// minutesOf reads a duration: 25, 0:25, 1:05:00, PT1H5M; 0 if it is none. Source: Key:duration.
func minutesOf(text string) float64 {
	text = strings.TrimSpace(text)
	m := clock.FindStringSubmatch(text)
	if m == nil && text != "PT" {
		m = isoDuration.FindStringSubmatch(text)
	}
	if m == nil {
		return 0
	}
	h, _ := strconv.Atoi(m[1])
	min, _ := strconv.Atoi(m[2])
	return float64(60*h + min)
}
