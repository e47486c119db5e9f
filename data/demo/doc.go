// Package demo invents a country on an island in the open ocean: its coast,
// roads, towns and service points as OpenStreetMap data, and trips through it.
//
// Everything is made up from one fixed seed: no name, operator, price or place
// exists. The island comes as .osm.pbf bytes, so that it takes the same way
// through package data/osm as real data does; the package itself decides
// nothing about what a tag means.
//
// Unless a name says otherwise, positions inside the package are kilometres
// east and north of the island's middle, heights are metres, and points in
// exported values are orb.Point{longitude, latitude}.
//
//	extract := demo.Extract()
//	places, err := osm.Read(ctx, "demo.osm.pbf", bytes.NewReader(extract), osm.Options{})
//	itinerary, err := answer.Trip(ctx, demo.Trip(), places.Places, build.Options{})
package demo
