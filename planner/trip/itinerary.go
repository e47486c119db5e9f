package trip

import (
	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
	"ullage/planner/life/advice"
)

// An Itinerary is a plan as people read it: days, calls and levels.
type Itinerary struct {
	Name      string            `json:"name"`
	Status    planner.Status    `json:"status"`
	Currency  string            `json:"currency"`
	Cost      float64           `json:"cost"`
	Bound     float64           `json:"bound"`
	Parts     planner.CostParts `json:"parts"`
	LengthKm  float64           `json:"length_km"`
	Days      []Day             `json:"days"`
	Strips    []Strip           `json:"strips"`           // one per tank, in the vehicle's order
	Wishes    []fact.Fact       `json:"wishes,omitempty"` // by place and date
	Places    []Candidate       `json:"places"`           // every candidate in the corridor, chosen or not
	Cautions  []fact.Fact       `json:"cautions,omitempty"`
	Why       []Reason          `json:"why,omitempty"`      // a refused plan, the true cause first
	Cures     []fact.Fact       `json:"cures,omitempty"`    // of a refused plan, besides those of its reasons
	Tried     fact.Fact         `json:"tried,omitzero"`     // that nothing helps, or that not all was tried; nothing: neither
	Estimated bool              `json:"estimated"`          // a detour of the plan is straight distance × circuity
	OffRoad   [][2]float64      `json:"off_road,omitempty"` // from km to km: no road is known, the route is as drawn
	Nearest   *Nearest          `json:"nearest,omitempty"`
	Least     *Least            `json:"least,omitempty"` // nil: the plan is the cheapest that was found
	Safety    *Safety           `json:"safety,omitempty"`
	Others    []Other           `json:"others,omitempty"` // other plans that one may like better, cheapest first

	Confidence float64            `json:"confidence"`        // of each tank's use: the bands of the strips
	Care       *Care              `json:"care,omitempty"`    // what that costs
	Counts     []Count            `json:"counts,omitempty"`  // what the plan counts with, by tank
	Weight     *Weight            `json:"weight,omitempty"`  // nil: not known
	Done       []Done             `json:"done,omitempty"`    // stops behind
	DoneKm     float64            `json:"done_km,omitempty"` // how far that was: positions along the route count from there
	Return     *Return            `json:"return,omitempty"`
	HowTos     []advice.HowTo     `json:"howtos,omitempty"`     // of what the trip does
	Checklists []advice.Checklist `json:"checklists,omitempty"` // set-off, arrival, service, return
}

// A Reason is a limit that a refused plan breaks, where along the route, and what
// would cure it.
type Reason struct {
	planner.Reason
	Cause Cause       `json:"cause,omitempty"`
	Says  fact.Fact   `json:"says"`
	Cures []fact.Fact `json:"cures,omitempty"`
}

// A Cause says what a reason of a refusal lies in.
type Cause string

// The causes, the one that is told first before all others.
const (
	CauseData      Cause = "data"      // the map data hold no place for it
	CauseAgreement Cause = "agreement" // a condition of the hire agreement
	CauseWish      Cause = "wish"      // what the travellers want
	CauseTank      Cause = "tank"      // what a tank holds, on a stretch
)

// Nearest is the trip that breaks least, where there is no plan. It is not
// valid: nobody should drive it as it is.
type Nearest struct {
	Broken []fact.Fact `json:"broken"` // what it breaks, where, by how much
	Days   []fact.Fact `json:"days"`   // a line each
}

// Least is the cheapest plan, where another is shown that people rather drive, and what
// that costs.
type Least struct {
	Cost      float64 `json:"cost"`
	Even      float64 `json:"even"`       // ≥ 0, for days that are about as long
	Pump      float64 `json:"pump"`       // for amounts that people pump; < 0: a stop for next to nothing is spared
	LongestKm float64 `json:"longest_km"` // of the days of the plan shown
	Proven    bool    `json:"proven"`     // but for the amounts, no plan with days of at most that costs less
}

// Safety is the price of a plan that survives one closed place.
type Safety struct {
	Price float64   `json:"price"` // ≥ 0
	Says  fact.Fact `json:"says"`
}

