// Package demo invents a country on an island in the open ocean: its coast,
// roads, towns and service points as OpenStreetMap data, and trips through it.
//
// Nothing comes in but one fixed seed: no name, operator, price or place
// exists. Out go .osm.pbf bytes, so that the island takes the same way
// through package data/osm as real data does, and trips. The package itself decides
// nothing about what a tag means. Read settle.go first, then layout.go.
//
// Unless a name says otherwise, positions inside the package are kilometres
// east and north of the island's middle, heights are metres, and points in
// exported values are orb.Point{longitude, latitude}.
//
//	extract := demo.Extract()
//	places, err := osm.Read(ctx, "demo.osm.pbf", bytes.NewReader(extract), osm.Options{})
//	itinerary, err := answer.Trip(ctx, demo.Trip(), places.Places, build.Options{})
//
// Decisions:
//
//   - Roads on a jittered grid, A* paths that like what is already there; places are a table written by hand. Price: junctions at
//     grade, edited by hand.
//   - An own PBF writer of 200 lines, checked by osmium.
//
// Files, each using only those above it:
//
//   - names.go: what villages are called
//   - services.go: the table of service points
//   - world.go: positions, tags, and the objects written
//   - pbf.go: the objects as a PBF file
//   - terrain.go: how high the land is
//   - curve.go: lines that bend as roads do
//   - coast.go: shores
//   - grid.go: corners that roads may join, and the cheapest way between them
//   - network.go: which of them roads join
//   - rivers.go: rivers
//   - settle.go: towns, and the roads that were planned
//   - roads.go: a road and its ways
//   - island.go: the country, and what all steps ask of it
//   - draw.go: all roads, with what hinders on them
//   - islet.go: the islet with the ferry
//   - layout.go: land and water, roads, villages, names
//   - place.go: service points beside the roads
//   - streets.go: streets of settlements
//   - demo.go: the whole country, and its bytes
//   - route.go: drives through it
//   - trips.go: the trip that the tool opens with
package demo
