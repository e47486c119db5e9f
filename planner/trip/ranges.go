package trip

// A Range is what a number may be, both ends included.
type Range struct{ Least, Most float64 }

// Has tells whether a number lies in a range; NaN does not.
func (r Range) Has(v float64) bool { return v >= r.Least && v <= r.Most }

// Ranges of a trip's numbers, for whoever lets them be changed.
var (
	AdultsRange     = Range{1, 20}
	ChildrenRange   = Range{0, 20}
	DayKmRange      = Range{1, 2000}
	DayMinRange     = Range{10, 1440}
	SpeedRange      = Range{5, 130} // km/h
	NightsRange     = Range{0, 365}
	MoneyRange      = Range{0, 1e6}
	ClockRange      = Range{0, 1439} // minutes after midnight
	CorridorRange   = Range{0.01, MostCorridorKm}
	CircuityRange   = Range{1, 5}
	ConfidenceRange = Range{0.5, 0.99}
	GearRange       = Range{0, 5000} // kg
	ClimbRange      = Range{0, 1e6}  // m
)

// HandOverMin is for cleaning, unloading and the hand-over, before the keys are due;
// from memory.
const HandOverMin = 60

// MostCapacity of a tank, in its unit.
const MostCapacity = 10000

// The days that a trip may begin on: those that calendars of holidays are right for.
const firstDay, lastDay Date = "2000-01-01", "2099-12-31"

// MostCorridorKm: wider is no detour any more.
const MostCorridorKm = 50
