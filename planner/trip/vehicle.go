package trip

import (
	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/life"
)

// A Vehicle is a model of the fleet: its size and its tanks.
type Vehicle struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	HeightM float64 `json:"height_m"`
	WidthM  float64 `json:"width_m"`
	LengthM float64 `json:"length_m"`
	MassKg  float64 `json:"mass_kg"`            // gross, allowed
	EmptyKg float64 `json:"empty_kg,omitempty"` // without people, gear and liquids; 0: unknown, no look at the weight
	Tanks   []Tank  `json:"tanks"`

	// Life is what the vehicle uses by road, weather and people. It comes before
	// the Use of the tanks, which counts where Life is nil.
	Life *life.Vehicle `json:"life,omitempty"`
}

// TopKmh is how fast it is driven at most, by its allowed mass.
func (v Vehicle) TopKmh() float64 { return life.TopKmh(v.MassKg) }

// A Tank is a limit of the vehicle and what uses it up.
type Tank struct {
	ID       string       `json:"id"`   // a row of tankkind.go
	Name     string       `json:"name"` // as shown: "Exhaust fluid (DEF)"
	Kind     planner.Kind `json:"kind"`
	Unit     string       `json:"unit"`     // L, Ah
	Capacity float64      `json:"capacity"` // usable, in Unit
	Reserve  float64      `json:"reserve"`  // headroom never touched
	Start    float64      `json:"start"`    // usual level at the start
	Use      Use          `json:"use"`
	End      *planner.End `json:"end,omitempty"` // as the hire agreement says
}

// Use is what takes headroom from a tank of a vehicle without Life. Negative
// restores.
type Use struct {
	PerKm          float64  `json:"per_km,omitempty"`
	PerNight       float64  `json:"per_night,omitempty"`        // vehicle alone, without hook-up
	PerPersonNight float64  `json:"per_person_night,omitempty"` // an adult who does everything aboard; use.go scales it by habits and for children
	HookUpNight    *float64 `json:"hookup_night,omitempty"`     // replaces PerNight where there is hook-up; nil: no difference
	Source         string   `json:"source,omitempty"`
}

// Called is the tank in a fact.
func (k Tank) Called() fact.Value { return fact.Tank(k.ID, k.Name) }

// Called is a tank in a fact; an unknown one is its id.
func (v Vehicle) Called(id string) fact.Value {
	for _, k := range v.Tanks {
		if k.ID == id {
			return k.Called()
		}
	}
	return fact.Tank(id, "")
}
