package page

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"ullage/app/draw"
	"ullage/planner"
	"ullage/planner/trip"
)

// This file writes numbers the way people read them. A thin space (U+202F)
// stands between a number and its unit, and between thousands.

const thin = "\u202f"

// clock writes minutes after midnight of any day: 09:05.
func clock(min float64) string {
	m := int(math.Round(min)) % 1440
	if m < 0 {
		m += 1440
	}
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}

// span writes a length of time: 3 h 20 min.
func span(min float64) string {
	m := int(math.Round(min))
	switch {
	case m < 60:
		return strconv.Itoa(m) + thin + "min"
	case m%60 == 0:
		return strconv.Itoa(m/60) + thin + "h"
	}
	return fmt.Sprintf("%d%sh %d%smin", m/60, thin, m%60, thin)
}

// km writes a distance in kilometres: 7.4 km, 212 km, 1 204 km.
func km(v float64) string { return Units("").km(v) }

// amount writes an amount of a tank's content.
func amount(v float64, unit string) string { return thousands(draw.Amount(v)) + thin + unit }

// money writes a sum: 12.30 EUR.
func money(v float64, currency string) string {
	if math.Abs(v) < 0.005 {
		v = 0
	}
	return thousands(strconv.FormatFloat(v, 'f', 2, 64)) + thin + currency
}

func thousands(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "−", s[1:]
	}
	whole, rest, found := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0 && len(whole) > 4; i -= 3 {
		whole = whole[:i] + thin + whole[i:]
	}
	if found {
		rest = "." + rest
	}
	return sign + whole + rest
}

// date writes a local date with its weekday: Friday 12 June.
func date(iso string) string { return dateAs(iso, "Monday 2 January") }

// shortDate is for narrow places: Fri 12.
func shortDate(iso string) string { return dateAs(iso, "Mon 2") }

func dateAs(iso, layout string) string {
	t, err := time.Parse(trip.DateLayout, iso)
	if err != nil {
		return iso
	}
	return t.Format(layout)
}

// room says the headroom in words: 46 L left, or room for 20 L.
func room(s trip.Strip, level float64) string {
	format := say.left
	if s.Kind == planner.Waste {
		format = say.roomFor
	}
	return fmt.Sprintf(format, amount(draw.Headroom(s, level), s.Unit))
}

// count writes a number of things: 1 call, 2 calls, with the words "one|many".
func count(n int, words string) string {
	one, many, _ := strings.Cut(words, "|")
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
