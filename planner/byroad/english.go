package byroad

import (
	"fmt"
	"strings"

	"ullage/planner/fact"
)

// This file says in English what planner/trip still takes as text.

// Barred begins a caution about a route that goes where its vehicle may not go.
const Barred = "The route goes where this vehicle may not go"

var englishBars = map[fact.Kind]string{
	"road.bar.entry": "closed to motor vehicles or one-way", "road.bar.heavy": "closed to heavy vehicles",
	"road.bar.ferry": "a ferry, not wanted", "road.bar.toll": "toll, not wanted", "road.bar.track": "a track, not wanted",
	"road.bar.unpaved": "unpaved, not wanted", "road.bar.highway": "motorway or trunk road, not wanted",
	"road.bar.too_high": "height", "road.bar.too_wide": "width", "road.bar.too_long": "length", "road.bar.too_heavy": "mass", "road.bar.axle": "axle load",
}

// englishCautions are of places; what is in braces is said of the kind.
var englishCautions = map[fact.Kind]string{
	RouteBarred:             Barred + ": {why}: {places}. Change the route there; do not drive it as it is.",
	"road.caution.unclear":  "Before you drive on: limit not clear: {facts}: {places}. Read the sign, and turn round rather than try.",
	"road.caution.turn":     "Before you drive on: turn forbidden at times: {facts}: {places}. Read the sign, and turn round rather than try.",
	"road.caution.headroom": "Before you drive on: headroom is not stated in a tunnel, below a bridge or under a roof: {places}. Read the sign, and turn round rather than try.",
	"road.caution.gas": "Gas: rules for dangerous goods, which may concern gas on board: {places}. " +
		"Cylinders shut; the operator's rules and the signs decide.",
	"road.caution.gas_ferry": "Gas: ferry: rules for gas on board: {places}. Cylinders shut; the operator's rules and the signs decide.",
	"road.caution.toll":      "On the route: toll: {places}. It is not in the cost.",
	"road.caution.gate":      "On the route: a gate; whether it is open is not stated: {places}.",
	"road.caution.unpaved":   "On the route: unpaved: {places}. The hire agreement may forbid it.",
	"road.caution.narrow":    "On the route: narrow: {places}.",
	"road.caution.guests":    "On the route: for who has business there: {places}.",
}

// English says facts of this package.
func english(list []fact.Fact) (out []string) {
	for _, f := range list {
		out = append(out, englishOf(f))
	}
	return out
}

func englishOf(f fact.Fact) string {
	v := f.Values
	switch f.Kind {
	case "":
		return ""
	case RoadBarred:
		return englishRoad(v) + ": " + englishBar(v["why"])
	case WayBarred:
		return fmt.Sprintf("the way there is not for this vehicle: %s (%s, %.1f km before the place)", englishBar(v["why"]), englishRoad(v), v["km"].N)
	case WaySails:
		if v["name"].S == "" {
			return "the way there goes by ferry: without a name"
		}
		return "the way there goes by ferry: " + v["name"].S
	case WayFar:
		return fmt.Sprintf("%.0f km away by road", v["km"].N)
	case SailsStated:
		return fmt.Sprintf("%.0f min of crossing as the map data say, about %.0f to board", v["sails"].N, v["board"].N)
	case SailsGuessed:
		return fmt.Sprintf("an estimate: the map data do not say how long it sails; about %.0f min of crossing, %.0f to board", v["sails"].N, v["board"].N)
	}
	text := strings.ReplaceAll(englishCautions[f.Kind], "{facts}", v["facts"].S)
	if v["why"].Fact != nil {
		text = strings.ReplaceAll(text, "{why}", englishBar(v["why"]))
	}
	return strings.ReplaceAll(text, "{places}", englishPlaces(v["where"].Fact.Values))
}

func englishBar(why fact.Value) string {
	text, v := englishBars[why.Fact.Kind], why.Fact.Values
	if v == nil {
		return text
	}
	unit, limit, has := v["limit"].Unit, v["limit"].N, v["has"].N
	if unit == "kg" {
		unit, limit, has = "t", limit/1000, has/1000
	}
	text = fmt.Sprintf("%s limit %.2f %s, the vehicle has %.2f %s", text, limit, unit, has, unit)
	if spare := v["spare"].N; spare > 0 {
		text += fmt.Sprintf(" and keeps %.2f m free", spare)
	}
	return text
}

func englishRoad(v fact.V) string {
	if name := v["road"].S; name != "" {
		return name
	}
	return "a road at " + v["point"].S
}

func englishPlaces(v fact.V) string {
	var list []string
	for _, x := range v["places"].List {
		text := fmt.Sprintf("km %.1f", x.Fact.Values["mark"].N)
		if name := x.Fact.Values["road"].S; name != "" {
			text += " (" + name + ")"
		}
		list = append(list, text)
	}
	text := strings.Join(list, ", ")
	if more := v["others"].N; more > 0 {
		text += fmt.Sprintf(" and %.0f more", more)
	}
	return text
}
