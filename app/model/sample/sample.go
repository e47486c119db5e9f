// Package sample is an itinerary for tests: not planned, but consistent. Three
// days, two nights, three tanks, numbers by hand.
package sample

import (
	"github.com/paulmach/orb"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// Trip is a trip of three days.
func Trip() trip.Trip {
	v := trip.Fleet()[3]
	return trip.Trip{
		Format: trip.Format, Name: "Round the bay", Start: "2026-06-12", Vehicle: v,
		Party:      trip.Party{Adults: 2, Children: 1, Showers: "sites", Toilet: "aboard", Cooking: "aboard"},
		Day:        trip.DayLimits{MaxKm: 250, MaxMin: 480, DepartMin: 540, SpeedKmh: 60},
		Stays:      trip.StayWishes{MinNights: 2, MaxNights: 4, Campsites: true, Stopovers: true},
		CorridorKm: 10, ValuePerH: 15, Currency: "EUR",
		Route: orb.LineString{{10, 50}, {10.6, 50.3}, {11.4, 50.2}, {12, 50.6}, {12.9, 50.4}},
	}
}

// Plan is its plan.
func Plan() trip.Itinerary {
	km := []float64{0, 150, 300, 480}
	call := func(id string, kind trip.PlaceKind, name string, at, min, stay float64, night bool, tasks ...trip.Task) trip.Call {
		line := Trip().Route
		p := line[int(at/120)] // somewhere on it
		return trip.Call{Place: id, Stop: id, Kind: kind, Name: name, Point: orb.Point{p[0], p[1] + 0.03}, Km: at, OffKm: 1.1,
			DetourKm: 3.1, DetourMin: 5, ArriveMin: min, LeaveMin: min + stay, Night: night, Nights: 1, Tasks: tasks, Cost: 12.5,
			Facts: []fact.Fact{Tag("amenity=fuel")}, Cautions: []fact.Fact{Tag("No flame while gas is taken in.")}, Fallback: []fact.Fact{Tag("Harbour pumps, km 171")}}
	}
	days := []trip.Day{
		{Number: 1, Date: "2026-06-12", FromKm: 0, ToKm: 150, DriveKm: 153, DriveMin: 160, StartMin: 540, EndMin: 720, Calls: []trip.Call{
			call("n1", "fuel", "Corner pumps", 90, 630, 10, false, trip.Task{Tank: "diesel", Verb: "refuel", Amount: 20, Unit: "L", Cost: 33, Before: 49.2, After: 69.2}),
			call("n2", "campsite", "Dune field", 150, 720, 1260, true),
		}},
		{Number: 2, Date: "2026-06-13", FromKm: 150, ToKm: 300, DriveKm: 150, DriveMin: 150, StartMin: 1980, EndMin: 2200, Calls: []trip.Call{
			call("n3", "service", "", 200, 2030, 15, false,
				trip.Task{Tank: "fresh", Verb: "fill", Amount: 100, Unit: "L", Cost: 1, Before: 40, After: 140},
				trip.Task{Tank: "grey", Verb: "drain", Amount: 85, Unit: "L", Before: 85}),
			call("n4", "stopover", "Old mill", 300, 2200, 1220, true),
		}},
		{Number: 3, Date: "2026-06-14", FromKm: 300, ToKm: 480, DriveKm: 180, DriveMin: 180, StartMin: 3420, EndMin: 3600},
	}
	strip := func(id, name string, kind planner.Kind, capacity, reserve float64, levels ...float64) trip.Strip {
		at := [][2]float64{{0, 540}, {90, 630}, {90, 640}, {150, 720}, {150, 1980}, {200, 2030}, {200, 2045}, {300, 2200}, {300, 3420}, {480, 3600}}
		s := trip.Strip{Tank: id, Name: name, Kind: kind, Unit: "L", Capacity: capacity, Reserve: reserve}
		for i, l := range levels {
			s.Points = append(s.Points, trip.Level{Km: at[i][0], Min: at[i][1], Day: 1 + i/4, L: l})
		}
		return s
	}
	return trip.Itinerary{
		Name: "Round the bay", Status: planner.Optimal, Currency: "EUR", Cost: 121.5, Bound: 121.5,
		Parts: planner.CostParts{Goods: 34, Fees: 4, Nights: 44, Time: 39.5}, LengthKm: km[3], Days: days, Estimated: true,
		Strips: []trip.Strip{
			strip("diesel", "Diesel", planner.Supply, 75, 12, 60, 49.2, 69.2, 62, 62, 56, 56, 44, 44, 22.4),
			strip("fresh", "Fresh water", planner.Supply, 140, 10, 140, 140, 140, 140, 40, 40, 140, 140, 60, 60),
			strip("grey", "Grey water", planner.Waste, 110, 5, 0, 0, 0, 0, 85, 85, 0, 0, 70, 70),
		},
		Places:   []trip.Candidate{{Place: "n9", Kind: "fuel", Name: "Unused", Point: orb.Point{11, 50.2}, Km: 240, Tanks: []string{"diesel"}}},
		Cautions: []fact.Fact{Tag("Turn the gas off before fuel is taken in.")},
	}
}

// Tag is a fact that says a text as it is.
func Tag(text string) fact.Fact { return fact.Of("data.tag", fact.V{"tag": fact.Text(text)}) }
