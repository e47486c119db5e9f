package osm

import "slices"

// ids are object numbers, ascending and each once: what a later scan must keep.
type ids []int64

// collect sorts the numbers and drops repeats. It changes list.
func collect(list []int64) ids {
	slices.Sort(list)
	return ids(slices.Compact(list))
}

// index returns the place of a number in the list, or -1.
func (s ids) index(id int64) int {
	if i, ok := slices.BinarySearch(s, id); ok {
		return i
	}
	return -1
}
