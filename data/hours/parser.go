package hours

import "fmt"

// This file walks over the tokens of a text; the files after it read what stands there.

type parser struct {
	tokens []token
	i      int
	rules  []rule
}

func (p *parser) peek(k int) token { return p.tokens[min(p.i+k, len(p.tokens)-1)] }

// is says whether the k-th token from here is that sign.
func (p *parser) is(k int, text string) bool {
	t := p.peek(k)
	return t.kind == sign && t.text == text
}

// take steps over the sign if it is next.
func (p *parser) take(text string) bool {
	if p.is(0, text) {
		p.i++
		return true
	}
	return false
}

// takeWord steps over the word if it is next.
func (p *parser) takeWord(text string) bool {
	if t := p.peek(0); t.kind == word && t.text == text {
		p.i++
		return true
	}
	return false
}

// colon says whether the k-th token parts hours from minutes.
func (p *parser) colon(k int) bool {
	return (p.is(k, ":") || p.is(k, ".")) && p.peek(k+1).kind == number && len(p.peek(k+1).text) == 2 && !p.peek(k+1).spaced
}

// clockAt says whether a time of the clock starts at the k-th token.
func (p *parser) clockAt(k int) bool {
	p.i += k
	defer func() { p.i -= k }()
	return p.peek(0).kind == number && p.colon(1)
}

// alwaysAhead says whether "24/7" is next.
func (p *parser) alwaysAhead() bool {
	return p.peek(0).text == "24" && p.is(1, "/") && p.peek(2).text == "7"
}

// unexpected is for what a list cannot hold.
func (p *parser) unexpected(want string) error {
	if t := p.peek(0); t.kind != end {
		return fmt.Errorf("%s is expected, not %s", want, t.text)
	}
	return fmt.Errorf("%s is missing at the end", want)
}

// bounded reads a number from lo to hi.
func (p *parser) bounded(what string, lo, hi int) (int, error) {
	t := p.peek(0)
	if t.kind != number || t.value < lo || t.value > hi {
		return 0, p.unexpected(what)
	}
	p.i++
	return t.value, nil
}

// step reads "/2"; 1 if there is none.
func (p *parser) step() (int, error) {
	if !p.take("/") {
		return 1, nil
	}
	return p.bounded("a period", 1, 366)
}
