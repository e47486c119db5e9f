package page

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ullage/app/draw"
	"ullage/app/say"
	"ullage/planner"
	"ullage/planner/trip"
)

// clock writes a time of day as the controls of the form hold it: 09:05.
func clock(min float64) string {
	m := int(math.Round(min))
	return fmt.Sprintf("%02d:%02d", m/60%24, m%60)
}

// room says the headroom in words: 46 L left, or room for 20 L.
func room(v say.Voice, s trip.Strip, level float64) string {
	format := word.left
	if s.Kind == planner.Waste {
		format = word.roomFor
	}
	return fmt.Sprintf(format, v.Amount(draw.Headroom(s, level), s.Unit))
}

// count writes a number of things: 1 call, 2 calls, with the words "one|many".
func count(n int, words string) string {
	one, many, _ := strings.Cut(words, "|")
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
