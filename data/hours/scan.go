package hours

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind int8

const (
	end     tokenKind = iota
	number            // digits
	word              // letters, lower case
	comment           // in quotes
	sign              // any other single rune, or "||"
)

type token struct {
	kind   tokenKind
	text   string
	value  int // of a number
	at     int // in bytes
	spaced bool
}

// signs that people type, or that text programs make, for the plain ones.
var plain = strings.NewReplacer(
	"–", "-", "—", "-", "−", "-", "‐", "-", "‑", "-", "～", "-",
	"：", ":", "，", ",", "；", ";", "“", `"`, "”", `"`, "„", `"`,
	"\u00a0", " ", "\u200b", "", "\t", " ", "\n", " ", "\r", " ",
	" & ", ", ", " and ", ", ",
)

// scan cuts a text into tokens, the last of kind end.
func scan(text string) ([]token, error) {
	var tokens []token
	spaced := false
	for at := 0; at < len(text); {
		rest := text[at:]
		r, size := utf8.DecodeRuneInString(rest)
		t := token{at: at, spaced: spaced}
		switch {
		case r == ' ':
			spaced = true
			at++
			continue
		case r >= '0' && r <= '9':
			size = len(rest) - len(strings.TrimLeft(rest, "0123456789"))
			if size > 4 {
				return nil, fmt.Errorf("%q is too large a number", rest[:size])
			}
			t.kind = number
			for _, c := range rest[:size] {
				t.value = 10*t.value + int(c-'0')
			}
		case unicode.IsLetter(r):
			size = strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) })
			if size < 0 {
				size = len(rest)
			}
			t.kind = word
		case r == '"':
			size = strings.IndexByte(rest[1:], '"') + 2
			if size == 1 {
				return nil, fmt.Errorf("the comment %s has no closing quote", rest)
			}
			t.kind = comment
		case strings.HasPrefix(rest, "||"):
			t.kind, size = sign, 2
		default:
			t.kind = sign
		}
		t.text = rest[:size]
		if t.kind == word {
			t.text = strings.ToLower(t.text)
		}
		tokens = append(tokens, t)
		at += size
		spaced = false
	}
	return append(tokens, token{kind: end, at: len(text)}), nil
}

var weekdays = names("su sun sunday sundays", "mo mon monday mondays", "tu tue tues tuesday tuesdays", "we wed wednesday wednesdays",
	"th thu thur thurs thursday thursdays", "fr fri friday fridays", "sa sat saturday saturdays")

var months = names("", "jan january", "feb february", "mar march", "apr april", "may", "jun june", "jul july",
	"aug august", "sep sept september", "oct october", "nov november", "dec december")

var events = map[string]sunEvent{"dawn": dawn, "sunrise": sunrise, "sunset": sunset, "dusk": dusk}

var states = map[string]State{"open": Open, "closed": Closed, "off": Closed, "unknown": Unknown}

var holidayKinds = map[string]holidayKind{"ph": publicHoliday, "sh": schoolHoliday}

// names maps each word to the index of the list it stands in.
func names(lists ...string) map[string]int {
	m := map[string]int{}
	for i, list := range lists {
		for _, name := range strings.Fields(list) {
			m[name] = i
		}
	}
	return m
}
