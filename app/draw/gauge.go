package draw

import "ullage/planner/trip"

// Gauge draws what a task changes: the headroom before, what is won, and the
// reserve, on a bar as long as the tank.
func Gauge(s trip.Strip, before, after float64) Node {
	share := func(level float64) float64 {
		if !(s.Capacity > 0) {
			return 0
		}
		return 60 * min(max(Headroom(s, level)/s.Capacity, 0), 1)
	}
	b, a := share(before), share(after)
	out := El("svg", "class", "gauge "+string(s.Kind), "viewBox", "0 0 60 12", "aria-hidden", "true", "focusable", "false").With(
		El("rect", "class", "body", "x", "0.5", "y", "1.5", "width", "59", "height", "9", "rx", "2"),
		El("rect", "class", "before", "x", "0.5", "y", "1.5", "width", num(b), "height", "9"),
		El("rect", "class", "won", "x", num(b+0.5), "y", "1.5", "width", num(max(a-b, 0)), "height", "9"),
	)
	if s.Reserve > 0 && s.Capacity > 0 {
		x := num(60 * min(s.Reserve/s.Capacity, 1))
		out = out.With(El("path", "class", "floor", "d", "M"+x+" 0V12"))
	}
	return out
}
