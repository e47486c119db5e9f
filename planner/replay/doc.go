// Package replay drives a list of visits through a problem, headroom by headroom,
// and fills in everything that follows from them.
//
// What comes in is a problem with visits: which stop, which night, which amounts.
// What goes out is the plan that they are, or the first rule that they break
// ([planner.Broken]). Read replay.go first, then stop.go.
//
// What the model leaves open is decided here:
//   - [planner.Tolerance] is what any limit may be missed by.
//   - Where stops share a km, the list of the problem is the order of passing.
//   - Headroom never exceeds capacity, also after driving with negative use.
//   - The day is counted from its departure: waiting past midnight stays the
//     same day on the road. A stay of n nights ends n days after the day it
//     began, so a night must be reached within n·1440 minutes of departure
//     (a limit of its own only where max_min_per_day is longer than that), and
//     where it has a check-in within 1440.
//   - A night is reached, for the minutes on the road, when stop_min is over.
//     Time until it can be checked in is in hand: nobody waits for a night.
//   - In a stay each tank that is served is served before a night that it would not
//     last, to its brim or by all that is still to come, and before leaving. It
//     costs by [planner.Night.Acts], whatever it arrived with.
//   - What is too heavy at a departure is let out of the supply tank, or not
//     filled in.
//   - Any visit waits for opening, also one that takes nothing.
//   - Both ends of a window are open.
//   - Emptying an empty waste tank is allowed and takes out 0; adding nothing
//     to a supply tank is not a service.
//
// Files, each using only those above it:
//
//   - replayer.go: the trip at one time
//   - hours.go: when a stop is open, and when one can check in
//   - service.go: one service
//   - stay.go: the inside of a stay, and what is let out before driving off
//   - stop.go: what is done at one stop
//   - end.go: the end of the route, and what must hold there
//   - replay.go: visits from first to last
package replay
