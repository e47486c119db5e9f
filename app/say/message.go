package say

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A message is a sentence with places for values, written in a part of ICU
// MessageFormat: {name}; {name, cap} with a capital letter first; {name, bare} a
// number without its unit;
// {n, plural, =0 {…} one {…} other {… # …}}; {name, select, a {…} none {…} other {…}},
// where none is a value that is missing or empty. An apostrophe before a brace
// quotes up to the next apostrophe; two are one.
type message []part

// A part is literal text, or a place for a value.
type part struct {
	text  string
	name  string // of a value; "": literal
	how   string // "", cap, bare, plural, select
	cases []choice
	count bool // the number of the plural around it
}

// A choice is one branch of a plural or a select.
type choice struct {
	when string // one, other, =0; or the value
	says message
}

// parse reads a sentence. The error says what is wrong and near which text.
func parse(text string) (message, error) {
	p := &reader{rest: text, whole: text}
	m := p.message("")
	if p.err == nil && p.rest != "" {
		p.fail("a } too many")
	}
	return m, p.err
}

type reader struct {
	rest, whole string
	err         error
}

func (p *reader) fail(what string) {
	if p.err == nil {
		p.err = fmt.Errorf("%s before %q", what, p.rest)
	}
	p.rest = ""
}

// message reads up to a closing brace, or the end. Within a "plural" # is its number.
func (p *reader) message(within string) message {
	var out message
	for p.rest != "" && p.rest[0] != '}' {
		switch c := p.rest[0]; {
		case c == '{':
			out = append(out, p.place())
		case c == '#' && within == "plural":
			p.rest = p.rest[1:]
			out = append(out, part{count: true})
		default:
			out = append(out, part{text: p.literal(within)})
		}
	}
	return out
}

// literal reads text up to the next place, brace or number.
func (p *reader) literal(within string) string {
	plural := within == "plural"
	var s strings.Builder
	for p.rest != "" {
		c := p.rest[0]
		switch {
		case c == '{' || c == '}' || c == '#' && plural:
			return s.String()
		case strings.HasPrefix(p.rest, "''"):
			s.WriteByte('\'')
			p.rest = p.rest[2:]
		case strings.HasPrefix(p.rest, "'{") || strings.HasPrefix(p.rest, "'}") || plural && strings.HasPrefix(p.rest, "'#"):
			quoted, rest, _ := strings.Cut(p.rest[1:], "'")
			s.WriteString(quoted)
			p.rest = rest
		default:
			s.WriteByte(c)
			p.rest = p.rest[1:]
		}
	}
	return s.String()
}

// place reads {name}, {name, cap} or a choice.
func (p *reader) place() part {
	p.rest = p.rest[1:]
	end := strings.IndexAny(p.rest, ",}")
	if end < 0 {
		p.fail("no } after a {")
		return part{}
	}
	out := part{name: strings.TrimSpace(p.rest[:end])}
	if out.name == "" || strings.ContainsAny(out.name, " {'") {
		p.fail("a value needs a name")
		return part{}
	}
	if p.rest = p.rest[end:]; p.take("}") {
		return out
	}
	p.rest = p.rest[1:]
	end = strings.IndexAny(p.rest, ",}")
	if end < 0 {
		p.fail("no } after a {")
		return part{}
	}
	out.how = strings.TrimSpace(p.rest[:end])
	p.rest = p.rest[end:]
	switch out.how {
	case "cap", "bare":
	case "plural", "select":
		p.take(",")
		out.cases = p.choices(out.how)
	default:
		p.fail(fmt.Sprintf("%q is not cap, bare, plural or select", out.how))
	}
	if !p.take("}") {
		p.fail("no } at the end of " + out.name)
	}
	return out
}

// choices reads the branches of a plural or a select; other must be one.
func (p *reader) choices(within string) []choice {
	var out []choice
	other := false
	for {
		p.rest = strings.TrimLeft(p.rest, " ")
		if p.rest == "" || p.rest[0] == '}' {
			break
		}
		when, rest, found := strings.Cut(p.rest, "{")
		if when = strings.TrimSpace(when); !found || when == "" || strings.ContainsAny(when, " }") {
			p.fail("a branch needs a word and {")
			return nil
		}
		p.rest = rest
		out = append(out, choice{when, p.message(within)})
		if !p.take("}") {
			p.fail("no } at the end of branch " + when)
			return nil
		}
		other = other || when == "other"
	}
	if !other {
		p.fail("no branch other")
	}
	return out
}

func (p *reader) take(s string) bool {
	rest, found := strings.CutPrefix(p.rest, s)
	p.rest = rest
	return found
}

// An argument is a value ready to be put into a sentence.
type argument struct {
	text   string
	bare   string  // without its unit
	chosen string  // what a select goes by; "": none
	n      float64 // what a plural goes by
}

// write puts a message together. of gives the values by name; plural is how the
// language counts, count how it writes a number.
func (m message) write(s *strings.Builder, of func(name string) argument, plural, count func(n float64) string, number float64) {
	for _, p := range m {
		switch {
		case p.count:
			s.WriteString(count(number))
		case p.name == "":
			s.WriteString(p.text)
		case p.cases != nil:
			a := of(p.name)
			p.choose(a, plural).write(s, of, plural, count, a.n)
		case p.how == "cap":
			s.WriteString(Capital(of(p.name).text))
		case p.how == "bare":
			s.WriteString(of(p.name).bare)
		default:
			s.WriteString(of(p.name).text)
		}
	}
}

// choose finds the branch of a plural or a select that holds for a value.
func (p part) choose(a argument, plural func(n float64) string) message {
	want := []string{a.chosen, "other"}
	switch {
	case p.how == "plural":
		want = []string{"=" + figures(a.n, 0), plural(a.n), "other"}
	case a.chosen == "":
		want[0] = "none"
	}
	for _, when := range want {
		for _, c := range p.cases {
			if c.when == when {
				return c.says
			}
		}
	}
	return nil
}

// Capital is a text with its first letter as a capital.
func Capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// plain writes a number with digits after the point; -1: one below ten unless it
// is a whole number, else none.
func figures(n float64, digits int) string {
	if math.IsNaN(n) || math.IsInf(n, 0) { // no miles per gallon of what uses nothing
		return "–"
	}
	if digits < 0 {
		if digits = 0; math.Abs(n) < 9.95 {
			return strings.TrimSuffix(figures(n, 1), ".0")
		}
	}
	text := strconv.FormatFloat(n, 'f', digits, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-") // no minus before nothing
	}
	return text
}
