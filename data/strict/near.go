package strict

import "strings"

// near is the name that was most likely meant by a key: the same but for case, and separators, or a slip or two of the
// fingers away; "" if none is so near.
func near(key string, names []string) string {
	best, at := "", 1+len(key)/6+1
	for _, name := range names {
		if d := slips(plain(key), plain(name)); d < at {
			best, at = name, d
		}
	}
	return best
}

var separators = strings.NewReplacer("_", "", "-", "", " ", "")

func plain(name string) string { return separators.Replace(strings.ToLower(name)) }

// slips counts the letters to put in, take out, replace or swap with the next to make b of a (optimal string alignment).
// Cost: len(a)·len(b).
func slips(a, b string) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
