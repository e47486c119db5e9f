package main

import (
	"bytes"
	"context"
	"os"
	"strings"

	"ullage/data/demo"
	"ullage/data/osm/roads"
	"ullage/data/wrong"
	"ullage/geo/road/net"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// guide reads the road networks of the extracts among the places, or of the
// demo, and what is left out of them. It returns nil where there are no roads.
func (in planInput) guide(ctx context.Context) (*byroad.Guide, []fact.Fact, error) {
	var inputs []net.Input
	if in.places == "" {
		x, err := roads.Read(ctx, "demo.osm.pbf", bytes.NewReader(demo.Extract()), roads.Options{})
		if err != nil {
			return nil, nil, err
		}
		inputs = append(inputs, x)
	} else {
		for _, name := range strings.Split(in.places, ",") {
			x, err := readRoads(ctx, name)
			if err != nil {
				return nil, nil, err
			}
			inputs = append(inputs, x)
		}
	}
	all := net.Join(inputs...)
	if len(all.Ways) == 0 {
		return nil, nil, nil
	}
	network, err := net.Build(ctx, all)
	if err != nil {
		return nil, nil, err
	}
	g, err := byroad.New(ctx, network)
	if err != nil {
		return nil, nil, err
	}
	return g, byroad.Omitted(network), nil
}

// readRoads reads the roads of one file; places as GeoJSON have none.
func readRoads(ctx context.Context, name string) (net.Input, error) {
	f, err := os.Open(name)
	if err != nil {
		return net.Input{}, wrong.In(name, err)
	}
	defer f.Close()
	if json, err := isJSON(name, f); err != nil || json {
		return net.Input{}, err
	}
	return roads.Read(ctx, name, f, roads.Options{})
}
