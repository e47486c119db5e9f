// Package filetest writes tags for tests.
package filetest

import (
	"strings"

	"ullage/data/osm/file"
)

// Tags makes tags of words like amenity=fuel, separated by " | " as values hold spaces and semicolons.
func Tags(text string) file.Tags {
	tags := file.Tags{}
	for part := range strings.SplitSeq(text, " | ") {
		k, v, _ := strings.Cut(part, "=")
		tags[k] = v
	}
	return tags
}

// XML writes the same words as the tags of an object in OSM XML.
func XML(text string) string {
	var b strings.Builder
	for part := range strings.SplitSeq(text, " | ") {
		k, v, _ := strings.Cut(part, "=")
		b.WriteString(`<tag k="` + k + `" v="` + v + `"/>`)
	}
	return b.String()
}
