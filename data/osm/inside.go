package osm

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"ullage/planner/trip"
)

// This file lends a site what is mapped inside of it, and what is inside the way in: a campsite drawn as an area often has its
// dump station and water point as objects of their own within the outline. They stay places of their own; who spends the
// night there has them, and who wants them drives in to the site.

// lend answers a site's unknown tanks by the places inside its outline: a yes, else a likely. A yes or no in the site's own
// tags stands. The evidence names the object. The places inside get the site's outline and gates, of several sites the last.
// O(n log n) for n places, plus the places in the outlines' longitudes.
func lend(places []trip.Place) {
	order := make([]int, 0, len(places))
	for i, p := range places {
		if p.Stay == nil {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(places[a].Point[0], places[b].Point[0]) })
	for i := range places {
		site := &places[i]
		if site.Stay == nil || site.Outline == nil {
			continue
		}
		box := site.Outline.Bound()
		from, _ := slices.BinarySearchFunc(order, box.Min[0], func(k int, lon float64) int { return cmp.Compare(places[k].Point[0], lon) })
		for _, k := range order[from:] {
			inner := &places[k]
			if inner.Point[0] > box.Max[0] {
				break
			}
			if planar.RingContains(orb.Ring(site.Outline), inner.Point) {
				borrow(site, *inner)
				inner.Outline, inner.Gates = site.Outline, site.Gates
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
