package net

import "github.com/paulmach/orb"

// An Input is what a network is built from. It is kept unchanged.
type Input struct {
	Nodes []Node
	Ways  []Way
	Turns []Turn
	// TurnBackM is how far after a forbidden turn nobody turns back into the same road, in metres; 0: 500, negative: turning back
	// is allowed everywhere.
	TurnBackM float64
	Date      string  // of the data, 2025-01-19; "" if unknown
	Omitted   Omitted // what the reader left out
}

// An Omission is a reason to leave something out, or to count it as open.
type Omission uint8

const (
	UnsaidFerries  Omission = iota // ferries that do not say that they take motor vehicles
	ChangingRoads                  // roads with a direction that changes with the time
	RulesAtTimes                   // roads with a rule that holds at times only: open, with a caution
	LeavesData                     // a road goes on where the data end
	TurnsAtTimes                   // turns that are forbidden at times only: open, with a caution
	UnfittingTurns                 // turn restrictions that do not fit the roads they name
	Omissions      = iota
)

// Omitted counts what was left out, by reason.
type Omitted [Omissions]int

// A Node is a point that ways go through.
type Node struct {
	Point orb.Point
	Gate  *Road // a barrier that must be passed here; nil if there is none
}

// A Way is a line of road with the same properties all along.
type Way struct {
	ID    int64 // of the source; turns refer to it
	Nodes []int32
	Road  Road
}

// A Turn forbids the way From–Via–To, or with Only every other way out of Via for who comes by From.
// From and To name ways that begin or end at the node Via. With Over it forbids the way From–Over–To, or every other one for who
// comes by From; the ways meet end to end, in that order, and Via is not looked at.
type Turn struct {
	From, To int64
	Via      int32
	Over     []int64
	Only     bool
	Heavy    bool   // for vehicles above [HeavyT] only
	At       string // what holds at times only, as tagged: nothing is forbidden, but [Router.Notes] tells who does it; else ""
}

// A Class is the rank of a road.
type Class uint8

const (
	Motorway Class = iota
	Trunk
	Primary
	Secondary
	Tertiary
	Unclassified
	Residential
	Living
	Service
	Track
	Ferry
	MotorwayLink
	TrunkLink
	PrimaryLink
	SecondaryLink
	TertiaryLink
	classes // how many there are
)

// An Access is what the data say about driving there. The zero value is allowed to all.
type Access uint8

const (
	Open   Access = iota
	Guests        // only for who has business there: destination, customers; a through route avoids it
	Closed
)

// Flags are properties of a road that are either so or not known to be so.
type Flags uint16

const (
	Toll     Flags = 1 << iota
	Tunnel         // or a passage through a building
	Bridge         //
	Covered        // a roof above
	Unpaved        //
	Gated          // a gate that nothing says is open
	GasRules       // a ferry, tunnel or road with rules for gas on board or dangerous goods
	Caution        // Unclear holds a limit that could not be read, or one that holds at times only
	Narrow         //
	SlowWay        // bad surface
	Under          // below a bridge, on a road so small that the bridge may be low
)

// Limits are the greatest vehicle that fits: whole centimetres and units of 10 kg. 0 is not stated.
type Limits struct{ HeightCm, WidthCm, LengthCm, Mass10Kg, Axle10Kg uint16 }

// A Road is what holds along a way. Index 0 is in the way's direction, 1 against it.
type Road struct {
	Name    string // number or name as signed; "" if it has none
	Unclear string // limits as tagged that give no sure number: "maxheight=below_default"
	Kmh     [2]float32
	Limits  Limits
	Flags   Flags
	Class   Class
	Access  [2]Access
	Heavy   Access // for vehicles above [HeavyT]; Open adds nothing
}

// closed says that nobody may drive the road either way.
func (r *Road) closed() bool { return r.Access[0] == Closed && r.Access[1] == Closed }
