package osm_test

import (
	"bytes"
	"context"
	"io"
	"testing"

	"ullage/data/osm"
)

// Places of Delaware, 7.8 MB: 723,870 nodes, 73,144 ways, 1,644 relations. The yardstick is
//
//	osmium tags-filter -R -O -o OUT.osm.pbf delaware-latest.osm.pbf amenity=fuel,sanitary_dump_station,water_point,drinking_water \
//	  tourism=caravan_site,camp_site man_made=water_tap highway=services,rest_area shop=gas
func BenchmarkDelaware(b *testing.B) {
	benchmark(b, "module:delaware-latest.osm.pbf", osm.Options{NoBackdrop: true})
}

func BenchmarkDelawareWithBackdrop(b *testing.B) {
	benchmark(b, "module:delaware-latest.osm.pbf", osm.Options{})
}

func BenchmarkAndorra(b *testing.B) { benchmark(b, "osm/andorra-2025-01-19.osm.pbf", osm.Options{}) }

func BenchmarkAndorraXML(b *testing.B) { benchmark(b, "module:andorra-latest.osm.bz2", osm.Options{}) }

// A real text packed with gzip, which is quick to unpack: the tokenizer is most of it.
func BenchmarkBayreuthXML(b *testing.B) {
	benchmark(b, "osm/north-bayreuth-2014.osm.gz", osm.Options{})
}

func benchmark(b *testing.B, path string, opt osm.Options) {
	data, err := io.ReadAll(open(b, path))
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := osm.Read(context.Background(), path, bytes.NewReader(data), opt); err != nil {
			b.Fatal(err)
		}
	}
}
