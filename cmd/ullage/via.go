package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/wrong"
	"ullage/geo"
	"ullage/planner/byroad"
	"ullage/planner/fact"
)

// This file draws the route of a plan on roads.

// drawnWithinM is how far from a road a point of -via may lie. Own choice: the yard
// of a farm, the middle of a village.
const drawnWithinM = 500

// viaStraight: {km} of the route are on no road of the map data.
const viaStraight fact.Kind = "via.straight"

// onRoads is whether the route is to be drawn on roads.
func (in planInput) onRoads() bool { return in.via != "" || in.snap }

// draw gives the trip a route on the roads of a guide: through the points of -via, or
// along the line that it has.
func (in planInput) draw(ctx context.Context, g *byroad.Guide, read *tripInput) error {
	if g == nil {
		return errors.New("-via and -snap need map data with roads: add -places F, an OSM extract of the region")
	}
	var legs []byroad.Leg
	var err error
	if in.snap {
		legs, err = g.Match(ctx, read.trip.Vehicle, read.trip.Route)
	} else {
		var points []orb.Point
		if points, err = in.points(ctx, read); err != nil {
			return err
		}
		pairs := make([][2]orb.Point, len(points)-1)
		for i := range pairs {
			pairs[i] = [2]orb.Point{points[i], points[i+1]}
		}
		legs, err = g.Follow(ctx, read.trip.Vehicle, pairs, drawnWithinM)
	}
	if err != nil {
		return err
	}
	var line orb.LineString
	straight := 0.0
	for _, l := range legs {
		for _, p := range l.Line {
			if len(line) == 0 || line[len(line)-1] != p {
				line = append(line, p)
			}
		}
		if l.Drawn {
			for i := 1; i < len(l.Line); i++ {
				straight += geo.DistanceM(l.Line[i-1], l.Line[i]) / 1000
			}
		}
		read.from.notes = append(append(read.from.notes, l.Avoided...), l.Closed...)
	}
	if len(line) < 2 {
		return errors.New("-via: the route has no length: give two places that lie apart")
	}
	if straight >= 0.05 {
		read.from.notes = append(read.from.notes, fact.Of(viaStraight, fact.V{"km": fact.Km(straight, 1)}))
	}
	read.trip.Route, read.trip.Points, read.trip.Round = line, nil, nil
	return nil
}

// points are those that -via names.
func (in planInput) points(ctx context.Context, read *tripInput) ([]orb.Point, error) {
	var out []orb.Point
	var names []named
	for _, text := range strings.Split(in.via, ";") {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		if lat, lon, pair := strings.Cut(text, ","); pair {
			if p := point(lat, lon); p != nil {
				out = append(out, *p)
				continue
			}
		}
		if names == nil {
			var err error
			if names, err = in.names(ctx, read); err != nil {
				return nil, err
			}
		}
		p, err := find(names, text)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	if len(out) < 2 {
		return nil, fmt.Errorf("-via %q: name two places or more, with a semicolon between: \"Ellern; 54.15,-4.48\"", in.via)
	}
	return out, nil
}

// A named point is a town, or a place, of the map data.
type named struct {
	name string
	at   orb.Point
}

// names are the towns of the map data, then its places.
func (in planInput) names(ctx context.Context, read *tripInput) ([]named, error) {
	var out []named
	files := strings.Split(in.places, ",")
	if in.places == "" {
		files = []string{""}
	}
	for _, name := range files {
		x, err := towns(ctx, name)
		if err != nil {
			return nil, err
		}
		for _, t := range x {
			out = append(out, named{t.Name, t.Point})
		}
	}
	for _, p := range read.from.places {
		if p.Name != "" {
			out = append(out, named{p.Name, p.Point})
		}
	}
	return out, nil
}

// towns of a file of map data; "" is the demo's. GeoJSON of places has none.
func towns(ctx context.Context, name string) ([]osm.Town, error) {
	if name == "" {
		x, err := osm.Read(ctx, "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{})
		return x.Backdrop.Towns, err
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, wrong.In(name, err)
	}
	defer f.Close()
	if json, err := isJSON(name, f); err != nil || json {
		return nil, err
	}
	x, err := osm.Read(ctx, name, f, osm.Options{})
	return x.Backdrop.Towns, err
}

// sameM: points of one name nearer to each other than this are one place. Own choice.
const sameM = 2000

// find is the point of a name: written so, else the only one that has it in it.
func find(names []named, text string) (orb.Point, error) {
	for _, fits := range []func(name string) bool{
		func(name string) bool { return strings.EqualFold(name, text) },
		func(name string) bool { return strings.Contains(strings.ToLower(name), strings.ToLower(text)) },
	} {
		var found []named
		for _, n := range names {
			if fits(n.name) && !slices.ContainsFunc(found, func(o named) bool { return geo.DistanceM(o.at, n.at) < sameM }) {
				found = append(found, n)
			}
		}
		switch {
		case len(found) == 1:
			return found[0].at, nil
		case len(found) > 1:
			return orb.Point{}, fmt.Errorf("-via %q: the map data have more than one: write one of %s", text, listed(found))
		}
	}
	return orb.Point{}, fmt.Errorf("-via %q: the map data name no such place: write LAT,LON, or one of %s", text, listed(alike(names, text)))
}

// mostListed are told at most.
const mostListed = 5

// listed are names with their positions, as -via takes them.
func listed(list []named) string {
	var out []string
	for _, n := range list[:min(len(list), mostListed)] {
		out = append(out, fmt.Sprintf("%.5f,%.5f (%s)", n.at[1], n.at[0], n.name))
	}
	return strings.Join(out, "; ")
}

// alike are names that begin most like a text.
func alike(names []named, text string) []named {
	shared := func(name string) int {
		a, b := []rune(strings.ToLower(name)), []rune(strings.ToLower(text))
		n := 0
		for n < len(a) && n < len(b) && a[n] == b[n] {
			n++
		}
		return n
	}
	out := slices.Clone(names)
	slices.SortStableFunc(out, func(a, b named) int { return cmp.Compare(shared(b.name), shared(a.name)) })
	return out
}
