// Package osm reads OpenStreetMap files into places, into the lines that a map draws behind the route, and into the
// roads of a network.
//
// It owns the tag rules (which tag says that a place serves which tank, and what a missing tag means) and the
// reading of .osm.pbf, .osm, .osm.gz and .osm.bz2, recognised by their content. It says what
// the tags of a road mean ([ReadRoads]); ullage/geo/road makes the network of it. It does not own opening hours (kept as
// text), routing, or what a planner makes of an unknown answer.
//
// Unless a name says otherwise, distances are metres on the WGS84 sphere/ellipsoid named in the function,
// durations are time.Duration, angles degrees clockwise from north, points are orb.Point{longitude, latitude}.
//
//	f, err := os.Open("andorra.osm.pbf")
//	…
//	extract, err := osm.Read(ctx, "andorra.osm.pbf", f, osm.Options{})
//	for _, p := range extract.Places { fmt.Println(p.ID, p.Kind, p.Name) }
//
// OpenStreetMap data are © OpenStreetMap contributors, ODbL 1.0.
// Sources: wiki.openstreetmap.org pages named beside each rule; PBF_Format and OSM_XML for the encodings.
package osm
