// Package life is a model of what a motorhome and the people in it use:
// diesel and exhaust fluid by the road, gas by the cold, water and cassette by
// the habits, the battery by its loads, and how sure each of these is.
//
// What comes in are a vehicle, a party and its wishes, and either sections of road or
// a day and night at a place. What goes out are uses: an amount for each tank, with
// the parts that it is made of and how far each can be off. What gauges show comes in
// as well, and goes out as a factor of the use. What people are told goes out as
// facts ([Model.Cautions], [HookUp.Says], [Load.Says], [Lesson], [Heavier], [Source]);
// how things are done is package advice. The model knows no route, no place that serves
// anything and no plan: package planner/trip asks it and makes tanks of the answers.
// Everything is a pure function of its arguments.
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
//
// Decisions.
// Confidence is each tank's: with seven tanks together Boole's bound would ask for
// 98.6 % of each. Price: the whole trip holds less often than each tank.
// Uses are log-normal around the likely one, parts err independently, and what restores
// is planned low: a use never becomes negative, twice is as likely as half.
// The climate is two harmonics of the year for each cell of a grid: any day of the year
// in 47 kB. Price: mild coasts read too warm in winter. Counting cells at sea less was
// tried and did not help.
// Heat is averaged over the weather of the season, so that a mild month has its cold days.
// The engine's efficiency is the one calibrated number of driving; an average that would
// ask for less than 20 or more than 45 % is refused.
// Readings teach a linear Kalman factor between half and twice the usual, whatever their
// order; a lamp cuts the belief off. Price: beyond that somebody has to look.
// What a tank weighs and where its numbers come from are tables by tank: no code asks
// which tank it is.
//
// Read use.go first, then vehicle.go, model.go and stay.go.
//
// Files, each using only those above it:
//
//   - spread.go: how far a use can be off
//   - use.go: what is taken from a tank
//   - battery.go: the leisure battery and how it charges
//   - sun.go: the sun's energy by place and day
//   - climate.go: the air outside by place and day
//   - people.go: what people use of water and current
//   - gas.go: liquid gas, and what of it comes out in the cold
//   - engine.go: what a section of road takes from the diesel tank
//   - heat.go: the heat that the shell loses, hot water, fridges, cooking
//   - hookup.go: what a supply carries at the same time
//   - roads.go: what law and good sense say about a day on the road
//   - vehicle.go: a vehicle and the wishes of its people
//   - model.go: vehicle, party and wishes together
//   - drive.go: what the road uses
//   - stay.go: what a day and night at a place use
//   - cautions.go: what a night asks people to take care of
//   - gauge.go: what a gauge says of a level
//   - learn.go: what readings teach about a use
//   - weight.go: the vehicle on the scales
//   - source.go: where the numbers come from
package life
