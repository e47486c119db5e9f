package trip

import "ullage/planner/fact"

// A PlaceKind is what a place is.
type PlaceKind string

// The kinds of place, as files have them.
const (
	FuelStation PlaceKind = "fuel"
	Disposal    PlaceKind = "dump"  // takes toilet waste
	WaterPoint  PlaceKind = "water" // potable water, in tank-size amounts or not
	WaterTap    PlaceKind = "tap"   // not potable by itself
	Stopover    PlaceKind = "stopover"
	Campsite    PlaceKind = "campsite"
	ServiceArea PlaceKind = "service" // beside a road, with or without a fuel station
	GasShop     PlaceKind = "gas"     // exchanges bottles
)

// Says is a kind of place as a value of a fact.
func (k PlaceKind) Says() fact.Value { return fact.Term("place." + string(k)) }

// A Custom is how a kind of place deals with those who call or spend a night,
// where the data do not say.
type Custom struct {
	CallFee  float64 // EUR, where the data state no amount but do not say that it is free
	NightFee float64 // EUR, where none is tagged
	Customer bool    // who calls is a customer: what is for customers only is served without a night
	Site     bool    // a site with service: counts as one in the wishes

	CheckIn   [2]float64 // minutes after midnight between which one arrives for the night, where the data do not say
	SettleMin float64    // minutes to settle in and pack up
}

// Custom is the kind's.
func (k PlaceKind) Custom() Custom {
	c := customs[k]
	if c.NightFee == 0 {
		c.NightFee = StopoverFee
	}
	if c.SettleMin == 0 {
		c.CheckIn, c.SettleMin = [2]float64{noon, quiet}, 20
	}
	return c
}

const (
	// A night is counted from noon: who is at a plain place earlier has the time in
	// hand. After quiet nobody arrives. Common practice, no source.
	noon, quiet = 12 * 60, 22 * 60

	// StopoverFee is what a plain place for motorhomes asks for a night. Source: price
	// list of the municipal site of Günzburg, 14 EUR.
	StopoverFee = 14
	// SiteFee is what a site asks of two people and a vehicle. From memory.
	SiteFee = 30
)

// customs are where kinds differ. Call fees: from memory; the municipal price
// list of StopoverFee asks for 1 EUR.
var customs = map[PlaceKind]Custom{
	FuelStation: {Customer: true},
	Disposal:    {CallFee: 2},
	WaterPoint:  {CallFee: 1},
	ServiceArea: {CallFee: 2, Customer: true},
	// Reception from 12:00 to 20:00: common practice, no source. 40 minutes to settle
	// in and pack up, 20 at a plain place: from memory.
	Campsite: {NightFee: SiteFee, Site: true, CheckIn: [2]float64{noon, 20 * 60}, SettleMin: 40},
}
