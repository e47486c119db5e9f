// Package net is the network of roads: what it is built from, its states and
// edges, the turns that are forbidden on it, and its coded form. It finds no ways.
//
// In comes an [Input], which package data/osm/roads makes of map data, or the
// coded form of a network. Out goes a [Network] ([Build], [Decode]), and what
// keeps a [Vehicle] off one of its roads ([Vehicle.Closes]). Read input.go first,
// then network.go.
//
// Unless a name says otherwise, distances are metres on the WGS84 ellipsoid
// (see ullage/geo), times seconds, masses tonnes, points
// orb.Point{longitude, latitude}. Inside, lengths are whole centimetres.
//
//	network, err := net.Build(ctx, net.Join(west, east)) // once per data set
//	fmt.Println(network.Road(0).Name, vehicle.Closes(network.Road(0), 0))
//
// Decisions. Whole centimetres, so that sums are exact and equal ways are equal;
// price: at most 21,474 km. Forbidden turns are states, one more for each way of
// coming to a junction with a ban, or along ways over which one holds ("only"
// binds from the first junction on): exact, and a search need not know of turns.
// For 500 m after a forbidden turn nobody turns back into the same road, else a
// sign was dodged at the next junction. Price: a third more states in towns.
// What holds at times only is open, and told where a trip does it
// ([Network.TurnsAtTimes]): by day or night is the driver's to plan. A limit
// equal to the vehicle passes, 0.10 m is kept free above and beside; signs for
// goods vehicles bind above 3.5 t. Speeds are averages of the class, stated
// limits × 0.9. States are numbered in the order of contraction, which is the
// costly part: so the coded form holds it, and all else follows from that.
//
// Files, each using only those above it:
//
//   - input.go: what a network is built from
//   - join.go: several inputs as one
//   - bar.go: what keeps a vehicle off a road
//   - vehicle.go: what a road must take, and how fast it is driven
//   - position.go: positions in whole units, and lines of them
//   - boxes.go: which edges are near a point
//   - network.go: the network, by states, edges and arcs
//   - step.go: a piece of road driven in one direction
//   - doubt.go: turns forbidden at times
//   - arcs.go: the arcs from state to state
//   - renumber.go: states by their rank
//   - history.go: how somebody came to a junction, and what is forbidden then
//   - cut.go: ways cut at junctions and barriers
//   - turns.go: forbidden turns as histories
//   - back.go: no turning back after a forbidden turn
//   - build.go: from the input to the network
//   - encode.go: its coded form
//   - decode.go: and back
package net
