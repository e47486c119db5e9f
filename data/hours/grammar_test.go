package hours

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// A grammar writes values of opening_hours by the grammar of the specification
// (https://wiki.openstreetmap.org/wiki/Key:opening_hours/specification, "Formal
// specification"), all of its forms and those most often that people use, with
// a few that stand beside it. The same seed gives the same values.
type grammar struct{ *rand.Rand }

func newGrammar(seed uint64) grammar { return grammar{rand.New(rand.NewPCG(seed, 13))} }

func (g grammar) of(list ...string) string { return list[g.IntN(len(list))] }

// in is true n times in a hundred.
func (g grammar) in(n int) bool { return g.IntN(100) < n }

// some joins up to n of what f writes.
func (g grammar) some(n int, f func() string) string {
	out := []string{f()}
	for len(out) < n && g.in(30) {
		out = append(out, f())
	}
	return strings.Join(out, ",")
}

func (g grammar) values(n int) []string {
	var all []string
	for seen := map[string]bool{}; len(all) < n; {
		if v := g.value(); !seen[v] && len(v) < 160 {
			seen[v] = true
			all = append(all, v)
		}
	}
	return all
}

func (g grammar) value() string {
	text := g.rule()
	for g.in(35) {
		text += g.of("; ", "; ", "; ", "; ", ", ", " || ") + g.rule()
	}
	return text
}

func (g grammar) rule() string {
	var parts []string
	add := func(chance int, f func() string) {
		if g.in(chance) {
			parts = append(parts, f())
		}
	}
	if g.in(3) {
		return g.of("24/7", "24/7 off", "off", "closed", "unknown", `"call us"`, "open")
	}
	add(8, func() string { return g.some(2, g.years) })
	add(25, func() string { return g.some(3, g.dates) })
	add(8, func() string { return "week " + g.some(3, g.weeks) })
	if len(parts) > 0 && g.in(15) {
		parts[len(parts)-1] += ":"
	}
	add(65, g.days)
	add(85, func() string { return g.some(3, g.times) })
	add(18, func() string {
		return g.of("off", "off", "off", "closed", "open", "unknown", `"by appointment"`, `open "ring"`, `off "holidays"`)
	})
	if len(parts) == 0 {
		return g.times()
	}
	return strings.Join(parts, " ")
}

func (g grammar) years() string {
	y := 2022 + g.IntN(5)
	return fmt.Sprintf(g.of("%[1]d", "%[1]d", "%[1]d-%[2]d", "%[1]d+", "%[1]d-%[2]d/2"), y, y+1+g.IntN(3))
}

var monthNames = strings.Fields("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec")
var dayNames = strings.Fields("Mo Tu We Th Fr Sa Su")

func (g grammar) month() string   { return g.of(monthNames...) }
func (g grammar) weekday() string { return g.of(dayNames...) }

// date is a day of a year: the grammar knows it with and without the year, as Easter, and moved.
func (g grammar) date() string {
	switch g.IntN(10) {
	case 0:
		return "easter" + g.offset()
	case 1:
		return fmt.Sprintf("%s %s[%s]%s", g.month(), g.weekday(), g.of("1", "2", "3", "4", "5", "-1", "-2"), g.offset())
	case 2:
		return g.of("Feb 28", "Feb 29", "Dec 31", "Jan 01", "Apr 20", "Dec 24", "Mar 31", "Oct 03") + g.offset()
	}
	return fmt.Sprintf("%s %02d", g.month(), 1+g.IntN(28))
}

func (g grammar) offset() string {
	return g.of("", "", "", "", fmt.Sprintf(" +%d days", 1+g.IntN(5)), fmt.Sprintf(" -%d days", 1+g.IntN(5)), " +1 day")
}

func (g grammar) dates() string {
	year := fmt.Sprint(2023+g.IntN(3), " ")
	switch g.IntN(16) {
	case 0, 1:
		return g.month()
	case 2, 3, 4:
		return g.month() + "-" + g.month()
	case 5, 6:
		return g.date()
	case 7, 8, 9:
		return g.date() + "-" + g.date()
	case 10:
		return fmt.Sprintf("%s %02d-%02d", g.month(), 1+g.IntN(14), 15+g.IntN(14))
	case 11:
		return year + g.date()
	case 12:
		return year + g.date() + "-" + g.of("", "2025 ", "2026 ") + g.date()
	case 13:
		return fmt.Sprintf("%s %02d-%s %02d/%d", g.month(), 1+g.IntN(14), g.month(), 1+g.IntN(28), 2+g.IntN(6))
	case 14:
		return g.of(g.month()+"-"+g.date(), g.date()+"-"+g.month(), year+g.month(), year+g.month()+"-"+g.month())
	}
	return g.date() + "+"
}

func (g grammar) weeks() string {
	w := 1 + g.IntN(53)
	return fmt.Sprintf(g.of("%02[1]d", "%02[1]d-%02[2]d", "%02[1]d-%02[2]d/2"), w, g.of2(w+g.IntN(54-w), 1+g.IntN(53)))
}

func (g grammar) of2(often, seldom int) int {
	if g.in(90) {
		return often
	}
	return seldom
}

func (g grammar) days() string {
	holiday := func() string { return g.of("PH", "PH", "PH", "SH") + g.of("", "", "", "", " +1 day", " -1 day") }
	weekdays := func() string {
		return g.some(3, func() string {
			switch g.IntN(8) {
			case 0, 1, 2:
				return g.weekday()
			case 3:
				return fmt.Sprintf("%s[%s]%s", g.weekday(), g.of("1", "2", "5", "-1", "1,3", "2-4", "-2--1", "1-2,-1"), g.offset())
			}
			return g.weekday() + "-" + g.weekday()
		})
	}
	switch g.IntN(20) {
	case 0:
		return holiday()
	case 1:
		return weekdays() + "," + holiday()
	case 2:
		return holiday() + "," + weekdays()
	case 3:
		return holiday() + " " + weekdays()
	case 4:
		return "PH,SH " + weekdays()
	case 5:
		return weekdays() + " " + holiday() // of which the grammar knows nothing
	}
	return weekdays()
}

func (g grammar) clock(most int) string {
	m := 15 * g.IntN(4*most+1)
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

func (g grammar) moment() string {
	if g.in(60) {
		return g.clock(23)
	}
	event := g.of("sunrise", "sunset", "dawn", "dusk")
	if g.in(40) {
		return fmt.Sprintf("(%s%s%02d:%s)", event, g.of("+", "-"), g.IntN(4), g.of("00", "15", "30"))
	}
	return event
}

func (g grammar) times() string {
	switch g.IntN(24) {
	case 0, 1, 2:
		return g.moment() + "-" + g.moment()
	case 3:
		return g.moment() + "+"
	case 4:
		return g.clock(23) + "-" + g.clock(24) + "+"
	case 5:
		return g.clock(23) + "-" + g.clock(48)
	case 6:
		return g.clock(23) + "-" + g.clock(48) + "+"
	case 7:
		return "00:00-24:00"
	case 8:
		return g.moment() + "-" + g.moment() + "+"
	}
	from := 6 + g.IntN(12)
	return fmt.Sprintf("%02d:%s-%02d:%s", from, g.of("00", "30"), from+1+g.IntN(24-from), g.of("00", "00", "30"))
}
