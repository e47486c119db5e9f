// Package meant tells which of some names a misspelt word stands for: a flag, a command, a member of a file.
//
// In come the word and the names, out goes one of them or nothing. It knows nothing of what they name.
package meant

import "strings"

// Which is the name that was most likely meant by a word: the same but for case and separators, or a slip or two of the fingers
// away, three in a long word; "" if none is so near. The first of equals is taken. Cost: names × the square of their length.
func Which(word string, names []string) string {
	best, least := "", 2+len(word)/6
	for _, name := range names {
		if n := slips(plain(word), plain(name)); n < least {
			best, least = name, n
		}
	}
	return best
}

var separators = strings.NewReplacer("_", "", "-", "", " ", "")

func plain(name string) string { return separators.Replace(strings.ToLower(name)) }

// slips counts the letters to put in, leave out, change, or swap with the next to make a into b: the distance of Damerau, "A
// technique for computer detection and correction of spelling errors" (1964), with no letter touched twice.
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
