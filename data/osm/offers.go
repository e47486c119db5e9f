package osm

import (
	"cmp"
	"slices"
	"sort"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/planner/trip"
)

// This file says which tag answers for which tank. Answers come from the first rule that applies; a tank
// without any applying rule is not offered at all. Unknown is never yes: Likely marks what common practice expects.

// An offerRule answers for one tank.
type offerRule struct {
	tank   string
	kinds  only
	key    string               // the tag that must be there …
	values string               // … with one of these values, separated by spaces; "" is every value
	answer trip.Answer          // what it says
	likely bool                 // with Unknown
	when   func(file.Tags) bool // also holds; nil: nothing else is asked
}

// only are the kinds of place that a rule is for; nil is all.
type only []trip.PlaceKind

// offerRules in order of weight for each tank. Sources: Key:fuel:*, Tag:amenity=sanitary_dump_station,
// Tag:amenity=water_point, Tag:amenity=drinking_water, Key:drinking_water, Tag:man_made=water_tap, Key:power_supply,
// Key:socket, Tag:tourism=camp_site, Key:camp_site of wiki.openstreetmap.org. "cp" is common practice, no source.
var offerRules = []offerRule{
	// Diesel: tagged, or likely at a filling station. fuel:HGV_diesel is the truck lane and says nothing here.
	{tank: "diesel", key: "fuel:diesel", values: "yes only", answer: trip.Yes},
	{tank: "diesel", key: "fuel:diesel", values: "no", answer: trip.No},
	{tank: "diesel", key: "fuel:GTL_diesel", values: "yes", answer: trip.Unknown, likely: true}, // the handbook must allow it
	{tank: "diesel", kinds: only{trip.FuelStation}, key: "fuel:others", values: "no", answer: trip.No},
	{tank: "diesel", kinds: only{trip.FuelStation}, key: "amenity", values: "fuel", answer: trip.Unknown, when: gasOnly},
	{tank: "diesel", kinds: only{trip.FuelStation}, key: "amenity", values: "fuel", answer: trip.Unknown, likely: true}, // cp

	// Exhaust fluid: at the pump or in canisters, only if tagged.
	{tank: "def", key: "fuel:adblue", values: "yes", answer: trip.Yes},
	{tank: "def", key: "fuel:adblue:canister", values: "yes", answer: trip.Yes},
	{tank: "def", key: "fuel:adblue", values: "no", answer: trip.No},
	{tank: "def", kinds: only{trip.FuelStation}, key: "fuel:others", values: "no", answer: trip.No},
	{tank: "def", kinds: only{trip.FuelStation}, key: "amenity", values: "fuel", answer: trip.Unknown},

	// LPG: only if tagged. Propane is the same trade, but nozzle and permission to fill a fixed tank are not known.
	// A gas shop exchanges bottles, which does not fill a fixed tank.
	{tank: "lpg", key: "fuel:lpg", values: "yes", answer: trip.Yes},
	{tank: "lpg", key: "fuel:lpg", values: "no", answer: trip.No},
	{tank: "lpg", key: "fuel:propane", values: "yes", answer: trip.Unknown, likely: true},
	{tank: "lpg", kinds: only{trip.FuelStation}, key: "fuel:others", values: "no", answer: trip.No},
	{tank: "lpg", kinds: only{trip.FuelStation}, key: "amenity", values: "fuel", answer: trip.Unknown},
	{tank: "lpg", kinds: only{trip.GasShop}, key: "shop", values: "gas", answer: trip.Unknown},

	// Fresh water: a water point gives tank-size amounts of drinking water. drinking_water=no overrules it.
	// amenity=drinking_water is water to drink, often a bubbler or by the bottle: potable, but whether a
	// hose or a can fits is not known. A bare tap is not even potable by itself.
	{tank: "fresh", kinds: only{trip.FuelStation, trip.Stopover, trip.Campsite, trip.Disposal, trip.WaterPoint, trip.WaterTap, trip.ServiceArea}, key: "drinking_water", values: "no", answer: trip.No},
	{tank: "fresh", key: "amenity", values: "water_point", answer: trip.Yes},
	{tank: "fresh", key: "water_point", values: "yes", answer: trip.Yes},
	{tank: "fresh", key: "water_point", values: "customers", answer: trip.Yes},
	{tank: "fresh", kinds: sites, key: "drinking_water", values: "yes", answer: trip.Yes},
	{tank: "fresh", key: "water_point", values: "no", answer: trip.No},
	{tank: "fresh", kinds: sites, key: "camp_site", values: "basic", answer: trip.No},
	{tank: "fresh", kinds: sites, key: "camp_site", values: "standard serviced deluxe", answer: trip.Unknown, likely: true}, // "toilets and water": not said to be potable, perhaps nearby
	{tank: "fresh", kinds: only{trip.WaterTap}, key: "drinking_water", values: "yes", answer: trip.Unknown, likely: true},   // a potable tap: cp
	{tank: "fresh", kinds: only{trip.FuelStation, trip.Disposal, trip.ServiceArea}, key: "drinking_water", values: "yes", answer: trip.Unknown, likely: true},
	{tank: "fresh", kinds: only{trip.WaterPoint}, key: "man_made", values: "water_tap", answer: trip.Unknown, likely: true}, // amenity=drinking_water from a tap: cp
	{tank: "fresh", kinds: only{trip.WaterPoint}, key: "amenity", values: "drinking_water", answer: trip.Unknown},
	{tank: "fresh", kinds: only{trip.WaterTap}, key: "man_made", values: "water_tap", answer: trip.Unknown},
	{tank: "fresh", kinds: only{trip.Campsite}, key: "tourism", values: "camp_site", answer: trip.Unknown, likely: true}, // cp
	{tank: "fresh", kinds: only{trip.Stopover}, key: "tourism", values: "caravan_site", answer: trip.Unknown},
	{tank: "fresh", kinds: only{trip.Disposal}, key: "amenity", values: "sanitary_dump_station", answer: trip.Unknown}, // rinsing water is not drinking water

	// Grey water: the dump station's definition speaks of toilet waste only; a drain beside it is common practice.
	{tank: "grey", key: "sanitary_dump_station:grey_water", values: "yes", answer: trip.Yes},
	{tank: "grey", key: "sanitary_dump_station:grey_water", values: "no", answer: trip.No},
	{tank: "grey", key: "amenity", values: "sanitary_dump_station", answer: trip.Unknown, likely: true}, // cp
	{tank: "grey", key: "sanitary_dump_station", values: "yes public", answer: trip.Unknown, likely: true},
	{tank: "grey", key: "sanitary_dump_station", values: "customers", answer: trip.Unknown, likely: true},
	{tank: "grey", key: "sanitary_dump_station", values: "no", answer: trip.No},
	{tank: "grey", kinds: sites, key: "tourism", answer: trip.Unknown},

	// Cassette: chemical_toilet and basin are made for it; the station's definition is to take toilet waste.
	// A station without basin takes only a hose.
	{tank: "cassette", key: "sanitary_dump_station:chemical_toilet", values: "yes", answer: trip.Yes},
	{tank: "cassette", key: "sanitary_dump_station:basin", values: "yes", answer: trip.Yes},
	{tank: "cassette", key: "sanitary_dump_station:chemical_toilet", values: "no", answer: trip.No},
	{tank: "cassette", key: "sanitary_dump_station:basin", values: "no", answer: trip.No},
	{tank: "cassette", key: "amenity", values: "sanitary_dump_station", answer: trip.Yes},
	{tank: "cassette", key: "sanitary_dump_station", values: "yes public", answer: trip.Yes},
	{tank: "cassette", key: "sanitary_dump_station", values: "customers", answer: trip.Yes},
	{tank: "cassette", key: "sanitary_dump_station", values: "no", answer: trip.No},
	{tank: "cassette", kinds: sites, key: "tourism", answer: trip.Unknown},
}

