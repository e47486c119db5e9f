// Package plain makes a text that came from outside fit to be shown: one line of what can be read, and not more than a line or
// three of it.
//
// In come names and remarks as a map, a track or a person has them, out go the same without what would act on the page, the paper
// or the terminal around them. It changes no text that is what it seems.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// MostRunes of a name are kept: OpenStreetMap has no longer values. Source: API v0.6 of wiki.openstreetmap.org, "the value has a
// maximum of 255 characters".
const MostRunes = 255

// Text is a text on one line: control characters and those that turn the direction of what follows are left out, white
// space is a single space, and of a text that is too long the beginning is kept, with "…". Cost: what is kept, and once the length.
func Text(s string) string {
	s = strings.TrimSpace(s)
	if len(s) <= MostRunes && !strings.ContainsFunc(s, odd) {
		return s
	}
	var b strings.Builder
	n, space := 0, false
	for _, r := range s {
		switch {
		case turns(r), r == utf8.RuneError:
			continue
		case unicode.IsSpace(r):
			space = n > 0
			continue
		case unicode.IsControl(r):
			continue
		}
		if n == MostRunes-1 {
			b.WriteString("…")
			break
		}
		if space {
			b.WriteByte(' ')
			n++
		}
		b.WriteRune(r)
		n, space = n+1, false
	}
	return b.String()
}

// Line is a text without what would act on a terminal: as Text, but of any length.
func Line(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case turns(r) || unicode.IsControl(r):
			return -1
		}
		return r
	}, s)
}

// odd is a rune that Text may change.
func odd(r rune) bool {
	return turns(r) || r == utf8.RuneError || unicode.IsControl(r) || r != ' ' && unicode.IsSpace(r) && r != '\u00a0' && r != '\u202f'
}

// turns: the runes that set, override or isolate a direction. Source: Unicode Standard Annex 9, Table 4, and the implicit marks.
func turns(r rune) bool {
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0x200e || r == 0x200f || r == 0x061c
}
