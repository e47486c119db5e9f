package draw

import (
	"strconv"

	"ullage/planner/trip"
)

// A Number is a stop's place in the order of the trip, as shown on the map,
// above the strips and in the list.
type Number struct {
	N    int
	Call trip.Call
}

// Numbers counts the calls of all days, by the numbers that they have; from 1 if they have none.
func Numbers(days []trip.Day) []Number {
	var out []Number
	for _, d := range days {
		for _, c := range d.Calls {
			n := c.N
			if n == 0 {
				n = len(out) + 1
			}
			out = append(out, Number{n, c})
		}
	}
	return out
}

// Discs of stops closer than discGap of the width stand in lower rows, at
// most discRows of them: on a phone's width they then stay apart.
const (
	discGap  = 0.062
	discRows = 3
	discRow  = 20 // pixels
)

// Ruler draws the top of the strips: where each day begins, by the given
// labels, and the numbered stops. A night is a square, any other stop a disc.
// It also tells how many rows of stops it has.
func Ruler(axis Axis, days []trip.Day, labels []string) (ruler Node, rows int) {
	out := El("svg", "class", "ruler", "aria-hidden", "true", "focusable", "false")
	for i, d := range days {
		from, to := axis.AtMin(d.StartMin).X, axis.AtMin(d.EndMin).X
		if i >= len(labels) || to-from < 0.05 {
			continue
		}
		out = out.With(at(from, "begin",
			El("path", "d", "M0 2V16"),
			El("text", "x", "5", "y", "13").Say(labels[i]),
		))
	}
	last := [discRows]float64{-1, -1, -1}
	for _, n := range Numbers(days) {
		x, row := axis.AtMin(n.Call.ArriveMin).X, 0
		for row < discRows-1 && x-last[row] < discGap {
			row++
		}
		last[row], rows = x, max(rows, row+1)
		out = out.With(at(x, "", Disc(n, 0, float64(30+discRow*row))))
	}
	return out, rows
}

// Disc draws a stop's number around (x, y): a square for a night, a disc
// otherwise.
func Disc(n Number, x, y float64) Node {
	g := El("g", "class", "disc", "transform", "translate("+num(x)+" "+num(y)+")")
	if n.Call.Night {
		g = El("g", "class", "disc stay", "transform", "translate("+num(x)+" "+num(y)+")")
		g = g.With(El("rect", "x", "-9", "y", "-9", "width", "18", "height", "18", "rx", "3"))
	} else {
		g = g.With(El("circle", "r", "9"))
	}
	return g.With(El("text", "dy", "4", "text-anchor", "middle").Say(strconv.Itoa(n.N)))
}

// Needle is the cursor: an upright across all strips.
func Needle(x float64) Node {
	return at(x, "", El("path", "d", "M0 0V2000"), El("path", "class", "grip", "d", "M-6 0H6V6L0 13L-6 6Z"))
}
