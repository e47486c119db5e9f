package trip

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// A StopID names a stop of the planner: a place, at one pass of the route, for
// so many nights. Only String and ParseStop know how that is written.
type StopID struct {
	Place  string
	Pass   int // 1 is the first
	Nights int // 0 or 1: one night at most
}

// numbered is the end of a written stop: its pass and its nights.
var numbered = regexp.MustCompile(`^(.*?)(?:@([1-9][0-9]{0,5}))?(?:\*([1-9][0-9]{0,5}))?$`)

// String writes the id: "n1", "n1@2" at the second pass, "n1@2*3" for three
// nights. The pass is also written where the place's own id ends like one.
func (s StopID) String() string {
	text := s.Place
	if s.Pass > 1 || strings.ContainsAny(s.Place, "@*") && ParseStop(s.Place).Place != s.Place {
		text += fmt.Sprintf("@%d", max(s.Pass, 1))
	}
	if s.Nights > 1 {
		text += fmt.Sprintf("*%d", s.Nights)
	}
	return text
}

// ParseStop reads what String writes.
func ParseStop(text string) StopID {
	m := numbered.FindStringSubmatch(text)
	if m == nil { // a place with a line break in its id
		return StopID{Place: text, Pass: 1}
	}
	pass, _ := strconv.Atoi(m[2])
	nights, _ := strconv.Atoi(m[3])
	return StopID{Place: m[1], Pass: cmp.Or(pass, 1), Nights: nights}
}
