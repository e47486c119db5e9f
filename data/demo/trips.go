package demo

import (
	"ullage/planner"
	"ullage/planner/trip"
)

// Trip is the trip that the tool opens with: two adults and a child, once
// round the island in a June week, with a vehicle whose seven tanks all need
// something on the way. The route follows the roads of [Extract]; the road to
// Pouvazhe is driven out and back.
func Trip() trip.Trip {
	s := theIsland()
	return trip.Trip{
		Format: trip.Format,
		Name:   "Round the island in June",
		Start:  "2027-06-11",
		Vehicle: trip.Vehicle{
			ID: "quorrel", Name: "Quorrel 66, low profile with a compressor fridge",
			HeightM: 2.85, WidthM: 2.30, LengthM: 6.60, MassKg: 3500,
			Tanks: []trip.Tank{
				supply("diesel", "Diesel", 90, 12, 90, trip.Use{PerKm: 0.108}, &planner.End{AtLeast: new(90.0), RefillPrice: new(2.5)}),
				supply("def", "Exhaust fluid (DEF)", 18, 2, 18, trip.Use{PerKm: 0.0043}, nil),
				supply("lpg", "LPG", 36, 3, 36, trip.Use{PerNight: 1.6, HookUpNight: new(0.5), PerPersonNight: 0.15}, nil),
				supply("fresh", "Fresh water", 100, 10, 100, trip.Use{PerPersonNight: 35}, nil),
				{ID: "grey", Name: "Grey water", Kind: planner.Waste, Unit: "L", Capacity: 90, Reserve: 5, Use: trip.Use{PerPersonNight: 31.5}, End: &planner.End{AtMost: new(9.0)}},
				{ID: "cassette", Name: "Toilet cassette", Kind: planner.Waste, Unit: "L", Capacity: 18, Reserve: 3.6, Use: trip.Use{PerPersonNight: 2.5}, End: &planner.End{AtMost: new(0.0)}},
				{ID: "battery", Name: "Leisure battery", Kind: planner.Supply, Unit: "Ah", Capacity: 95, Reserve: 19, Start: 95,
					Use: trip.Use{PerKm: -0.1, PerNight: 50, HookUpNight: new(-100.0)}},
			},
		},
		Levels:     map[string]float64{"def": 4, "lpg": 9, "battery": 95},
		Party:      trip.Party{Adults: 2, Children: 1, Showers: "sites", Toilet: "aboard", Cooking: "aboard"},
		Day:        trip.DayLimits{MaxKm: 220, MaxMin: 480, DepartMin: 570, SpeedKmh: 58},
		Stays:      trip.StayWishes{MinNights: 6, MaxNights: 7, Campsites: true, Stopovers: true},
		CorridorKm: 6,
		Circuity:   1.4,
		ValuePerH:  15,
		Currency:   "EUR",
		Prices:     map[string]float64{"diesel": 1.68, "def": 0.95, "lpg": 0.92},
		Route: s.lineOf(s.drive("Vazhoum", "Sefnulve", "Larazhe", "Imrazhe", "Zhirilth", "Pouvazhe", "Zhirilth", "Bezhoum", "Thamoum",
			"Olvrazhe", "bridge west", "bridge east", "Kessoum", "Aqelune", "Irthazhe", "Quelazhe", "Melzhoum", "Ruzhethi", "Nevrazhe", "Ruzhethi", "Othrazhe", "Orovilth", "Vazhoum")),
	}
}

func supply(id, name string, capacity, reserve, start float64, use trip.Use, end *planner.End) trip.Tank {
	return trip.Tank{ID: id, Name: name, Kind: planner.Supply, Unit: "L", Capacity: capacity, Reserve: reserve, Start: start, Use: use, End: end}
}
