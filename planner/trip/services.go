package trip

// A Service is what is known about restoring one tank, wherever it happens.
type Service struct {
	Verb    string
	Minutes float64 // at the pump or the drain
	Price   float64 // EUR per unit, where a place and the trip state none
	ByNight bool    // comes with a night on hook-up, not as a service of its own
}

// services is the table of tanks that places can restore. Minutes: from
// memory, except where noted (diesel 6, LPG 8, exhaust fluid 5, 100 L of fresh
// water 8–15, grey 5, cassette 5–8). Prices: from memory, of 2025, in western Europe.
var services = map[string]Service{
	"diesel":   {Verb: "refuel", Minutes: 6, Price: 1.60},
	"def":      {Verb: "top up", Minutes: 5, Price: 1.10},
	"lpg":      {Verb: "refuel", Minutes: 8, Price: 0.95},
	"fresh":    {Verb: "fill", Minutes: 10}, // paid by the call, see stopFee: whoever is there fills up
	"grey":     {Verb: "drain", Minutes: 5},
	"cassette": {Verb: "empty", Minutes: 6},
	"battery":  {Verb: "charge", ByNight: true},
}

// ServiceOf is what is known about restoring a tank; ok is false for a tank that no place restores.
func ServiceOf(tank string) (s Service, ok bool) {
	s, ok = services[tank]
	return s, ok
}

const (
	// DefaultCircuity is road distance ÷ straight distance of a detour. From
	// memory: Ballou, Rahardja, Sakai, "Selected country circuity factors for
	// road travel distance estimation", 2002, has 1.2 to 1.6 by country (Europe
	// 1.46); Boscoe, Henry, Zdeb, "A nationwide comparison of driving distance
	// versus straight-line distance to hospitals", 2012, has 1.42 (USA).
	DefaultCircuity = 1.4
)

// A StayKind is how a kind of place counts for nights: which wish allows it, and
// the fee where none is tagged. 14 EUR a night: the municipal price list
// above; 30 EUR for a site, two people and a vehicle: from memory.
type StayKind struct {
	Allowed func(StayWishes) bool
	Fee     float64
}

var (
	SiteStay  = StayKind{func(w StayWishes) bool { return w.Campsites }, 30}
	PlainStay = StayKind{func(w StayWishes) bool { return w.Stopovers }, 14}
)

// StayKindOf is how nights at a kind of place count.
func StayKindOf(kind string) StayKind {
	if kind == "campsite" {
		return SiteStay
	}
	return PlainStay
}