// An Other is another plan, in short.
type Other struct {
	Extra float64     `json:"extra"`           // what it costs more than the plan; < 0 if the plan is kept for being in use
	Says  []fact.Fact `json:"says"`            // what is different
	Days  []fact.Fact `json:"days"`            // a line each
	Avoid string      `json:"avoid,omitempty"` // the place to leave out to get it; "": none
}

// Stops are the stops of the plan, for [Trip.Keep].
func (it Itinerary) Stops() []string {
	var out []string
	for _, d := range it.Days {
		for _, c := range d.Calls {
			out = append(out, c.Stop)
		}
	}
	return out
}

// A Day is what happens between two nights. Numbers start at 1.
type Day struct {
	Number   int     `json:"number"`
	Date     Date    `json:"date"` // 2026-06-12
	FromKm   float64 `json:"from_km"`
	ToKm     float64 `json:"to_km"`
	DriveKm  float64 `json:"drive_km"`  // detours included, ferries not
	DriveMin float64 `json:"drive_min"` // driving only
	StartMin float64 `json:"start_min"` // since 00:00 of day one
	EndMin   float64 `json:"end_min"`
	Breaks   int     `json:"breaks,omitempty"` // of 15 minutes, advised; not in the times
	Due      []Due   `json:"due,omitempty"`    // at the place of the last night, before driving
	Calls    []Call  `json:"calls"`            // the last one may be the night

	Ferries []Crossing `json:"ferries,omitempty"` // by their time among the calls
}

// Due is what is done on a later day of a stay than that of arriving. They are tasks of its call.
type Due struct {
	Stop    string    `json:"stop"`
	Kind    PlaceKind `json:"kind"`
	Name    string    `json:"name"`
	Leaving bool      `json:"leaving,omitempty"` // the stay ends on this day
	Tasks   []Task    `json:"tasks"`
}

// A Call is one stop made.
type Call struct {
	N         int         `json:"n"`     // its number on the trip, from 1; stops that are behind count
	Place     string      `json:"place"` // place id
	Stop      string      `json:"stop"`  // id in the problem
	Kind      PlaceKind   `json:"kind"`
	Name      string      `json:"name"`
	Point     orb.Point   `json:"point"`
	Km        float64     `json:"km"`
	OffKm     float64     `json:"off_km"` // straight distance off the route
	DetourKm  float64     `json:"detour_km"`
	DetourMin float64     `json:"detour_min"`
	ByRoad    bool        `json:"by_road,omitempty"` // detour and minutes follow roads; else an estimate
	Entry     *Entry      `json:"entry,omitempty"`   // where to drive in; nil: not known, or at the point
	ArriveMin float64     `json:"arrive_min"`
	LeaveMin  float64     `json:"leave_min"`
	InHandMin float64     `json:"in_hand_min,omitempty"` // to spend before arriving for the night, on the way or beside it
	LeaveKg   float64     `json:"leave_kg,omitempty"`    // what the scales show on driving off; 0: not known
	Night     bool        `json:"night,omitempty"`
	Nights    int         `json:"nights,omitempty"`
	Arrive    Levels      `json:"arrive"` // of all tanks
	Leave     Levels      `json:"leave"`
	Tasks     []Task      `json:"tasks,omitempty"`
	Cost      float64     `json:"cost"`            // goods and fees, without the value of time
	Here      fact.Fact   `json:"here,omitzero"`   // why the stop is made
	Facts     []fact.Fact `json:"facts,omitempty"` // what the data say, with the tag
	Contact   Contact     `json:"contact,omitzero"`
	Notes     []Note      `json:"notes,omitempty"` // what people know of the place, the newest last
	Cautions  []fact.Fact `json:"cautions,omitempty"`
	HowTo     []string    `json:"howto,omitempty"`    // ids of [Itinerary.HowTos]
	Fallback  []fact.Fact `json:"fallback,omitempty"` // where to go if it is closed
}

// Levels are the levels of all tanks at one moment, by tank id.
type Levels map[string]float64

