package file

import "slices"

// IDs are object numbers, ascending and each once: what a later scan must keep.
type IDs []int64

// Collect sorts the numbers and drops repeats. It changes list.
func Collect(list []int64) IDs {
	slices.Sort(list)
	return IDs(slices.Compact(list))
}

// Index returns the place of a number in the list, or -1.
func (s IDs) Index(id int64) int {
	if i, ok := slices.BinarySearch(s, id); ok {
		return i
	}
	return -1
}
