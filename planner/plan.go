package planner

// PlanFormat is the value of [Plan.Format].
const PlanFormat = "ullage-plan-2"

// Status says what is known about a plan.
type Status string

const (
	// Optimal: no plan is cheaper by more than 1e-6 of its cost.
	Optimal Status = "optimal"
	// Feasible: valid, and Cost − Bound says how far it can be off.
	Feasible Status = "feasible"
	// Infeasible: it is proven that no plan exists; Why says what stands in the way.
	Infeasible Status = "infeasible"
	// Unknown: neither a plan nor a proof was found in the time given.
	Unknown Status = "unknown"
)

// A Plan is an answer to a [Problem]. Its JSON form is the file format
// ullage-plan-2.
type Plan struct {
	Format string     `json:"format"`
	Status Status     `json:"status"`
	Cost   float64    `json:"cost"`
	Bound  float64    `json:"bound"` // proven: no plan costs less
	Visits []Visit    `json:"visits"`
	End    *PlanEnd   `json:"end,omitempty"`
	Parts  *CostParts `json:"cost_parts,omitempty"`
	Why    []Reason   `json:"why,omitempty"` // infeasible: what stands in the way
}

// A Visit is one stop made. Arrive is the moment of standing at the place,
// before any waiting, half of the detour driven; for a night, the moment of
// checking in. Leave is the moment of driving
// off, the other half still to drive. Both give the stop's own Km.
type Visit struct {
	Stop   string  `json:"stop"`
	Night  bool    `json:"night,omitempty"`
	Serve  []Serve `json:"serve,omitempty"`
	Arrive Moment  `json:"arrive"`
	Leave  Moment  `json:"leave"`

	InHand float64 `json:"in_hand,omitempty"` // minutes to spend before checking in, on the way or beside it: they cost nothing
	Drain  float64 `json:"drain,omitempty"`   // let out of the supply tank that [Mass] limits, before driving off

	// Fallback names the stop to use instead should this one be closed on
	// arrival, by tank, and under [NightFallback] for the night: see [backup.Closures].
	Fallback map[string]string `json:"fallback,omitempty"`
}

// Serve is one service taken. Amount is what goes in (supply) or comes out (waste),
// of a stay in all.
type Serve struct {
	Tank   string  `json:"tank"`
	Amount float64 `json:"amount"`
	Acts   []Act   `json:"acts,omitempty"` // of a stay: when how much of it; see [Night.Acts]
}

// An Act is one time that a tank is served in a stay.
type Act struct {
	Night  int     `json:"night"` // nights slept there by then: 0 is on arrival, the last before leaving
	Amount float64 `json:"amount"`
	From   float64 `json:"from"` // level before it
}

// A Moment is the state of the trip at one time.
type Moment struct {
	Km     float64            `json:"km"`     // position along the route
	Min    float64            `json:"min"`    // minutes since 00:00 of day one
	Levels map[string]float64 `json:"levels"` // level by tank
}

// PlanEnd is the state at the end of the trip.
type PlanEnd struct {
	Min    float64            `json:"min"`
	Levels map[string]float64 `json:"levels"`
	Refill map[string]float64 `json:"refill,omitempty"` // shortfall paid for, by tank
}

// CostParts adds up to the plan's cost.
type CostParts struct {
	Goods  float64 `json:"goods"`  // amounts × prices
	Fees   float64 `json:"fees"`   // visits and services
	Nights float64 `json:"nights"` // night fees
	Time   float64 `json:"time"`   // detours, stops, services, settling in and waiting
	Refill float64 `json:"refill"` // shortfall at the end
}

// NightFallback is the key of [Visit.Fallback] for the night.
const NightFallback = "night"
