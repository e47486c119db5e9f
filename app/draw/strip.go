package draw

import (
	"strconv"
	"strings"

	"ullage/planner"
	"ullage/planner/trip"
)

// The inside of a strip is drawn in units of a thousandth of the width and a
// hundredth of the height, and stretched to the size the style sheet gives.
const (
	stripW   = 1000.0
	stripH   = 100.0
	stripTop = 8.0 // a full tank reaches here, so that notches stay visible
)

// Strip draws the headroom of one tank along the trip: days as bands, nights
// as slots, the reserve as a floor, stops that serve the tank as notches, the
// lowest point with its number. Below the planned line the area is full; above
// it, where the strip has a band, it is pale up to what is left at best, with a
// line at what is likely. Height and width come from the style sheet.
func Strip(s trip.Strip, axis Axis, days []trip.Day) Node {
	inner := El("svg", "viewBox", "0 0 1000 100", "preserveAspectRatio", "none",
		"width", "100%", "height", "100%", "aria-hidden", "true")
	inner = inner.With(bands(axis, days)...)
	if line := outline(s, axis, planned); line != "" {
		down := " V100 H" + num(axis.AtMin(s.Points[0].Min).X*stripW) + " Z"
		if hasBand(s) {
			inner = inner.With(El("path", "class", "best", "d", outline(s, axis, best(s))+down))
		}
		inner = inner.With(El("path", "class", "fill", "d", line+down))
		if s.Kind == planner.Waste {
			inner = inner.With(grain(s, axis)...)
		}
		if hasBand(s) {
			inner = inner.With(El("path", "class", "likely", "d", outline(s, axis, likely)))
		}
		inner = inner.With(El("path", "class", "edge", "d", line))
	}
	if s.Reserve > 0 {
		y := height(s, s.Reserve)
		inner = inner.With(
			El("rect", "class", "reserve", "x", "0", "y", num(y), "width", "1000", "height", num(stripH-y)),
			El("path", "class", "floor", "d", "M0 "+num(y)+"H1000"),
		)
	}
	out := El("svg", "class", "strip "+string(s.Kind), "aria-hidden", "true", "focusable", "false").With(inner)
	for _, d := range days {
		for _, c := range d.Calls {
			if serves(c, s.Tank) {
				out = out.With(notch(axis.AtMin(c.ArriveMin).X))
			}
		}
	}
	if p, ok := Lowest(s); ok {
		out = out.With(low(s, p, axis.AtMin(p.Min).X))
	}
	return out
}

// height is the y of a headroom.
func height(s trip.Strip, headroom float64) float64 {
	if !(s.Capacity > 0) {
		return stripH
	}
	return stripH - (stripH-stripTop)*min(max(headroom/s.Capacity, 0), 1)
}

// best is the level with the most headroom of the band.
func best(s trip.Strip) func(trip.Level) float64 {
	if s.Kind == planner.Waste {
		return func(p trip.Level) float64 { return p.Low }
	}
	return func(p trip.Level) float64 { return p.High }
}

// outline is the path of the headroom of a level, a jump drawn as an upright.
func outline(s trip.Strip, axis Axis, of func(trip.Level) float64) string {
	var b strings.Builder
	lastX, lastY := "", ""
	for i, p := range s.Points {
		x, y := num(axis.AtMin(p.Min).X*stripW), num(height(s, Headroom(s, of(p))))
		switch {
		case i == 0:
			b.WriteString("M" + x + " " + y)
		case x == lastX && y == lastY:
			continue
		case x == lastX:
			b.WriteString("V" + y)
		case y == lastY:
			b.WriteString("H" + x)
		default:
			b.WriteString("L" + x + " " + y)
		}
		lastX, lastY = x, y
	}
	return b.String()
}

// grain is what tells a waste tank from a supply without colour: level lines
// through the area, as water is engraved on old charts.
func grain(s trip.Strip, axis Axis) []Node {
	var d strings.Builder
	for y := stripH - 8; y > stripTop; y -= 10 {
		under := false // the pen is down
		for i, p := range s.Points {
			x := axis.AtMin(p.Min).X * stripW
			h := height(s, Headroom(s, p.L))
			if i > 0 {
				q := s.Points[i-1]
				x0, h0 := axis.AtMin(q.Min).X*stripW, height(s, Headroom(s, q.L))
				if (h0 < y) != (h < y) {
					x = x0 + (x-x0)*(y-h0)/(h-h0)
				}
			}
			switch {
			case h < y && !under:
				d.WriteString("M" + num(x) + " " + num(y))
				under = true
			case h >= y && under:
				d.WriteString("H" + num(x))
				under = false
			}
		}
		if under {
			d.WriteString("H" + num(axis.AtMin(s.Points[len(s.Points)-1].Min).X*stripW))
		}
	}
	return []Node{El("path", "class", "grain", "d", d.String())}
}

// bands shade the days by turns and the nights between them.
func bands(axis Axis, days []trip.Day) []Node {
	var out []Node
	for i, d := range days {
		from, to := axis.AtMin(d.StartMin).X*stripW, axis.AtMin(d.EndMin).X*stripW
		class := "day"
		if i%2 == 1 {
			class = "day other"
		}
		out = append(out, El("rect", "class", class, "x", num(from), "y", "0", "width", num(to-from), "height", "100"))
		if i+1 < len(days) {
			if next := axis.AtMin(days[i+1].StartMin).X * stripW; next > to {
				out = append(out, El("rect", "class", "night", "x", num(to), "y", "0", "width", num(next-to), "height", "100"))
			}
		}
	}
	return out
}

func serves(c trip.Call, tank string) bool {
	for _, t := range c.Tasks {
		if t.Tank == tank {
			return true
		}
	}
	return false
}

// at places kids at a share of the width, in pixels from there.
func at(x float64, class string, kids ...Node) Node {
	return El("svg", "class", class, "x", percent(x), "overflow", "visible").With(kids...)
}

func notch(x float64) Node {
	return at(x, "notch", El("path", "d", "M-5 0H5L0 7Z"))
}

// low marks the lowest point; its number stands inside the picture.
func low(s trip.Strip, p trip.Level, x float64) Node {
	room := Headroom(s, p.L)
	y := percent(height(s, room) / stripH)
	dx, anchor := "7", "start"
	if x > 0.85 {
		dx, anchor = "-7", "end"
	}
	dy := "-5"
	if room > 0.7*s.Capacity { // no space above
		dy = "15"
	}
	return at(x, "low",
		El("circle", "cy", y, "r", "3.5"),
		El("text", "x", dx, "y", y, "dy", dy, "text-anchor", anchor).Say(Amount(room)+" "+s.Unit),
	)
}

// Amount writes an amount the way a gauge is read: whole numbers from ten,
// one digit below.
func Amount(v float64) string {
	if v > -9.95 && v < 9.95 {
		return num(v)
	}
	return strconv.FormatFloat(v, 'f', 0, 64)
}
