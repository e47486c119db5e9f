package demo

import "math/rand/v2"

// This file holds the island's language. Its words were put together from
// made-up syllables; none is meant to be a word, place or firm anywhere.
//
// Endings carry the meaning: -oum a town, -azhe a harbour, -ilth a ford or
// bridge, -oveya a valley, -une water, -ethi a hill, -ulve a field, -oqa a river.

var roots = []string{
	"Vazh", "Quel", "Orov", "Tham", "Nevr", "Zhir", "Kess", "Imr", "Dolv", "Yarq", "Qath", "Melzh", "Othr", "Vinu", "Pouv",
	"Irth", "Aqel", "Bezh", "Olvr", "Ruzh", "Sefn", "Thoul", "Uqar", "Yezh", "Zoulm", "Elthr", "Gavr", "Jhem", "Kovr", "Luthn",
	"Mazhr", "Nuqel", "Ovzh", "Pelthr", "Rovn", "Shuvr", "Tezh", "Hozhm", "Wulth", "Dazh",
}

var villageEndings = []string{"une", "ethi", "ulve", "oveya", "ilth", "eshe", "oum"}

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
