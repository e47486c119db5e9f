package osm

import (
	"regexp"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"ullage/geo"
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

// roadOf reads a way's tags; false for what is no road for motor vehicles.
func (x *roadReader) roadOf(w Way) (raw rawRoad, ok bool) {
	t := w.Tags
	raw.way = w
	r := &raw.road
	for _, c := range roadClasses {
		if t["highway"] == c.value {
			r.Class, ok = c.class, true
		}
	}
	if !ok && t["route"] == "ferry" {
		r.Class, ok = net.Ferry, true
		raw.minutes = minutesOf(t["duration"])
		r.Flags |= net.GasRules
	}
	if !ok || t["area"] == "yes" {
		return raw, false
	}
	if r.Access = accessOf(t, r.Class); r.Class == net.Ferry && !takesVehicles(t) {
		x.left["ferries do not say that they take motor vehicles and are left out"]++
		return raw, false
	}
	switch onewayOf(t) {
	case 1:
		r.Access[1] = net.Closed
	case -1:
		r.Access[0] = net.Closed
	case 2: // changes with the time of day
		x.left["roads with a direction that changes with the time are left out"]++
		return raw, false
	}
	if r.Access[0] == net.Closed && r.Access[1] == net.Closed {
		return raw, false
	}
	if v := t["hgv"]; v != "" && v != "unknown" {
		r.Heavy = entryOf(v)
	}
	r.Name = first(t, "ref", "name")
	r.Kmh = [2]float32{speedOf(t, "forward"), speedOf(t, "backward")}
	raw.usual = usualLimit(t, r)
	r.Flags |= flagsOf(t)
	if readRoadLimits(t, r); strings.Contains(r.Unclear, ":conditional=") {
		x.left["roads have a rule that holds at times only: they count as open, with a caution"]++
	}
	return raw, true
}

// first returns the first of the keys that has a value.
func first(t Tags, keys ...string) string {
	for _, k := range keys {
		if t[k] != "" {
			return t[k]
		}
	}
	return ""
}

// Values of access keys. Source: Key:access. What is not listed is allowed.
const (
	noEntry = "no private permit agricultural forestry emergency official delivery military residents employees staff use_sidepath psv bus taxi foot bicycle"
	byRight = "destination customers unknown"
)

// entryOf reads the value of an access key; of several the one that lets in most: "no;destination", "agricultural;forestry".
func entryOf(value string) net.Access {
	least := net.Closed
	for part := range strings.SplitSeq(value, ";") {
		switch part = strings.TrimSpace(part); {
		case part == "" || hasWord(noEntry, part):
		case hasWord(byRight, part):
			least = min(least, net.Guests)
		default:
			return net.Open
		}
	}
	return least
}

// accessKeys from the most to the least telling for a motorhome. Source: Key:access, the tree of land transport, where
// motorhome stands beside motorcar; a road that says only what cars may do is taken to mean motorhomes.
var accessKeys = []string{"motorhome", "motorcar", "motor_vehicle", "vehicle", "access"}

// accessOf reads who may drive each way.
func accessOf(t Tags, class net.Class) (a [2]net.Access) {
	for i, side := range []string{":forward", ":backward"} {
		a[i] = net.Open
		switch {
		case class == net.Track, // in most countries for those who work the land, unless it says otherwise; common practice
			hasWord("driveway parking_aisle drive-through emergency_access", t["service"]):
			a[i] = net.Guests
		}
		for _, k := range accessKeys {
			v, ok := t[k+side]
			if !ok {
				v, ok = t[k]
			}
			if !ok {
				continue
			}
			if e := entryOf(v); e != net.Open || class == net.Track {
				a[i] = e
			}
			break
		}
	}
	return a
}

// takesVehicles: a ferry that says nothing may be for people on foot only.
func takesVehicles(t Tags) bool {
	for _, k := range []string{"motorhome", "motorcar", "motor_vehicle", "vehicle", "hgv", "car"} {
		if hasWord("yes designated permissive destination customers", t[k]) {
			return true
		}
	}
	return false
}

// onewayOf: 1 along, -1 against, 0 both, 2 changing. Source: Key:oneway, Tag:junction=roundabout, Tag:highway=motorway; a
// motorway link implies it in practice though not by the wiki.
func onewayOf(t Tags) int {
	switch v := first(t, "oneway:motor_vehicle", "oneway:vehicle", "oneway"); v {
	case "yes", "1", "true":
		return 1
	case "-1", "reverse":
		return -1
	case "no", "0", "false", "alternating":
		return 0
	case "reversible":
		return 2
	}
	if hasWord("roundabout circular", t["junction"]) || hasWord("motorway motorway_link", t["highway"]) {
		return 1
	}
	return 0
}

// flagsOf reads what a road is besides its class. Sources: Key:toll, Key:tunnel, Key:covered, Key:bridge, Key:surface,
// Key:tracktype, Key:smoothness, Key:narrow, Key:hazmat, Key:tunnel:category.
func flagsOf(t Tags) (f net.Flags) {
	set := func(is bool, flag net.Flags) {
		if is {
			f |= flag
		}
	}
	set(hasWord("yes", t["toll"]) || hasWord("yes", t["toll:motorhome"]) || hasWord("yes", t["toll:motorcar"]), net.Toll)
	set(t["tunnel"] != "" && !hasWord("no culvert", t["tunnel"]), net.Tunnel)
	set(t["covered"] != "" && t["covered"] != "no", net.Covered)
	set(t["bridge"] != "" && t["bridge"] != "no", net.Bridge)
	set(hasWord("yes", t["narrow"]), net.Narrow)
	set(hasWord("unpaved compacted gravel fine_gravel pebblestone ground dirt earth grass mud sand clay rock", t["surface"]) ||
		hasWord("grade2 grade3 grade4 grade5", t["tracktype"]), net.Unpaved)
	set(hasWord("very_bad horrible very_horrible impassable", t["smoothness"]) || hasWord("mud sand rock", t["surface"]) ||
		hasWord("grade4 grade5", t["tracktype"]), net.SlowWay)
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

func lengthM(ls orb.LineString) (m float64) {
	for i := 1; i < len(ls); i++ {
		m += geo.DistanceM(ls[i-1], ls[i])
	}
	return m
}
