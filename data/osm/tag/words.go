package tag

import (
	"strings"

	"ullage/data/osm/file"
)

// HasWord reports whether word is in a list separated by spaces, as the tables of tags are written.
func HasWord(list, word string) bool {
	for len(list) > 0 {
		var w string
		w, list, _ = strings.Cut(list, " ")
		if w == word {
			return true
		}
	}
	return false
}

// First returns the first of the keys that has a value.
func First(t file.Tags, keys ...string) string {
	for _, k := range keys {
		if t[k] != "" {
			return t[k]
		}
	}
	return ""
}

// Values are keys, each with values separated by spaces.
type Values map[string]string

// In reports whether tags hold one of the keys with one of its values. O(tags).
func (v Values) In(tags file.Tags) bool {
	for key, value := range tags {
		if HasWord(v[key], value) {
			return true
		}
	}
	return false
}