// acceptedKey lists what a dump station takes: black_water;grey_water;chemical_toilet (Tag:amenity=sanitary_dump_station).
const acceptedKey = "sanitary_dump_station:accepted"

// acceptedRules say which word of the list answers for which tank. Words that are missing from a list are a no.
var acceptedRules = []struct{ tank, words string }{
	{"grey", "grey_water greywater"},
	{"cassette", "black_water chemical_toilet cassette"},
}

// mains is the tank that a hook-up restores.
const mains = "battery"

// offersOf returns what a place of the kind offers, in order of tank id.
func offersOf(kind trip.PlaceKind, tags file.Tags) []trip.Offer {
	found := map[string]trip.Offer{}
	for _, r := range acceptedRules {
		if list := tags[acceptedKey]; list != "" {
			o := trip.Offer{Tank: r.tank, Answer: trip.No, Tag: acceptedKey + "=" + list}
			if hasAny(list, r.words) {
				o.Answer = trip.Yes
			}
			found[r.tank] = o
		}
	}
	for _, r := range offerRules {
		if _, done := found[r.tank]; done || !r.applies(kind, tags) {
			continue
		}
		found[r.tank] = trip.Offer{Tank: r.tank, Answer: r.answer, Likely: r.likely, Tag: r.key + "=" + tags[r.key]}
	}
	if slices.Contains(sites, kind) {
		answer, tag := hookUp(tags)
		found[mains] = trip.Offer{Tank: mains, Answer: answer, Tag: cmp.Or(tag, "tourism="+tags["tourism"])}
	}
	offers := make([]trip.Offer, 0, len(found))
	for _, o := range found {
		o.Guests = forGuests(o.Tank, kind, tags)
		offers = append(offers, o)
	}
	sort.Slice(offers, func(a, b int) bool { return offers[a].Tank < offers[b].Tank }) // one sort for all types: less program
	return offers
}

