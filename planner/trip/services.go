package trip

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
