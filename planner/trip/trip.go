package trip

import (
	"github.com/paulmach/orb"

	"ullage/planner/life"
)

// Format is the value of [Trip.Format]: the `ullage` member of a trip file.
const Format = "ullage-trip-1"

// A Trip is all that a person decides. The zero value is not valid: see [Trip.Validate].
type Trip struct {
	Format     string             `json:"format"`
	Name       string             `json:"name"`
	Start      Date               `json:"start"` // local date of the first day: 2026-06-12
	Vehicle    Vehicle            `json:"vehicle"`
	Levels     map[string]float64 `json:"levels,omitempty"` // level at the start by tank; missing: the vehicle's usual start
	Party      Party              `json:"party"`
	Comfort    life.Comfort       `json:"comfort,omitzero"`
	Confidence float64            `json:"confidence,omitempty"` // share of trips on which each tank's use stays within what is planned, 0.5 to 0.99; 0: the usual 0.9
	Learned    []life.Factor      `json:"learned,omitempty"`    // what readings taught about the use, by tank
	GearKg     float64            `json:"gear_kg,omitempty"`    // things on board; 0: the usual for these people
	Day        DayLimits          `json:"day"`
	Stays      StayWishes         `json:"stays"`
	CorridorKm float64            `json:"corridor_km"`           // places farther off the route are left out; 0 < CorridorKm ≤ 50
	Circuity   float64            `json:"circuity"`              // road distance ÷ straight distance of a detour, ≥ 1; 0: the default
	ValuePerH  float64            `json:"value_per_h"`           // money: what an hour of detour and service counts as
	Currency   string             `json:"currency"`              // EUR
	Prices     map[string]float64 `json:"prices,omitempty"`      // money per unit by tank, where a place states none
	Ferries    []Ferry            `json:"ferries,omitempty"`     // ascending
	UpM        float64            `json:"up_m,omitempty"`        // metres that the route rises in all, counted as spread evenly; 0: flat, or not known
	DownM      float64            `json:"down_m,omitempty"`      // metres that it falls
	FromMin    float64            `json:"from_min,omitempty"`    // minutes after midnight of the first day, where the trip begins later than the usual departure; 0: with it
	KeysByMin  float64            `json:"keys_by_min,omitempty"` // minutes after midnight of the last day: when the keys are due; 0: not stated
	Backup     bool               `json:"backup"`                // survive one closed place
	Avoid      []string           `json:"avoid,omitempty"`       // place ids
	Require    []string           `json:"require,omitempty"`     // place ids
	Wishes     []Wish             `json:"wishes,omitempty"`      // by place and date
	Keep       []string           `json:"keep,omitempty"`        // stops of the plan in use: kept as long as that costs at most keepWithin more
	Done       []Done             `json:"done,omitempty"`        // stops behind, where the trip goes on from the road
	DoneKm     float64            `json:"done_km,omitempty"`     // how far that was
	DoneDays   int                `json:"done_days,omitempty"`   // days that are over: the first of this trip has the next number
	DoneStops  int                `json:"done_stops,omitempty"`  // stops of its plans that are behind, made or not
	Points     orb.LineString     `json:"points,omitempty"`      // that the route was drawn by; nil: it was not drawn
	Round      []string           `json:"round,omitempty"`       // roads that the route was led round, and why
	Route      orb.LineString     `json:"-"`                     // carried as the geometry of the trip file
}

// Done is a stop that lies behind.
type Done struct {
	Date  Date      `json:"date"`
	Km    float64   `json:"km"` // from where the trip began
	Place string    `json:"place"`
	Kind  PlaceKind `json:"kind,omitempty"` // for those without a name
	Name  string    `json:"name"`
	Night bool      `json:"night,omitempty"`
	Tasks []Did     `json:"tasks,omitempty"`
}

// LevelOf is what is in a tank at the start.
func (t Trip) LevelOf(k Tank) float64 {
	if l, stated := t.Levels[k.ID]; stated {
		return l
	}
	return k.Start
}
