package osm

import (
	"slices"
	"strconv"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/planner/trip"
)

// This file reads what a night at a place offers.

// noNight are tags of sites where a motorhome does not stay. Sources: Tag:tourism=camp_site, Key:motorhome, Key:group_only;
// permanent_camping from memory. campers is deprecated in favour of motorhome.
// refugee, scout, static_caravans, camp_type, impromptu and the states of a place that is no more, or not yet: Key:refugee,
// Tag:amenity=refugee_site, Key:scout, Key:static_caravans, Key:impromptu, Lifecycle prefix.
var noNight = tag.Values{"motorhome": "no", "campers": "no", "group_only": "yes", "permanent_camping": "only", "static_caravans": "only",
	"refugee": "yes", "amenity": "refugee_site", "social_facility:for": "refugee", "scout": "yes", "camp_type": "wildcamp", "impromptu": "yes",
	"disused": "yes", "abandoned": "yes", "demolished": "yes", "construction": "yes", "proposed": "yes"}

// noNightUnless are tags of sites with no way in or no room for a motorhome, unless motorhome=* says otherwise. Sources:
// Key:caravans; Key:backcountry, which warns that some so tagged lie by a road: a night in doubt is not planned.
var noNightUnless = tag.Values{"caravans": "no", "backcountry": "yes"}

// stayOf returns what a night offers; nil if a motorhome cannot stay.
func stayOf(kind trip.PlaceKind, by string, tags file.Tags) *trip.Stay {
	if !slices.Contains(sites, kind) || noNight.In(tags) {
		return nil
	}
	if (noNightUnless.In(tags) || tags["leisure"] != "") && kind == trip.Campsite && answer(tags, "motorhome") != trip.Yes {
		return nil // leisure: a club, a park, a sports ground that has tents too
	}
	s := &trip.Stay{
		Amps:        ampsOf(tags),
		Showers:     facility(tags, "shower", "serviced deluxe"),
		Toilets:     facility(tags, "toilets", "standard serviced deluxe"),
		Tents:       answer(tags, "tents"),
		Capacity:    capacityOf(tags),
		Fee:         feeOf(tags),
		Charge:      tags["charge"],
		MaxStay:     tags["maxstay"],
		Reservation: tags["reservation"],
		CheckIn:     tags["check_in"],
		CheckOut:    tags["check_out"],
		Tag:         by,
	}
	s.HookUp, _ = hookUp(tags)
	return s
}

// unclearPower are values of power_supply that do not promise mains tonight. Source: Key:power_supply.
const unclearPower = "unknown intermittent seasonal"

// hookUp answers whether there is mains for the vehicle, and by which tag. power_supply has a yes, a no or, in older
// data, the type of the outlet; newer data say socket:<type>=<count>. Sources: Key:power_supply, Key:socket, and
// Key:camp_site (serviced and deluxe have power).
func hookUp(tags file.Tags) (trip.Answer, string) {
	key, best := "", trip.Unknown
	for k, v := range tags {
		a := power(k, v)
		// power_supply outweighs the rest; otherwise yes before no, and the first key by name.
		if a == trip.Unknown || key == "power_supply" {
			continue
		}
		if k == "power_supply" || best == trip.Unknown || a == trip.Yes && (best == trip.No || k < key) {
			key, best = k, a
		}
	}
	if key == "" {
		return trip.Unknown, ""
	}
	return best, key + "=" + tags[key]
}

// power is what one tag says of the mains.
func power(key, value string) trip.Answer {
	switch {
	case key == "power_supply" && tag.HasWord("no none", value):
		return trip.No
	case key == "power_supply" && value != "" && !tag.HasWord(unclearPower, value):
		return trip.Yes
	case strings.HasPrefix(key, "socket:") && strings.Count(key, ":") == 1:
		if n, err := strconv.Atoi(value); value == "yes" || err == nil && n > 0 {
			return trip.Yes
		}
	case key == "camp_site" && tag.HasWord("serviced deluxe", value):
		return trip.Yes
	case key == "camp_site" && value == "basic":
		return trip.No
	}
	return trip.Unknown
}

// ampsOf returns the current of the hook-up in ampere; 0 if none is stated.
func ampsOf(tags file.Tags) float64 {
	for _, k := range []string{"power_supply:maxcurrent", "power_supply:current", "socket:cee_blue:current", "socket:cee_blue:maxcurrent", "maxcurrent"} {
		text := strings.TrimSpace(strings.TrimRight(strings.TrimSpace(tags[k]), "Aa"))
		if a, err := strconv.ParseFloat(text, 64); err == nil && a > 0 && a <= 125 {
			return a
		}
	}
	return 0
}

// facility answers for a key, or else for the class of the site in camp_site=*. Source: Key:camp_site.
func facility(tags file.Tags, key, classes string) trip.Answer {
	if a := answer(tags, key); a != trip.Unknown {
		return a
	}
	if a := answer(tags, key+"s"); a != trip.Unknown {
		return a
	}
	switch class := tags["camp_site"]; {
	case class == "":
		return trip.Unknown
	case tag.HasWord(classes, class):
		return trip.Yes
	case class == "basic":
		return trip.No
	}
	return trip.Unknown
}

// capacityOf returns the number of vehicles, else of the pitches, else of what capacity counts.
func capacityOf(tags file.Tags) int {
	for _, k := range []string{"capacity:motorhome", "capacity:motorhomes", "capacity:caravans", "capacity:pitches", "capacity"} {
		if n, err := strconv.Atoi(strings.TrimSpace(tags[k])); err == nil && n > 0 && n < 100000 {
			return n
		}
	}
	return 0
}

// answer reads a yes or a no; every other value is unknown, except those that grant with a condition.
func answer(tags file.Tags, key string) trip.Answer {
	switch tags[key] {
	case "yes", "designated", "permissive", "customers", "public", "hot", "only":
		return trip.Yes
	case "no", "none", "private":
		return trip.No
	}
	return trip.Unknown
}

// feeOf answers whether the place costs something. A sum in fee or charge is a yes. Source: Key:fee, Key:charge.
func feeOf(tags file.Tags) trip.Answer {
	switch v := tags["fee"]; {
	case v == "no":
		return trip.No
	case v == "yes" || strings.ContainsAny(v, "0123456789"):
		return trip.Yes
	case v == "" && strings.ContainsAny(tags["charge"], "123456789"):
		return trip.Yes
	}
	return trip.Unknown
}
