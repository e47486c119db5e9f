// Package tag says what the values of OpenStreetMap tags mean wherever they stand, on a place or on a road: sizes with their
// units, limits, who may drive in, barriers.
//
// In come the tags of one object, out go numbers and [net.Access]. It knows neither places nor networks: so ullage/data/osm and
// ullage/data/osm/roads both use it and not each other. Read limits.go first. Lengths are metres, masses tonnes.
//
// Decision: tables of values are texts with spaces between the words ([HasWord]), as they are compared one by one and written by
// hand from the wiki. Sources: the wiki pages named beside each table.
//
// Files, each using only those above it:
//
//   - words.go: tables of values
//   - measure.go: numbers with units
//   - limits.go: the greatest vehicle
//   - access.go: who may drive where
//   - barrier.go: what stands on a road
package tag
