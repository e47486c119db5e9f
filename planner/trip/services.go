package trip

// A service is what is known about restoring one tank, wherever it happens.
type service struct {
	verb    string
	minutes float64 // at the pump or the drain
	price   float64 // EUR per unit, where a place and the trip state none
	byNight bool    // comes with a night on hook-up, not as a service of its own
}

// services is the table of tanks that places can restore. Minutes: from
// memory, except where noted (diesel 6, LPG 8, exhaust fluid 5, 100 L of fresh
// water 8–15, grey 5, cassette 5–8). Prices: from memory, of 2025, in western Europe.
var services = map[string]service{
	"diesel":   {verb: "refuel", minutes: 6, price: 1.60},
	"def":      {verb: "top up", minutes: 5, price: 1.10},
	"lpg":      {verb: "refuel", minutes: 8, price: 0.95},
	"fresh":    {verb: "fill", minutes: 10}, // paid by the call, see stopFee: whoever is there fills up
	"grey":     {verb: "drain", minutes: 5},
	"cassette": {verb: "empty", minutes: 6},
	"battery":  {verb: "charge", byNight: true},
}

const (
	// defaultCircuity is road distance ÷ straight distance of a detour. From
	// memory: Ballou, Rahardja, Sakai, "Selected country circuity factors for
	// road travel distance estimation", 2002, has 1.2 to 1.6 by country (Europe
	// 1.46); Boscoe, Henry, Zdeb, "A nationwide comparison of driving distance
	// versus straight-line distance to hospitals", 2012, has 1.42 (USA).
	defaultCircuity = 1.4
	// detourKmh is the speed off the route: 50 rural, 25 town (Europe, from memory).
	detourKmh = 40.0
	// stopMin is spent by any call: turn in, wait, pay, turn out. From memory.
	stopMin = 4.0
	// marginM is left above and beside the vehicle. Common practice, no source;
	// the plate on the vehicle may be without aerial, load and tyres pumped up.
	marginM = 0.10
)

// stopFee is what a call at a place of a kind costs where the data state no
// amount but do not say that it is free. From memory; the municipal price list
// above asks for 1 EUR.
var stopFee = map[string]float64{"dump": 2, "service": 2, "water": 1}

// stayKind is how a kind of place counts for nights: which wish allows it, and
// the fee where none is tagged. 14 EUR a night: the municipal price list
// above; 30 EUR for a site, two people and a vehicle: from memory.
type stayKind struct {
	wish func(StayWishes) bool
	fee  float64
}

var (
	siteStay  = stayKind{func(w StayWishes) bool { return w.Campsites }, 30}
	plainStay = stayKind{func(w StayWishes) bool { return w.Stopovers }, 14}
)

func stayKindOf(kind string) stayKind {
	if kind == "campsite" {
		return siteStay
	}
	return plainStay
}

// customerByCall are kinds where who calls is a customer: what is for
// customers only is served without a night. Elsewhere the customer is the guest.
var customerByCall = map[string]bool{"fuel": true, "service": true}
