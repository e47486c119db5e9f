// Package osm makes places, and the lines that a map draws behind the route, of OpenStreetMap files.
//
// In comes a file, which ullage/data/osm/file takes apart into elements. Out goes an [Extract]. It owns the tag rules: which tag
// says that a place serves which tank, and what a missing tag means. It does not own roads (ullage/data/osm/roads), opening
// hours (kept as text), or what a planner makes of an unknown answer. Read offers.go first, then scan.go.
//
// Unless a name says otherwise, distances are metres on the WGS84 sphere/ellipsoid named in the function,
// durations are time.Duration, angles degrees clockwise from north, points are orb.Point{longitude, latitude}.
//
//	extract, err := osm.Read(ctx, "andorra.osm.pbf", f, osm.Options{})
//	for _, p := range extract.Places { fmt.Println(p.ID, p.Kind, p.Name) }
//
// Decisions:
//
//   - Unknown is never yes. A drinking fountain is not a filling point: amenity=drinking_water is unknown for the tank, likely only
//     from a tap. A station that lists only gas is not likely to sell diesel (Finland 2022: 34 of 109). A dump station takes
//     cassettes by definition, grey water likely (common practice, no source). Price: fewer sure water stops.
//   - A site borrows what is mapped inside its outline, with the evidence named, and lends its way in.
//   - A site is entered where its outline says: at a gate or entrance among the nodes of the outline, or named by a site relation.
//     Price: outlines are kept with the places, a few hundred bytes each.
//
// Files, each using only those above it:
//
//   - kinds.go: which tags make a place, and of which kind
//   - stay.go: what a night there offers
//   - offers.go: which tag answers for which tank
//   - contact.go: how to ask a place
//   - place.go: a place of one object
//   - position.go: where an object is
//   - inside.go: what a site lends and borrows
//   - gate.go: where one drives in
//   - backdrop.go: the lines behind the route
//   - extract.go: what comes out
//   - builder.go: the extract, object by object
//   - scan.go: the way through a file
//   - read.go: the entrance
//   - tagged.go: the entrance for GeoJSON
//
// OpenStreetMap data are © OpenStreetMap contributors, ODbL 1.0.
// Sources: wiki.openstreetmap.org pages named beside each rule.
package osm
