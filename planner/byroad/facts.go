package byroad

import (
	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/fact"
)

// This file turns what roads forbid or leave unsaid into facts.

// What there is to say of a road by itself.
const (
	RoadBarred fact.Kind = "road.barred" // {road}, if it has a name, and {why}

	WayBarred fact.Kind = "road.way.barred" // nothing leads to a place but a road that is barred
	WaySails  fact.Kind = "road.way.sails"  // only a ferry leads there
	WayFar    fact.Kind = "road.way.far"    // it is far, though near as the crow flies

	SailsStated  fact.Kind = "road.sails.stated"  // the map data say how long a ferry sails
	SailsGuessed fact.Kind = "road.sails.guessed" // they do not
)

// RouteBarred is the caution that the route goes where its vehicle may not go.
const RouteBarred fact.Kind = "road.caution.barred"

// cautionKinds are what to say of a course, by what is noted.
var cautionKinds = [...]fact.Kind{
	road.Barred:           RouteBarred,
	road.UnclearLimit:     "road.caution.unclear",
	road.TurnAtTimes:      "road.caution.turn",
	road.UnstatedHeadroom: "road.caution.headroom",
	road.GasRules:         "road.caution.gas",
	road.GasOnFerry:       "road.caution.gas_ferry",
	road.FerryNote:        "", // a trip says what it counts for a ferry
	road.TollNote:         "road.caution.toll",
	road.GateNote:         "road.caution.gate",
	road.UnpavedNote:      "road.caution.unpaved",
	road.NarrowNote:       "road.caution.narrow",
	road.GuestsNote:       "road.caution.guests",
}

// barKinds are what keeps a vehicle off a road, as a clause.
var barKinds = [...]fact.Kind{
	net.MayDrive:        "",
	net.NoEntry:         "road.bar.entry",
	net.NoHeavy:         "road.bar.heavy",
	net.FerryUnwanted:   "road.bar.ferry",
	net.TollUnwanted:    "road.bar.toll",
	net.TrackUnwanted:   "road.bar.track",
	net.UnpavedUnwanted: "road.bar.unpaved",
	net.HighwayUnwanted: "road.bar.highway",
	net.TooHigh:         "road.bar.too_high",
	net.TooWide:         "road.bar.too_wide",
	net.TooLong:         "road.bar.too_long",
	net.TooHeavy:        "road.bar.too_heavy",
	net.AxleTooHeavy:    "road.bar.axle",
}

// barred is what keeps a vehicle off a road.
func barred(b net.Bar) fact.Fact {
	switch {
	case b.Why >= net.TooHeavy:
		return fact.Of(barKinds[b.Why], fact.V{"limit": fact.Kg(b.Limit * 1000), "has": fact.Kg(b.Has * 1000)})
	case b.Why < net.TooHigh:
		return fact.Of(barKinds[b.Why], nil)
	}
	v := fact.V{"limit": fact.Metres(b.Limit, 2), "has": fact.Metres(b.Has, 2)}
	if b.Spare > 0 {
		v["spare"] = fact.Metres(b.Spare, 2)
	}
	return fact.Of(barKinds[b.Why], v)
}

// roadBarred is a road that is barred.
func roadBarred(n road.Note) fact.Fact {
	v := fact.V{"why": fact.Clause(barred(n.Bar))}
	whichRoad(v, n)
	return fact.Of(RoadBarred, v)
}

// whichRoad adds the name of the road that a note is about, if it has one. Its
// point would tell a driver nothing.
func whichRoad(v fact.V, n road.Note) {
	if n.Road != "" {
		v["road"] = fact.Text(n.Road)
	}
}
