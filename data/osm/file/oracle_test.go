package file_test

import (
	"bytes"
	"compress/bzip2"
	"context"
	"math"
	"reflect"
	"testing"

	reference "github.com/paulmach/osm"
	"github.com/paulmach/osm/osmxml"

	"ullage/data/osm/file"
	"ullage/data/osm/osmtest"
)

// open opens open data, see [osmtest.Bytes].
func open(t testing.TB, path string) *bytes.Reader { return bytes.NewReader(osmtest.Bytes(t, path)) }

// Every object with one of these tags, read from PBF and from XML, against the XML scanner of github.com/paulmach/osm v0.8.0.
func TestAgainstReferenceReader(t *testing.T) {
	want := file.Want{{"highway", ""}, {"amenity", ""}, {"building", "yes"}, {"type", ""}, {"natural", "tree"}}
	nodes, ways, relations := referenceObjects(t, "osm/liechtenstein-2013-08-03.osm.bz2", want)
	if len(nodes) < 100 || len(ways) < 1000 || len(relations) < 100 {
		t.Fatalf("only %d nodes, %d ways, %d relations: not worth comparing", len(nodes), len(ways), len(relations))
	}
	for _, path := range []string{"osm/liechtenstein-2013-08-03.osm.pbf", "osm/liechtenstein-2013-08-03.osm.bz2"} {
		ctx := context.Background()
		f, err := file.Open(ctx, open(t, path), file.Options{Want: want})
		if err != nil {
			t.Fatal(err)
		}
		seen := [3]int{}
		err = f.Relations(ctx, func(r file.Relation) error {
			seen[2]++
			if !reflect.DeepEqual(r, relations[r.ID]) {
				t.Errorf("relation %v, want %v", r, relations[r.ID])
			}
			return nil
		})
		if err == nil {
			err = f.Ways(ctx, nil, func(w file.Way) error {
				seen[1]++
				if !reflect.DeepEqual(w, ways[w.ID]) {
					t.Errorf("way %v, want %v", w, ways[w.ID])
				}
				return nil
			})
		}
		if err == nil {
			err = f.Nodes(ctx, nil, func(n file.Node) error {
				seen[0]++
				ref := nodes[n.ID]
				// 1e-7 degrees is the resolution of the data.
				if !reflect.DeepEqual(n.Tags, ref.Tags) || math.Hypot(n.Point[0]-ref.Point[0], n.Point[1]-ref.Point[1]) > 1e-12 {
					t.Errorf("node %v, want %v", n, ref)
				}
				return nil
			})
		}
		if err != nil {
			t.Fatal(err)
		}
		if seen != [3]int{len(nodes), len(ways), len(relations)} {
			t.Errorf("%s: %v objects, want %d, %d, %d", path, seen, len(nodes), len(ways), len(relations))
		}
	}
}

func referenceObjects(t *testing.T, path string, want file.Want) (map[int64]file.Node, map[int64]file.Way, map[int64]file.Relation) {
	nodes, ways, relations := map[int64]file.Node{}, map[int64]file.Way{}, map[int64]file.Relation{}
	s := osmxml.New(context.Background(), bzip2.NewReader(open(t, path)))
	for s.Scan() {
		switch o := s.Object().(type) {
		case *reference.Node:
			if tags := file.Tags(o.Tags.Map()); want.Matches(tags) {
				nodes[int64(o.ID)] = file.Node{ID: int64(o.ID), Point: o.Point(), Tags: tags}
			}
		case *reference.Way:
			if tags := file.Tags(o.Tags.Map()); want.Matches(tags) {
				w := file.Way{ID: int64(o.ID), Tags: tags, Refs: []int64{}}
				for _, n := range o.Nodes {
					w.Refs = append(w.Refs, int64(n.ID))
				}
				ways[w.ID] = w
			}
		case *reference.Relation:
			if tags := file.Tags(o.Tags.Map()); want.Matches(tags) {
				r := file.Relation{ID: int64(o.ID), Tags: tags}
				for _, m := range o.Members {
					r.Members = append(r.Members, file.Member{Type: m.Type[0], ID: m.Ref, Role: m.Role})
				}
				relations[r.ID] = r
			}
		}
	}
	if err := s.Err(); err != nil {
		t.Fatal(err)
	}
	return nodes, ways, relations
}
