package job

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"sort"

	"ullage/data"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/data/wrong"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// open reads a file, whatever it holds.
func (h *Handler) open(ctx context.Context, o Open, progress func(done, total int64)) (Opened, error) {
	kind, err := kindOf(o.Name, o.Data)
	if err != nil {
		return Opened{}, err
	}
	out := Opened{Name: o.Name, Kind: kind}
	switch kind {
	case "osm":
		err = h.openMap(ctx, o, &out, progress)
	case "places":
		err = h.openPlaces(o, &out)
	case "route":
		err = openRoute(o, &out)
	case "trip":
		err = openTrip(o, &out)
	case "fleet":
		out.Fleet, out.Notes, err = tripfile.ReadFleet(o.Name, bytes.NewReader(o.Data))
	}
	if err != nil {
		return Opened{}, err
	}
	return out, nil
}

// openMap takes the places of map data, and keeps the file for its roads.
func (h *Handler) openMap(ctx context.Context, o Open, out *Opened, progress func(done, total int64)) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	x, err := osm.Read(paced(ctx, stop), o.Name, bytes.NewReader(o.Data), osm.Options{Progress: every(1<<20, progress), Most: mostPlaceBytes})
	if err != nil {
		return err
	}
	if len(x.Places) == 0 {
		return wrong.In(o.Name, fact.Fail(errors.New("no place in it serves a tank or takes motorhomes for the night"), "places.of_no_use", nil))
	}
	out.Kind, out.OSM, out.Date, out.Notes = "places", true, x.Date, x.Notes
	out.Backdrop = backdropGeoJSON(x.Backdrop)
	if err := h.take(o, out, x.Places); err != nil {
		return err
	}
	h.keep(o)
	return nil
}

func (h *Handler) openPlaces(o Open, out *Opened) error {
	x, err := osm.ReadGeoJSON(o.Name, bytes.NewReader(o.Data))
	if err != nil {
		return err
	}
	out.OSM, out.Date, out.Notes = x.FromOSM(), x.Date, x.Notes
	if err := h.take(o, out, x.Places); err != nil {
		return err
	}
	if !o.Add {
		h.files = nil
		h.roads.set(nil)
	}
	return nil
}

func openRoute(o Open, out *Opened) error {
	r, err := data.ReadRoute(o.Name, bytes.NewReader(o.Data))
	if err != nil {
		return err
	}
	out.Route, out.Parts, out.Notes = r.Line(), len(r.Parts), r.Notes
	if r.Name != "" {
		out.Name = r.Name
	}
	out.Bounds = bounds(out.Route)
	out.Climb[0], out.Climb[1] = r.Climb()
	return nil
}

func openTrip(o Open, out *Opened) error {
	t, notes, err := tripfile.Read(o.Name, bytes.NewReader(o.Data))
	if err != nil {
		return err
	}
	out.Trip, out.Route, out.Bounds, out.Notes = &t, t.Route, bounds(t.Route), notes
	return nil
}

// take holds the places of a file and counts them. A place that was there
// under the same id is replaced. With too many nothing is held of the file.
func (h *Handler) take(o Open, out *Opened, places []trip.Place) error {
	out.Places = len(places)
	points := make([]point, len(places))
	for i, p := range places {
		points[i] = p.Point
	}
	out.Bounds = bounds(points)
	held := slices.Clone(places)
	if o.Add {
		is := make(map[string]bool, len(places))
		for _, p := range places {
			is[p.ID] = true
		}
		for _, p := range h.places {
			if !is[p.ID] {
				held = append(held, p)
			}
		}
	}
	if len(held) > h.most {
		return fmt.Errorf("open %s: %w", o.Name, &tooMany{len(held), h.most})
	}
	sort.Slice(held, func(i, j int) bool { return held[i].ID < held[j].ID }) // as a function of no type: 10 kB less of program
	h.places = held
	return nil
}