// guestTags are tags that keep tanks for the customers of a place; no tanks are all. Sources: Key:access,
// Key:sanitary_dump_station, Tag:amenity=water_point.
var guestTags = []struct {
	key, value, tanks string
}{
	{"access", "customers", ""},
	{"sanitary_dump_station", "customers", "cassette grey"},
	{"water_point", "customers", "fresh"},
	{"power_supply", "customers", "battery"},
}

// forGuests reports whether a tank is served for customers only. What stands on a campsite is for its guests (common
// practice, no source; many let others pay for it).
func forGuests(tank string, kind trip.PlaceKind, tags file.Tags) bool {
	for _, g := range guestTags {
		if tags[g.key] == g.value && (g.tanks == "" || tag.HasWord(g.tanks, tank)) {
			return true
		}
	}
	return kind == trip.Campsite
}

func (r offerRule) applies(kind trip.PlaceKind, tags file.Tags) bool {
	v, ok := tags[r.key]
	return ok && (r.kinds == nil || slices.Contains(r.kinds, kind)) && (r.values == "" || tag.HasWord(r.values, v)) && (r.when == nil || r.when(tags))
}

// notForCars are the fuels whose pumps say nothing about a diesel pump beside them.
const notForCars = "lpg cng lng biogas propane butane methane h2 h35 h70 hydrogen electricity JetA1 100LL wood charcoal others"

// gasOnly reports whether the fuels tagged are such that a diesel pump beside them is not to be expected: a
// station that sells autogas only. Tagged petrol, or no fuel tagged at all, leaves diesel likely. Measured on the
// filling stations of Finland in OpenStreetMap, 2022-02-13: of 671 with a liquid fuel tagged 585 say fuel:diesel=yes and 6 no;
// of 109 with gas only 34 say yes.
func gasOnly(tags file.Tags) bool {
	gas, liquid := false, false
	for k, v := range tags {
		fuel, ok := strings.CutPrefix(k, "fuel:")
		if !ok || v == "no" {
			continue
		}
		fuel, _, _ = strings.Cut(fuel, ":")
		if tag.HasWord(notForCars, fuel) || strings.HasPrefix(fuel, "avgas") {
			gas = true
		} else {
			liquid = true
		}
	}
	return gas && !liquid
}

// hasAny reports whether one of the words (separated by spaces) is in a tag's list (separated by semicolons).
func hasAny(tagList, words string) bool {
	for item := range strings.SplitSeq(tagList, ";") {
		if tag.HasWord(words, strings.TrimSpace(item)) {
			return true
		}
	}
	return false
}
