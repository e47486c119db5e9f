// Package file turns the bytes of an OpenStreetMap file into elements: nodes, ways and relations with their tags.
//
// In come .osm.pbf, .osm, .osm.gz and .osm.bz2, recognised by their content, and the tags that somebody wants ([Want]). Out go,
// in three scans, the elements that have one of them, or whose numbers were asked for. What a tag means is the business of
// ullage/data/osm and ullage/data/osm/roads. Read open.go first, from [Read] on. Positions are orb.Point{longitude, latitude}.
//
//	err := file.Read(ctx, f, file.Options{Want: want}, func(f *file.File) error {
//		return f.Nodes(ctx, nil, func(n file.Node) error { … })
//	})
//
// Decisions:
//
//   - Own PBF decoder. The general one for Go (paulmach/osm) brings 0.85 MB brotli to the page and, with cgo, a C library; this one
//     0.12 MB, and a block whose strings hold none of the wanted tags is passed over. Price: 700 lines. Its XML scanner is the
//     reference in the tests. Numbers and lengths are read by protowire, the part of the protocol buffers library that knows the
//     wire format only: 17 kB of program, at most 8 kB of them packed (10 kB were allowed), for 40 lines less and no slower
//     (Delaware, 0.11 s of one core by either).
//   - Own XML tokenizer. encoding/xml, which the page holds anyway for routes, would save 2.6 kB, but reading a real file
//     takes 5.6 times as long with .osm.gz and 4.4 times with .osm.bz2 (north-bayreuth-2014, 94 → 531 ms; liechtenstein-2013,
//     303 → 1342 ms; more than three times was to stay). Price: xml_token.go, which knows neither namespaces nor other
//     encodings than UTF-8; its test compares it with encoding/xml.
//   - Scans from the last block to the first: relations, then ways, then nodes, so that each scan knows what the next must keep, and
//     nearly every block is unpacked once. A file in another order is read again with all blocks opened.
//   - What is wanted is counted while it is read, and refused ([TooMuch]) before it takes more memory than stated: 600 bytes an
//     object, 80 a tag, 70 a corner, as measured with what is made of them. No block has more than a million objects. A file
//     of 188 kB held 32 million places, and took 7.5 GB.
//   - XML is read once, with 16 bytes a node; beyond 50 million nodes it asks for PBF.
//
// Files, each using only those above it:
//
//   - object.go: nodes, ways, relations
//   - want.go: the tags that somebody looks for
//   - ids.go: the numbers that somebody looks for
//   - fault.go: what is wrong, and where
//   - room.go: how much of it may be kept
//   - pbf_wire.go: a cursor over protocol buffers
//   - pbf_blob.go: the packed blocks of a PBF file
//   - pbf_block.go: strings, tags and scale of one block
//   - pbf_nodes.go: its nodes
//   - pbf_ways.go: its ways and relations
//   - pbf_date.go: its newest object
//   - pbf.go: the scans of a PBF file
//   - xml_token.go: the tags of an XML text
//   - xml_store.go: the packed objects of an XML text, and their scans
//   - xml_parse.go: objects of XML tags
//   - open.go: which of the encodings it is
//
// Sources: wiki.openstreetmap.org/wiki/PBF_Format and OSM_XML.
package file
