package tripfile

import (
	"bytes"
	"encoding/json"
	"fmt"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// This file takes a trip file apart, for who writes it at each letter: its route is long
// and seldom changes.

// noFeatures is how a trip file without a route ends.
var noFeatures = []byte(`"features":[]}`)

// Route writes the route's feature alone; [WithRoute] puts it into a file without one.
func Route(line orb.LineString) ([]byte, error) {
	b, err := json.Marshal(featureOf(trip.Trip{Route: line}))
	if err != nil {
		return nil, fmt.Errorf("write a route: %w", err)
	}
	return b, nil
}

// WithRoute is a file of [Write] of a trip without a route, with the route of [Route] in
// it. Another file is left as it is.
func WithRoute(file, route []byte) []byte {
	head, rest, ok := bytes.Cut(file, noFeatures)
	if !ok || len(bytes.TrimSpace(rest)) > 0 || len(route) == 0 {
		return file
	}
	return bytes.Join([][]byte{head, noFeatures[:len(noFeatures)-2], route, []byte("]}\n")}, nil)
}