// A Task is one act at a call. In a stay a tank may be served more than once.
type Task struct {
	Night  int     `json:"night,omitempty"` // of a stay: nights slept there by then; 0 is on arrival, the last before leaving
	Tank   string  `json:"tank"`
	Verb   Verb    `json:"verb"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	Cost   float64 `json:"cost"`
	Before float64 `json:"before"` // level
	After  float64 `json:"after"`
}

// A Strip is the level of one tank along the trip.
type Strip struct {
	Tank     string       `json:"tank"`
	Name     string       `json:"name"`
	Kind     planner.Kind `json:"kind"`
	Unit     string       `json:"unit"`
	Capacity float64      `json:"capacity"`
	Reserve  float64      `json:"reserve"`
	Points   []Level      `json:"points"` // in order; two points at one km are a jump
}

// A Level is one moment of a tank.
type Level struct {
	Km  float64 `json:"km"`
	Min float64 `json:"min"`
	Day int     `json:"day"`
	L   float64 `json:"l"` // as planned: at the trip's confidence it is no worse

	Stay bool `json:"stay,omitempty"` // within a stay: between arriving and leaving

	Low    float64 `json:"low"` // with the likely use, and between which limits
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// A Candidate is a place in the corridor, at one pass of the route.
type Candidate struct {
	Place    string     `json:"place"`
	Stop     string     `json:"stop"`
	Kind     PlaceKind  `json:"kind"`
	Name     string     `json:"name"`
	Point    orb.Point  `json:"point"`
	Km       float64    `json:"km"`
	OffKm    float64    `json:"off_km"`
	Tanks    []string   `json:"tanks,omitempty"` // served
	Night    bool       `json:"night,omitempty"`
	Chosen   bool       `json:"chosen,omitempty"`
	ByRoad   bool       `json:"by_road,omitempty"`  // the way there is known
	Excluded *fact.Fact `json:"excluded,omitempty"` // why it is not a candidate: too low, private…; nil: it is one
}

// A Count is what a plan counts with for one tank: at least, likely, and (High) planned.
type Count struct {
	Tank   string    `json:"tank"`
	Name   string    `json:"name"`
	Unit   string    `json:"unit"`
	Per100 life.Band `json:"per_100km"`        // negative fills
	Night  life.Band `json:"night"`            // a usual day and night in the middle of the trip, at a place that offers nothing
	Factor float64   `json:"factor,omitempty"` // of the usual use, learnt on the road; 0: nothing learnt
	Source fact.Fact `json:"source,omitzero"`
}

// Weight is the vehicle on the scales as it sets off.
type Weight struct {
	Kg        float64   `json:"kg"`
	AllowedKg float64   `json:"allowed_kg"`
	FreshL    float64   `json:"fresh_l"`       // the most fresh water to drive with, other supplies full
	Says      fact.Fact `json:"says,omitzero"` // a warning; nothing: all may be full
}

// Care is what it costs to plan with more use than the likely one: what the
// plan costs more than the best plan for the likely use, if the use then is
// the likely one. Fuel that is not burnt is not counted.
type Care struct {
	Confidence float64   `json:"confidence"`
	Price      float64   `json:"price"`             // ≥ 0
	AtMost     bool      `json:"at_most,omitempty"` // it is no more than that; the exact price takes longer
	Says       fact.Fact `json:"says"`
}

// A Return is the last morning: what is done in which order until the keys are
// given back, and whether the tanks are as agreed.
type Return struct {
	Date      Date        `json:"date"`
	ArriveMin float64     `json:"arrive_min"`         // since 00:00 of day one
	KeysByMin float64     `json:"keys_by_min"`        // minutes after midnight of that day; 0: not stated
	InHandMin float64     `json:"in_hand_min"`        // between the two; < 0: too late
	Station   []fact.Fact `json:"station,omitempty"`  // the last place before the end that sells diesel, and a nearer one that is closed then
	Steps     []fact.Fact `json:"steps"`              // the last stops, in order, then the hand-over
	Agreed    []fact.Fact `json:"agreed"`             // each tank that the hire agreement speaks of
	Warnings  []fact.Fact `json:"warnings,omitempty"` // what is not as agreed
}
