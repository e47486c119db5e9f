package main

// nearest is the word of a list that a mistyped one is nearest to; "" if none is
// near. The first of equals is taken.
func nearest(word string, list []string) string {
	best, least := "", 2+len(word)/4 // changes that are still a slip
	for _, w := range list {
		if n := changes(word, w); n < least {
			best, least = w, n
		}
	}
	return best
}

// changes is how many letters have to be put in, left out or changed to make a
// into b: the distance of Levenshtein, "Binary codes capable of correcting
// deletions, insertions, and reversals" (1966).
func changes(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			swap := diagonal
			if a[i] != b[j] {
				swap++
			}
			diagonal = row[j+1]
			row[j+1] = min(swap, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
