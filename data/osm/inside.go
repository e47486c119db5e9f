package osm

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// This file lends a site what is mapped inside of it: a campsite drawn as an area often has its dump station and water
// point as objects of their own within the outline. They stay places of their own; who spends the night there has them.

// An outline is the ring of a place where one can stay.
type outline struct {
	place int // index of the place
	ring  orb.LineString
}

// lend answers a site's unknown tanks by the places inside its outline: a yes, else a likely. A yes or no in the site's own
// tags stands. The evidence names the object. O(n log n) for n places, plus the places in the outlines' longitudes.
func lend(places []trip.Place, outlines []outline) {
	order := make([]int, 0, len(places))
	for i, p := range places {
		if p.Stay == nil {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(places[a].Point[0], places[b].Point[0]) })
	for _, o := range outlines {
		box := o.ring.Bound()
		from, _ := slices.BinarySearchFunc(order, box.Min[0], func(i int, lon float64) int { return cmp.Compare(places[i].Point[0], lon) })
		for _, i := range order[from:] {
			p := places[i].Point
			if p[0] > box.Max[0] {
				break
			}
			if p[1] >= box.Min[1] && p[1] <= box.Max[1] && inRing(o.ring, p) {
				borrow(&places[o.place], places[i])
			}
		}
	}
}

// borrow takes over what is better known of the inner place, for the tanks that a site speaks of.
func borrow(site *trip.Place, inner trip.Place) {
	for i, own := range site.Offers {
		o, ok := inner.Offer(own.Tank)
		better := o.Answer == trip.Yes || o.Likely && !own.Likely
		if !ok || own.Answer != trip.Unknown || !better {
			continue
		}
		o.Guests = o.Guests || own.Guests
		o.Tag += " at " + inner.ID
		site.Offers[i] = o
	}
}
