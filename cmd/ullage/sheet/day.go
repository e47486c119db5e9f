package sheet

import (
	"fmt"
	"strings"

	"ullage/planner/life"
	"ullage/planner/trip"
)

func (p *sheet) day(d trip.Day) {
	p.line("Day %d, %s: %s to %.0f", d.Number, p.say.Date(d.Date), p.say.Mark(d.FromKm, 0), p.say.Shown(d.ToKm, "km"))
	p.line("%s", strings.Repeat("-", textWidth))
	if d.ToKm <= d.FromKm && len(d.Calls) == 0 {
		p.line("  stay where you are")
		p.line("")
		return
	}
	p.wrap("  ", fmt.Sprintf("%s to %s; %s and %s at the wheel, ways off the route included%s%s", p.clock(d, d.StartMin), p.clock(d, d.EndMin), p.say.Quantity(d.DriveKm, "km", 0), p.say.Span(d.DriveMin), p.sailing(d), breaks(d.Breaks)))
	at := 0
	for _, f := range d.Ferries {
		for ; at < len(d.Calls) && d.Calls[at].ArriveMin <= f.StartMin; at++ {
			p.call(d, d.Calls[at])
		}
		p.ferry(d, f)
	}
	for _, c := range d.Calls[at:] {
		p.call(d, c)
	}
	p.line("")
}

// sailing says how long a day is on ferries, if it is.
func (p *sheet) sailing(d trip.Day) string {
	minutes := 0.0
	for _, f := range d.Ferries {
		minutes += f.Min
	}
	if minutes == 0 {
		return ""
	}
	return fmt.Sprintf("; %s on %s", p.say.Span(minutes), count(len(d.Ferries), "ferry", "ferries"))
}

func (p *sheet) ferry(d trip.Day, f trip.Crossing) {
	p.line("")
	p.line("  %s  %s  Ferry to %s%s", p.clock(d, f.StartMin), p.say.Mark(f.FromKm, 1), p.say.Mark(f.ToKm, 1), named(f.Name))
	p.wrap("         ", fmt.Sprintf("%s without driving (%s); ashore at %s", p.say.Span(f.Min), f.Basis, p.clock(d, f.StartMin+f.Min)))
	for _, text := range f.Mind {
		p.wrap("         [ ] ", p.prose(text))
	}
}

// named is a name in brackets, if there is one.
func named(name string) string {
	if name == "" {
		return ""
	}
	return " (" + name + ")"
}

func breaks(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("; take %s of %.0f min besides", count(n, "break", "breaks"), life.BreakMin)
}
