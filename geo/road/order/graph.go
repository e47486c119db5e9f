package order

import "slices"

// A Graph lists neighbours, or anything else that vertices have in different numbers: those of v are Head[First[v]:First[v+1]].
type Graph struct{ First, Head []uint32 }

// NewGraph lists for each vertex what each adds to it, in that order. each is called twice and must add the same. Cost and
// memory linear in both.
func NewGraph(vertices int, each func(add func(v, neighbour uint32))) Graph {
	g := Graph{First: make([]uint32, vertices+1)}
	each(func(v, _ uint32) { g.First[v+1]++ })
	for v := range vertices {
		g.First[v+1] += g.First[v]
	}
	g.Head = make([]uint32, g.First[vertices])
	fill := slices.Clone(g.First)
	each(func(v, neighbour uint32) {
		g.Head[fill[v]] = neighbour
		fill[v]++
	})
	return g
}

// Of lists the neighbours of a vertex.
func (g *Graph) Of(v uint32) []uint32 { return g.Head[g.First[v]:g.First[v+1]] }

// A Place is where a vertex lies, on a flat map with any unit that fits: |X|, |Y| ≤ 2^30.
type Place struct{ X, Y int32 }
