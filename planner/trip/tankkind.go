package trip

import (
	"maps"
	"slices"
	"strings"

	"ullage/planner/fact"
	"ullage/planner/life/advice"
)

// A TankKind is what is known about a tank wherever it is: how it is restored,
// what it means for the vehicle, and what the end of a trip asks of it. An eighth
// tank is one more row of the table below; TestTanksAreKnown names what other
// tables have to say of it.
type TankKind struct {
	Verb    Verb
	Minutes float64 // at the pump or the drain
	Price   float64 // EUR per unit, where a place and the trip state none
	ByNight bool    // comes with a night on hook-up, not as a service of its own
	Means   string  // what a vehicle that has it has, as package advice calls it; "": nothing
	Onboard bool    // can be filled where it is used: a heavy vehicle drives with less of it
	Moves   bool    // what the engine burns: its use is told as a consumption too
	AtSites bool    // sites for the night often see to it, tagged or not: worth a call
	Last    bool    // the last place before the end that sells it is named
}

// tankKinds is the table of tanks that places can restore. Minutes: from
// memory, except where noted (diesel 6, LPG 8, exhaust fluid 5, 100 L of fresh
// water 8–15, grey 5, cassette 5–8). Prices: from memory, of 2025, in western Europe.
var tankKinds = map[string]TankKind{
	"diesel":   {Verb: Refuel, Minutes: 6, Price: 1.60, Moves: true, Last: true},
	"def":      {Verb: TopUp, Minutes: 5, Price: 1.10, Means: advice.HasDEF},
	"lpg":      {Verb: Refuel, Minutes: 8, Price: 0.95, Means: advice.HasGas},
	"fresh":    {Verb: Fill, Minutes: 10, Means: advice.HasFresh, Onboard: true, AtSites: true}, // paid by the call: whoever is there fills up
	"grey":     {Verb: Drain, Minutes: 5, Means: advice.HasGrey, AtSites: true},
	"cassette": {Verb: Empty, Minutes: 6, Means: advice.HasCassette, AtSites: true},
	"battery":  {Verb: Charge, ByNight: true, AtSites: true},
}

// KindOfTank is what is known about a tank; the zero value for one that is not in the table.
func KindOfTank(id string) TankKind { return tankKinds[id] }

// TankIDs lists the tanks of the table.
func TankIDs() []string { return slices.Sorted(maps.Keys(tankKinds)) }

// A Verb is what is done to a tank.
type Verb string

const (
	Refuel Verb = "refuel"
	TopUp  Verb = "top up"
	Fill   Verb = "fill"
	Drain  Verb = "drain"
	Empty  Verb = "empty"
	Charge Verb = "charge"
	LetOut Verb = "let out" // of a supply, for the vehicle not to be too heavy
)

var verbs = []Verb{Refuel, TopUp, Fill, Drain, Empty, Charge, LetOut}

// Does is that something is done to a tank, as a clause: "refuel 10 L of diesel".
// amount may be the zero value, where how much does not matter.
func (v Verb) Does(tank, amount fact.Value) fact.Value {
	return fact.Clause(fact.Of(fact.Kind("do."+strings.ReplaceAll(string(v), " ", "_")), fact.V{"tank": tank, "amount": amount}))
}

// A Did is something that was done to a tank. In a trip file it is a text: "refuel diesel".
type Did struct {
	Verb Verb
	Tank string // its id, or what a file calls it
}

// MarshalText writes "refuel diesel".
func (d Did) MarshalText() ([]byte, error) {
	if d.Verb == "" {
		return []byte(d.Tank), nil
	}
	return []byte(string(d.Verb) + " " + d.Tank), nil
}

// UnmarshalText reads what MarshalText writes. A text that begins with no verb is a tank.
func (d *Did) UnmarshalText(text []byte) error {
	d.Verb, d.Tank = "", string(text)
	for _, v := range verbs {
		if tank, found := strings.CutPrefix(string(text), string(v)+" "); found {
			d.Verb, d.Tank = v, tank
		}
	}
	return nil
}

// Says is a Did as a clause.
func (d Did) Says() fact.Value {
	if d.Verb == "" {
		return fact.Text(d.Tank)
	}
	return d.Verb.Does(fact.Tank(d.Tank, ""), fact.Value{})
}
