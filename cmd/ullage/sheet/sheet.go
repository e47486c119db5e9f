package sheet

import (
	"bufio"
	"fmt"
	"strings"

	"ullage/app/say"
	"ullage/planner/trip"
)

// textWidth is a page printed at ten characters an inch.
const textWidth = 96

// A sheet prints an itinerary for people who follow it on paper.
type sheet struct {
	w       *bufio.Writer
	it      trip.Itinerary
	say     say.Voice
	remarks []string // printed once at the end, called by number
}

// repeated lists the cautions that more than one call carries.
func repeated(it trip.Itinerary) []string {
	count := map[string]int{}
	var out []string
	for _, d := range it.Days {
		for _, c := range d.Calls {
			for _, text := range c.Cautions {
				if count[text]++; count[text] == 2 {
					out = append(out, text)
				}
			}
		}
	}
	return out
}

func (p *sheet) line(format string, args ...any) {
	fmt.Fprintln(p.w, strings.TrimRight(fmt.Sprintf(format, args...), " "))
}

// wrap prints text after a label, indented under its own start.
func (p *sheet) wrap(label, text string) {
	width := len([]rune(label))
	line := label
	for _, word := range strings.Fields(text) {
		if n := len([]rune(line)); n > width && n+1+len([]rune(word)) > textWidth {
			p.line("%s", line)
			line = strings.Repeat(" ", width)
		}
		if len([]rune(line)) > width {
			line += " "
		}
		line += word
	}
	p.line("%s", line)
}

// clock prints minutes since 00:00 of day one as the time of a day, and how
// many days after d if that is later.
func (p *sheet) clock(d trip.Day, min float64) string {
	s := p.say.Clock(min)
	if later := int(min+0.5)/1440 - (d.Number - 1); later > 0 {
		s += fmt.Sprintf("+%d", later)
	}
	return s
}

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
