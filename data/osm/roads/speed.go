package roads

import (
	"ullage/data/osm/file"

	"strconv"
	"strings"
)

const kmhPerMph = 1.609344

// speedOf reads the speed limit of a direction in km/h; 0 if none is stated, or none in numbers. Source: Key:maxspeed,
// Key:source:maxspeed, Key:maxspeed:type, Key:zone:maxspeed.
func speedOf(t file.Tags, side string) float32 {
	for _, k := range []string{"maxspeed:motorhome", "maxspeed:" + side, "maxspeed", "zone:maxspeed", "maxspeed:type", "source:maxspeed"} {
		if kmh := kmhFrom(t[k]); kmh > 0 {
			return kmh
		}
	}
	return 0
}

// kmhFrom reads 50, "30 mph", walk, RO:urban, DE:zone:30. Of several the smallest counts.
func kmhFrom(text string) (least float32) {
	for part := range strings.SplitSeq(text, ";") {
		if kmh := oneKmh(strings.TrimSpace(part)); kmh > 0 && (least == 0 || kmh < least) {
			least = kmh
		}
	}
	return least
}

func oneKmh(text string) float32 {
	country, context, ok := strings.Cut(text, ":")
	if ok {
		return contextKmh(country, context)
	}
	if text == "walk" {
		return 7 // walking speed: 4 to 7 km/h by German courts, from memory
	}
	number := strings.TrimRight(text, " abcdefghijklmnopqrstuvwxyz/")
	v, err := strconv.ParseFloat(number, 64)
	switch unit := strings.TrimSpace(text[len(number):]); {
	case err != nil || !(v > 0 && v < 300):
		return 0
	case unit == "mph":
		return float32(v * kmhPerMph)
	case unit == "knots":
		return float32(v * 1.852)
	case unit == "" || unit == "km/h" || unit == "kmh" || unit == "kph":
		return float32(v)
	}
	return 0
}

// contexts are legal limits by country for cars: built-up, rural, motorway in km/h; 0 for no limit. Source: wiki page "Default
// speed limits", from memory and not complete; 17 countries are compared with another table, see road_speed_test.go. Belgium
// is that of Wallonia; Flanders and Brussels have 70 outside towns (the same page, 2022). Others take the first line.
var contexts = map[string][3]float32{
	"":   {50, 80, 110},
	"AD": {50, 90, 0}, "AT": {50, 100, 130}, "BE": {50, 90, 120}, "CH": {50, 80, 120}, "CZ": {50, 90, 130}, "DE": {50, 100, 0},
	"DK": {50, 80, 130}, "ES": {50, 90, 120}, "FI": {50, 80, 120}, "FR": {50, 80, 130}, "GR": {50, 90, 130}, "GB": {30 * kmhPerMph, 60 * kmhPerMph, 70 * kmhPerMph},
	"HR": {50, 90, 130}, "HU": {50, 90, 130}, "IE": {50, 80, 120}, "IT": {50, 90, 130}, "LI": {50, 80, 0}, "LU": {50, 90, 130},
	"NL": {50, 80, 100}, "NO": {50, 80, 110}, "PL": {50, 90, 140}, "PT": {50, 90, 120}, "RO": {50, 90, 130}, "SE": {50, 70, 110},
	"SI": {50, 90, 130}, "SK": {50, 90, 130}, "UK": {30 * kmhPerMph, 60 * kmhPerMph, 70 * kmhPerMph},
}

// contextKmh reads what follows a country: urban, rural, motorway, trunk, living_street, zone30, zone:30, 30.
func contextKmh(country, context string) float32 {
	limits, ok := contexts[strings.ToUpper(country)]
	if !ok {
		limits = contexts[""]
	}
	switch context {
	case "urban", "nsl_restricted":
		return limits[0]
	case "rural", "nsl_single":
		return limits[1]
	case "motorway", "nsl_dual":
		return limits[2]
	case "living_street", "bicycle_road":
		if context == "bicycle_road" {
			return 30
		}
		return 10
	case "walk":
		return 7
	}
	if v, err := strconv.ParseFloat(strings.TrimLeft(context, "zone: "), 32); err == nil && v > 0 && v < 200 {
		return float32(v)
	}
	return 0
}
