package main

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"ullage/planner"
	"ullage/planner/life/units"
	"ullage/planner/trip"
)

// textWidth is a page printed at ten characters an inch.
const textWidth = 96

// A sheet prints an itinerary for people who follow it on paper.
type sheet struct {
	w       *bufio.Writer
	it      trip.Itinerary
	start   time.Time
	units   units.System
	remarks []string // printed once at the end, called by number
}

// printItinerary prints days, calls and levels, or why there is no plan.
func printItinerary(w io.Writer, t trip.Trip, it trip.Itinerary, from source, shown units.System, onward trip.Onward) error {
	p := &sheet{w: bufio.NewWriter(w), it: it, units: shown}
	p.start, _ = time.Parse(trip.DateLayout, t.Start)
	p.remarks = repeated(it)
	p.head(t)
	p.road(onward)
	if len(it.Days) == 0 {
		p.refusal()
	}
	for _, d := range it.Days {
		p.day(d)
	}
	p.foot(from)
	return p.w.Flush()
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

func (p *sheet) head(t trip.Trip) {
	it := p.it
	p.line("%s", it.Name)
	p.line("%s", strings.Repeat("=", len([]rune(it.Name))))
	v := t.Vehicle
	p.line("%s, %s high, %s wide, %s long, %s", v.Name, p.metres(v.HeightM), p.metres(v.WidthM), p.metres(v.LengthM), p.units.Unit(units.Mass).Format(v.MassKg))
	people := count(t.Party.Adults, "adult", "adults")
	if n := t.Party.Children; n > 0 {
		people += ", " + count(n, "child", "children")
	}
	p.line("%s; route of %s; from %s", people, p.km(it.LengthKm, 1), p.start.Format("Monday, 2 January 2006"))
	p.scales()
	if len(it.Days) == 0 {
		p.line("")
		return
	}
	c := it.Parts
	p.line("%s", verdict(it))
	p.line("  goods %.2f, fees %.2f, nights %.2f, time %.2f, missing at the end %.2f", c.Goods, c.Fees, c.Nights, c.Time, c.Refill)
	p.line("")
}

// printMore prints what is known last: the price of safety, and plans that one
// may like better.
func printMore(w io.Writer, it trip.Itinerary, shown units.System) error {
	p := &sheet{w: bufio.NewWriter(w), it: it, units: shown}
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
		p.wrap("  - ", fmt.Sprintf("%s: %s", extra(o.Extra, p.it.Currency), o.Text))
		for _, d := range o.Days {
			p.wrap("      ", p.prose(d))
		}
	}
	return p.w.Flush()
}

// extra says what something costs more, or less.
func extra(sum float64, currency string) string {
	switch {
	case sum >= 0.005:
		return fmt.Sprintf("%.2f %s more", sum, currency)
	case sum <= -0.005:
		return fmt.Sprintf("%.2f %s less", -sum, currency)
	}
	return "costs the same"
}

// verdict says what the plan costs and how good it is.
func verdict(it trip.Itinerary) string {
	s := fmt.Sprintf("Counts as %.2f %s; ", it.Cost, it.Currency)
	if it.Status == planner.Optimal {
		return s + "no plan costs less"
	}
	return s + fmt.Sprintf("no plan costs less than %.2f (this one is at most %.1f %% off)", it.Bound, 100*(it.Cost-it.Bound)/max(it.Cost, 1e-9))
}

func (p *sheet) refusal() {
	if p.it.Status == planner.Unknown {
		p.line("No plan was found in the time given, nor a proof that there is none: give more time with -within, or ease the limits.")
		return
	}
	p.line("There is no plan for this trip:")
	for _, r := range p.it.Why {
		p.wrap("  - ", p.prose(r.Text))
		for _, cure := range r.Cures {
			p.wrap("      cure: ", p.prose(cure))
		}
	}
	p.nearest()
	for _, c := range p.it.Places {
		if c.Excluded != "" {
			p.wrap(fmt.Sprintf("  %s  ", p.mark(c.Km, 1)), fmt.Sprintf("%s left out: %s", cmp.Or(c.Name, trip.KindName(c.Kind)+" "+c.Place), p.prose(c.Excluded)))
		}
	}
}

// nearest tells how far the trip can go if limits give way.
func (p *sheet) nearest() {
	p.line("")
	n := p.it.Nearest
	if n == nil {
		return
	}
	p.line("NOT A VALID PLAN, only what comes nearest to one. It breaks:")
	for _, text := range n.Broken {
		p.wrap("  ! ", p.prose(text))
	}
	for _, d := range n.Days {
		p.wrap("    ", p.prose(d))
	}
	p.line("")
}

