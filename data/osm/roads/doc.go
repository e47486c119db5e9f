// Package roads reads the roads of OpenStreetMap files: what the tags of a road, a ferry, a barrier and a turn restriction mean.
//
// In comes a file, out goes a [net.Input], of which ullage/geo/road makes a network. Read survey.go first: it goes through the
// file, relations → ways → nodes, and asks the rest what tags mean. It measures nothing but ferries, and routes nothing.
//
//	in, err := roads.Read(ctx, "andorra.osm.pbf", f, roads.Options{})
//	network, err := net.Build(ctx, in)
//
// Decisions:
//
//   - What holds at times only is open, with a caution where the trip does it; a condition on the vehicle's size alone is a limit.
//     Price: a plan by day or night is the driver's.
//   - Carriageway joins: turning from one into the other is forbidden though no tag says so. Price: a few real sharp turns are
//     lost.
//   - Small roads that pass below a bridge without a stated height are told as unknown. Price: false cautions.
//   - Where no limit is stated, trunk and primary roads of one carriageway take their country's limit outside towns as a cap, by the
//     borders that opening hours use; all other classes are driven slower than any such limit, and whether a road lies in a
//     town is not known. Price: near a border the higher limit counts.
//
// Files, each using only those above it:
//
//   - conditional.go: what holds under a condition
//   - limits.go: the greatest vehicle of a road
//   - speed.go: stated speed limits
//   - country.go: the usual limit where none is stated
//   - tags.go: class, direction, ferries, what a road is besides
//   - gate.go: barriers on nodes
//   - turns.go: turn restrictions
//   - corners.go: the nodes that roads go through
//   - sharp.go: turns between carriageways
//   - under.go: roads below bridges
//   - survey.go: the way through a file
//   - read.go: the entrance
package roads
