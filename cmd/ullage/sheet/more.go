package sheet

import (
	"bufio"
	"fmt"
	"io"

	"ullage/app/say"
	"ullage/planner/trip"
)

// PrintMore prints what is known last: the price of safety, and plans that one
// may like better.
func PrintMore(w io.Writer, it trip.Itinerary, voice say.Voice) error {
	p := &sheet{w: bufio.NewWriter(w), it: it, say: voice}
	if it.Safety == nil && it.Care == nil && len(it.Others) == 0 {
		return nil
	}
	p.line("")
	p.line("Other plans")
	if it.Safety != nil {
		p.wrap("  - ", p.prose(it.Safety.Text))
	}
	if it.Care != nil {
		p.wrap("  - ", it.Care.Text)
	}
	for _, o := range p.it.Others {
		p.wrap("  - ", fmt.Sprintf("%s: %s", p.extra(o.Extra), o.Text))
		for _, d := range o.Days {
			p.wrap("      ", p.prose(d))
		}
	}
	return p.w.Flush()
}

// extra says what something costs more, or less.
func (p *sheet) extra(sum float64) string {
	switch {
	case sum >= 0.005:
		return p.say.Money(sum, p.it.Currency) + " more"
	case sum <= -0.005:
		return p.say.Money(-sum, p.it.Currency) + " less"
	}
	return "costs the same"
}
