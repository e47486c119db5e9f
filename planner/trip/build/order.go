package build

import (
	"cmp"
	"slices"
	"ullage/planner"
	"ullage/planner/trip"
)

// sort brings stops and candidates into the order of the route.
func (b *gathering) sort() {
	stops := b.Around
	b.Around = make([]planner.Stop, len(stops))
	for to, from := range along(len(stops), func(i int) (float64, string) { return stops[i].Km, stops[i].ID }) {
		b.Around[to] = stops[from]
	}
	sorted, at := make([]trip.Candidate, len(b.Candidates)), make([]int, len(b.Candidates))
	for to, from := range along(len(b.Candidates), func(i int) (float64, string) { return b.Candidates[i].Km, b.Candidates[i].Stop }) {
		sorted[to], at[from] = b.Candidates[from], to
	}
	b.Candidates = sorted
	for id, c := range b.Calls {
		c.Candidate = at[c.Candidate]
		b.Calls[id] = c
	}
}

// along lists the numbers from 0 to n − 1 by km, then by id.
func along(n int, key func(i int) (km float64, id string)) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		km, id := key(i)
		other, otherID := key(j)
		return cmp.Or(cmp.Compare(km, other), cmp.Compare(id, otherID))
	})
	return order
}
