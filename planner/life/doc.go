// Package life is a model of what a motorhome and the people in it use:
// diesel and exhaust fluid by the road, gas by the cold, water and cassette by
// the habits, the battery by its loads, and how sure each of these is.
//
// It owns the numbers of life on board and their sources. It knows no route,
// no place that serves anything, no plan; package planner/trip asks it and
// makes tanks of the answers. Everything is a pure function of its arguments.
//
// Unless a name says otherwise, distances are kilometres, amounts litres
// (ampere-hours at 12 V for the battery), masses kilograms, energies
// kilowatt-hours, temperatures degrees Celsius, heights metres above the sea,
// days of the year 1 to 366.
//
// [Model.Drive] and [Model.Stay] are the main entry points:
//
//	m := life.Model{Vehicle: v, Party: p, Comfort: life.Comfort{InsideC: 20}}
//	road, err := m.Drive([]life.Section{{Km: 120, SpeedKmh: 80}})
//	night, err := m.Stay(life.Stay{At: life.Where{Lat: 47, Lon: 11}, YearDay: 15})
//	plan := night.Of("lpg").Planned(life.DefaultConfidence, 3)
//
// Marks beside constants: a source by name; "calculated"; "from memory" where
// no page was seen; "common practice, no source" for facts of the trade.
package life
