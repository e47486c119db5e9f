package demo

import (
	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/life"
	"ullage/planner/trip"
)

// Trip is the trip that the tool opens with: two adults and a child, once
// round the island in a June week, with a vehicle whose seven tanks all need
// something on the way. The route follows the roads of [Extract]; the roads to
// Sorvane Quay and Pandrel Quay are driven out and back.
func Trip() trip.Trip {
	return trip.Trip{
		Format:  trip.Format,
		Name:    "Round the island in June",
		Start:   "2027-06-11", // a Friday: a Sunday is passed
		Vehicle: quorrel(),
		// As the hirers before left it.
		Levels:     map[string]float64{"def": 12.2, "lpg": 6, "grey": 36},
		Party:      trip.Party{Adults: 2, Children: 1, Showers: "sites", Toilet: "aboard", Cooking: "aboard"},
		Day:        trip.DayLimits{MaxKm: 210, MaxMin: 480, DepartMin: 570, SpeedKmh: 58},
		Stays:      trip.StayWishes{MinNights: 0, MaxNights: 0, Campsites: true, Stopovers: true},
		CorridorKm: 5,
		Circuity:   1.4,
		ValuePerH:  15,
		Currency:   "EUR",
		Prices:     map[string]float64{"diesel": 1.68, "def": 0.95, "lpg": 0.92},
		Route: drawn("Tamrin", "Belvone Field", "Torlane Quay", "Tarsil Quay", "Fendal Bridge", "Sorvane Quay", "Fendal Bridge", "Bendro", "Savrin",
			"Ruvel Quay", "bridge west", "bridge east", "Lendor", "Nerava Wells", "Altrel Quay", "Velmo Quay", "Caldrin",
			"Jondel Hill", "Pandrel Quay", "Jondel Hill", "Osmer Quay", "Nolbe Bridge", "Dalmer Bridge", "Evrano Wells", "Tamrin"),
	}
}

// quorrel is the vehicle of the demo trip. The fridge is a compressor's, which
// needs a hook-up every few nights if little is driven.
func quorrel() trip.Vehicle {
	battery := life.Battery{Chemistry: life.LiFePO4, PlateAh: 110, DriveA: life.SplitChargeA, ChargerA: 20}
	return trip.Vehicle{
		ID: "quorrel", Name: "Quorrel 66, low profile with a compressor fridge",
		HeightM: 2.85, WidthM: 2.30, LengthM: 6.60, MassKg: 3500, EmptyKg: 2880,
		Tanks: []trip.Tank{
			{ID: "diesel", Name: "Diesel", Kind: planner.Supply, Unit: "L", Capacity: 90, Reserve: 12, Start: 90,
				End: &planner.End{AtLeast: new(90.0), RefillPrice: new(2.5)}},
			{ID: "def", Name: "Exhaust fluid (DEF)", Kind: planner.Supply, Unit: "L", Capacity: 18, Reserve: 10.1, Start: 18,
				End: &planner.End{AtLeast: new(12.0), RefillPrice: new(4.0)}},
			{ID: "lpg", Name: "LPG", Kind: planner.Supply, Unit: "L", Capacity: 36, Reserve: 3, Start: 36,
				End: &planner.End{AtLeast: new(9.0), RefillPrice: new(2.0)}},
			{ID: "fresh", Name: "Fresh water", Kind: planner.Supply, Unit: "L", Capacity: 100, Reserve: 10, Start: 100},
			{ID: "grey", Name: "Grey water", Kind: planner.Waste, Unit: "L", Capacity: 90, Reserve: 5,
				End: &planner.End{AtMost: new(9.0)}},
			{ID: "cassette", Name: "Toilet cassette", Kind: planner.Waste, Unit: "L", Capacity: 18, Reserve: 3.6,
				End: &planner.End{AtMost: new(0.0)}},
			{ID: "battery", Name: "Leisure battery", Kind: planner.Supply, Unit: "Ah", Capacity: battery.UsableAh(), Reserve: 9.5, Start: battery.UsableAh()},
		},
		Life: &life.Vehicle{
			Body: life.LowProfile, LoadedKg: 3350, Per100: 10.5, Shell: life.Shell{LengthM: 6.60, WidthM: 2.30, HeightM: 2.85, Grade: 3},
			Heater: life.LPGHeater, HasLPG: true, Fridge: life.Compressor, Battery: battery,
		},
	}
}

// drawn is the quickest route over the island's roads through towns.
func drawn(names ...string) orb.LineString {
	s := theIsland()
	nodes := s.drive(names...)
	if nodes == nil {
		panic("demo: no road through the towns")
	}
	return s.lineOf(nodes)
}