func (p *sheet) day(d trip.Day) {
	p.line("Day %d, %s: %s to %.0f", d.Number, p.start.AddDate(0, 0, d.Number-1).Format("Monday 2 January"), p.mark(d.FromKm, 0), p.units.Unit(units.Distance).Show(d.ToKm))
	p.line("%s", strings.Repeat("-", textWidth))
	if d.ToKm <= d.FromKm && len(d.Calls) == 0 {
		p.line("  stay where you are")
		p.line("")
		return
	}
	p.wrap("  ", fmt.Sprintf("%s to %s; %s and %s at the wheel, ways off the route included%s%s", p.clock(d, d.StartMin), p.clock(d, d.EndMin), p.km(d.DriveKm, 0), duration(d.DriveMin), sailing(d), breaks(d.Breaks)))
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
func sailing(d trip.Day) string {
	minutes := 0.0
	for _, f := range d.Ferries {
		minutes += f.Min
	}
	if minutes == 0 {
		return ""
	}
	return fmt.Sprintf("; %s on %s", duration(minutes), count(len(d.Ferries), "ferry", "ferries"))
}

func (p *sheet) ferry(d trip.Day, f trip.Crossing) {
	p.line("")
	p.line("  %s  %s  Ferry to %s%s", p.clock(d, f.StartMin), p.mark(f.FromKm, 1), p.mark(f.ToKm, 1), named(f.Name))
	p.wrap("         ", fmt.Sprintf("%s without driving (%s); ashore at %s", duration(f.Min), f.Basis, p.clock(d, f.StartMin+f.Min)))
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

func (p *sheet) call(d trip.Day, c trip.Call) {
	p.line("")
	what := trip.KindName(c.Kind) + ", "
	if c.Name == trip.KindName(c.Kind) {
		what = ""
	}
	p.line("  %s  %s  %s (%s%s)", p.clock(d, c.ArriveMin), p.mark(c.Km, 1), c.Name, what, c.Place)
	p.line("         %.5f, %.5f; %s", c.Point.Lat(), c.Point.Lon(), p.prose(offRoute(c)))
	if e := c.Entry; e != nil {
		p.line("         drive in from %s at %.5f, %.5f", cmp.Or(e.Road, "the road"), e.Point.Lat(), e.Point.Lon())
	}
	for _, t := range c.Tasks {
		cost := ""
		if t.Cost > 0 {
			cost = fmt.Sprintf("%8.2f %s", t.Cost, p.it.Currency)
		}
		amount, symbol := p.amount(t.Amount, t.Unit)
		before, _ := p.amount(t.Before, t.Unit)
		after, _ := p.amount(t.After, t.Unit)
		p.line("         [ ] %-7s %-20s %6.1f %-2s  %6.1f -> %5.1f %s", t.Verb, p.tank(t.Tank), amount, symbol, before, after, cost)
	}
	switch {
	case c.Nights > 1:
		p.line("         [ ] stay %d nights", c.Nights)
	case c.Night:
		p.line("         [ ] stay the night")
	}
	if c.Night && len(c.Tasks) > 0 {
		p.line("             (amounts are of the whole stay: what is there and what the stay uses)")
	}
	p.wrap("         arrive ", p.levels(c.Arrive))
	p.wrap("         leave  ", p.levels(c.Leave))
	if c.Night {
		p.line("         cost   %.2f %s", c.Cost, p.it.Currency)
	} else {
		p.line("         cost   %.2f %s; leave at %s", c.Cost, p.it.Currency, p.clock(d, c.LeaveMin))
	}
	p.wrap("         data   ", p.prose(strings.Join(c.Facts, "; ")))
	if c.Fallback != "" {
		p.wrap("         closed ", p.prose(c.Fallback))
	}
	for _, text := range c.Cautions {
		if !slices.Contains(p.remarks, text) {
			p.wrap("         mind   ", p.prose(text))
		}
	}
	var numbers []string
	for i, text := range p.remarks {
		if slices.Contains(c.Cautions, text) {
			numbers = append(numbers, fmt.Sprint(i+1))
		}
	}
	if len(numbers) > 0 {
		p.line("         mind   at the end: %s", strings.Join(numbers, ", "))
	}
}

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}

func offRoute(c trip.Call) string {
	if c.OffKm < 0.05 && c.DetourKm < 0.5 {
		return "beside the route"
	}
	if c.ByRoad {
		return fmt.Sprintf("%.1f km off the route, by road %.1f km and %.0f min more", c.OffKm, c.DetourKm, c.DetourMin)
	}
	return fmt.Sprintf("%.1f km off the route, about %.1f km and %.0f min there and back (estimate)", c.OffKm, c.DetourKm, c.DetourMin)
}

func (p *sheet) tank(id string) string {
	for _, s := range p.it.Strips {
		if s.Tank == id {
			return s.Name
		}
	}
	return id
}

func (p *sheet) levels(at trip.Levels) string {
	var parts []string
	for _, s := range p.it.Strips {
		level, symbol := p.amount(at[s.Tank], s.Unit)
		capacity, _ := p.amount(s.Capacity, s.Unit)
		parts = append(parts, fmt.Sprintf("%s %.0f/%.0f %s", s.Name, level, capacity, symbol))
	}
	return strings.Join(parts, ", ")
}

func (p *sheet) foot(from source) {
	if n := len(p.it.Strips); n > 0 {
		end := trip.Levels{}
		for _, s := range p.it.Strips {
			end[s.Tank] = s.Points[len(s.Points)-1].L
		}
		p.wrap("End of the route: ", p.levels(end))
		p.likelyEnd()
		p.line("")
	}
	p.handBack()
	if len(p.remarks) > 0 {
		p.line("Mind, at the calls that give the number")
		for i, text := range p.remarks {
			p.wrap(fmt.Sprintf(" %2d  ", i+1), p.prose(text))
		}
		p.line("")
	}
	p.line("Mind, on the whole trip")
	for _, text := range p.it.Cautions {
		p.wrap("  -  ", p.prose(text))
	}
	p.counts()
	p.howTos()
	p.checklists()
	if from.osm {
		p.line("")
		p.line("%s", attribution(from.date))
	}
	for _, note := range from.notes {
		p.wrap("", note)
	}
}

// clock prints minutes since 00:00 of day one as the time of a day, and how
// many days after d if that is later.
func (p *sheet) clock(d trip.Day, min float64) string {
	m := int(min + 0.5)
	later := m/1440 - (d.Number - 1)
	s := fmt.Sprintf("%02d:%02d", m/60%24, m%60)
	if later > 0 {
		s += fmt.Sprintf("+%d", later)
	}
	return s
}

func duration(min float64) string {
	m := int(min + 0.5)
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}
