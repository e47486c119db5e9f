package sheet

import (
	"bufio"
	"fmt"
	"strings"

	"ullage/app/say"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// textWidth is a page printed at ten characters an inch.
const textWidth = 96

// A sheet prints an itinerary for people who follow it on paper.
type sheet struct {
	w     *bufio.Writer
	it    trip.Itinerary
	say   say.Voice
	notes []fact.Fact // cautions of several calls: explained once at the end, called by number
}

func (p *sheet) line(text string) {
	fmt.Fprintln(p.w, strings.ReplaceAll(strings.TrimRight(text, " "), keep, " "))
}

// keep is a space that no line breaks at.
const keep = "\u00a0"

// title prints a heading, underlined with a character.
func (p *sheet) title(text string, under string, width int) {
	p.line(text)
	p.line(strings.Repeat(under, width))
}

// wrap prints text after a label, indented under its own start.
func (p *sheet) wrap(label, text string) {
	width := len([]rune(label))
	line := label
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' }) {
		if n := len([]rune(line)); n > width && n+1+len([]rune(word)) > textWidth {
			p.line(line)
			line = strings.Repeat(" ", width)
		}
		if len([]rune(line)) > width {
			line += " "
		}
		line += word
	}
	p.line(line)
}

// clock is a moment since 00:00 of day one as a time of the day, and how many
// days after d if that is later.
func (p *sheet) clock(d trip.Day, min float64) fact.Value {
	later := int(min+0.5)/1440 - (d.Number - 1)
	if later <= 0 {
		return fact.Clock(min)
	}
	return fact.Text(fmt.Sprintf("%s+%d", p.say.Clock(min), later))
}

// strip is the level strip of a tank; the zero value if there is none.
func (p *sheet) strip(tank string) trip.Strip {
	for _, s := range p.it.Strips {
		if s.Tank == tank {
			return s
		}
	}
	return trip.Strip{Tank: tank}
}

// levels lists levels of tanks as gauges show them, those that are wanted.
func (p *sheet) levels(at trip.Levels, wanted func(trip.Strip) bool) string {
	var parts []string
	for _, s := range p.it.Strips {
		if wanted(s) {
			parts = append(parts, p.say.Text("sheet.level", fact.V{"tank": fact.Tank(s.Tank, s.Name),
				"level": fact.Quantity(at[s.Tank], s.Unit, -1), "capacity": fact.Quantity(s.Capacity, s.Unit, -1)}))
		}
	}
	return strings.Join(parts, ", ")
}

func everyTank(trip.Strip) bool { return true }

// joined is several facts in one line.
func (p *sheet) joined(facts []fact.Fact) fact.Value {
	return fact.Text(strings.Join(p.say.Facts(facts), "; "))
}

// list prints facts, a line each after a mark.
func (p *sheet) list(mark string, facts []fact.Fact) {
	for _, f := range facts {
		p.wrap(mark, p.say.Fact(f))
	}
}

// money is a sum in the trip's currency.
func (p *sheet) money(sum float64) fact.Value { return fact.Money(sum, p.it.Currency) }

// some is a sum in the trip's currency; nothing where it rounds to none.
func (p *sheet) some(sum float64) fact.Value {
	if sum < 0.005 {
		return fact.Value{}
	}
	return p.money(sum)
}
