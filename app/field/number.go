package field

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"ullage/planner/fact"
	"ullage/planner/life/units"
)

// This file reads and writes what the controls of the form hold. Numbers are
// read with a point or a comma, and written without trailing zeros.

// Number reads a number from least to most.
func Number(s string, least, most float64) (float64, fact.Fact) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
	if err != nil || !(v >= least && v <= most) {
		return 0, fact.Of("form.want_number", fact.V{"least": fact.Text(Plain(least)), "most": fact.Text(Plain(most))})
	}
	return v, fact.Fact{}
}

// Shown reads a number that is typed in a unit; limits and result are as
// stored. A limit is shown rounded, and what is shown is taken.
func Shown(s string, u units.Unit, least, most float64) (float64, fact.Fact) {
	v, wrong := Number(s, math.Floor(100*u.Show(least))/100, math.Ceil(100*u.Show(most))/100)
	if !wrong.Nothing() {
		return 0, wrong
	}
	stored, err := u.Read(v)
	if err != nil { // not within limits that are possible
		stored = least
	}
	return min(max(stored, least), most), fact.Fact{}
}

// readWhole reads a whole number from least to most.
func readWhole(s string, least, most int) (int, fact.Fact) {
	v, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || v < least || v > most {
		return 0, fact.Of("form.want_whole", fact.V{"least": fact.Count(least), "most": fact.Count(most)})
	}
	return v, fact.Fact{}
}

// readClock reads a time of day as minutes after midnight.
func readClock(s string) (float64, fact.Fact) {
	at, err := time.Parse("15:04", s)
	if err != nil {
		return 0, fact.Of("form.want_clock", nil)
	}
	return float64(at.Hour()*60 + at.Minute()), fact.Fact{}
}

// clock writes a time of day as a control holds it: 09:05.
func clock(min float64) string {
	m := int(math.Round(min))
	return fmt.Sprintf("%02d:%02d", m/60%24, m%60)
}

// Plain writes a number as it is typed, at most to a hundredth.
func Plain(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
