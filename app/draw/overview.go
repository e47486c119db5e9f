package draw

import (
	"math"
	"slices"
	"sort"
	"strings"

	"github.com/paulmach/orb"

	"ullage/planner/trip"
)

// A Backdrop is what is drawn under the route: coast, roads, water, towns.
type Backdrop struct {
	Lines []BackdropLine
	Towns []Town
	Land  []orb.LineString // rings to fill; none: all is land
}

// A BackdropLine is one line; its class goes to the style sheet: coast,
// motorway, trunk, primary, secondary, tertiary, ferry, river, water.
type BackdropLine struct {
	Class  string
	Points orb.LineString
}

// A Town is a name on the map; rank 1 is a city, 2 a town, 3 a village.
type Town struct {
	Name  string
	Point orb.Point
	Rank  int
}

// Ground draws land, water and roads around a route, w × h pixels; the route
// fills it but for a margin. A route of no points gives an empty picture.
func Ground(route orb.LineString, back Backdrop, w, h float64) Node {
	out := picture("overview ground", w, h)
	if len(route) == 0 {
		return out
	}
	p := fit(route.Bound(), w, h)
	if len(back.Land) > 0 {
		var d strings.Builder
		for _, ring := range back.Land {
			d.WriteString(p.path(ring) + "Z")
		}
		out = out.With(El("rect", "class", "sea", "width", num(w), "height", num(h)), El("path", "class", "land", "d", d.String()))
	}
	for _, class := range []string{"water", "river", "coast", "ferry", "tertiary", "secondary", "primary", "trunk", "motorway"} {
		if d := p.lines(back.Lines, class); d != "" {
			out = out.With(El("path", "class", "back "+class, "d", d))
		}
	}
	return out
}

// Stops draws the route, the candidates, the numbered stops and the names of
// towns, to lie over a [Ground] of the same route and size.
func Stops(route orb.LineString, it trip.Itinerary, towns []Town, w, h float64) Node {
	out := picture("overview", w, h)
	if len(route) == 0 {
		return out
	}
	p := fit(route.Bound(), w, h)
	if len(route) > 1 {
		d := p.path(route)
		out = out.With(El("path", "class", "casing", "d", d), El("path", "class", "route", "d", d))
	}
	for _, c := range it.Places {
		if !c.Chosen && c.Excluded == nil {
			x, y := p.at(c.Point)
			out = out.With(El("circle", "class", "candidate", "cx", num(x), "cy", num(y), "r", "2.5"))
		}
	}
	taken := []box{}
	for _, n := range Numbers(it.Days) {
		x, y := p.at(n.Call.Point)
		out = out.With(Disc(n, x, y))
		taken = append(taken, box{x - 10, y - 10, x + 10, y + 10})
	}
	return out.With(p.names(towns, taken, w, h)...)
}

func picture(class string, w, h float64) Node {
	return El("svg", "class", class, "viewBox", "0 0 "+num(w)+" "+num(h), "aria-hidden", "true", "focusable", "false")
}

// Project returns where a point lies in the pictures that [Ground] and
// [Stops] draw of the same route and size.
func Project(route orb.LineString, w, h float64, point orb.Point) (x, y float64) {
	if len(route) == 0 {
		return 0, 0
	}
	return fit(route.Bound(), w, h).at(point)
}

// A projection is equirectangular around its middle: shapes are true there,
// and a route of some hundred kilometres looks as on any map.
type projection struct{ lon, lat, sx, sy, dx, dy, w, h float64 }

func fit(b orb.Bound, w, h float64) projection {
	const margin = 0.09
	mid := b.Center()
	k := math.Cos(mid[1] * math.Pi / 180)
	across, up := (b.Max[0]-b.Min[0])*k, b.Max[1]-b.Min[1]
	s := math.Min(w*(1-2*margin)/math.Max(across, 1e-6), h*(1-2*margin)/math.Max(up, 1e-6))
	return projection{mid[0], mid[1], s * k, s, w / 2, h / 2, w, h}
}

func (p projection) at(q orb.Point) (x, y float64) {
	return p.dx + (q[0]-p.lon)*p.sx, p.dy - (q[1]-p.lat)*p.sy
}

// path draws a line, leaving out points less than a pixel from the last one.
func (p projection) path(ls orb.LineString) string {
	var b strings.Builder
	var lx, ly float64
	for i, q := range ls {
		x, y := p.at(q)
		if i > 0 && i < len(ls)-1 && math.Abs(x-lx) < 1 && math.Abs(y-ly) < 1 {
			continue
		}
		b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(x) + " " + num(y))
		lx, ly = x, y
	}
	return b.String()
}

// lines draws the lines of a class that reach into the picture.
func (p projection) lines(lines []BackdropLine, class string) string {
	var b strings.Builder
	for _, l := range lines {
		if l.Class != class || len(l.Points) < 2 {
			continue
		}
		bound := l.Points.Bound()
		x0, y1 := p.at(bound.Min)
		x1, y0 := p.at(bound.Max)
		if x1 < 0 || y1 < 0 || x0 > p.w || y0 > p.h {
			continue
		}
		b.WriteString(p.path(l.Points))
	}
	return b.String()
}

type box struct{ x0, y0, x1, y1 float64 }

func (a box) meets(b box) bool {
	return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

// names writes towns, the big ones first, where nothing else stands.
func (p projection) names(towns []Town, taken []box, w, h float64) []Node {
	towns = slices.Clone(towns)
	sort.SliceStable(towns, func(i, j int) bool {
		a, b := towns[i], towns[j]
		return a.Rank < b.Rank || a.Rank == b.Rank && a.Name < b.Name
	})
	var out []Node
	for _, t := range towns {
		x, y := p.at(t.Point)
		wide := 6.4*float64(len([]rune(t.Name))) + 6
		place := box{x + 4, y - 8, x + 4 + wide, y + 6}
		if x < 0 || y < 8 || place.x1 > w || y > h || slices.ContainsFunc(taken, place.meets) {
			continue
		}
		taken = append(taken, place)
		rank := []string{"city", "city", "town", "village"}[min(max(t.Rank, 0), 3)]
		out = append(out,
			El("circle", "class", "dot "+rank, "cx", num(x), "cy", num(y), "r", "1.8"),
			El("text", "class", "name "+rank, "x", num(x+6), "y", num(y+4)).Say(t.Name),
		)
		if len(out) >= 80 {
			break
		}
	}
	return out
}

// Here is the cursor's dot, to lie over an [Overview] of the same size.
func Here(x, y, w, h float64) Node {
	return picture("here", w, h).With(
		El("circle", "class", "halo", "cx", num(x), "cy", num(y), "r", "13"),
		El("circle", "class", "dot", "cx", num(x), "cy", num(y), "r", "6"),
	)
}
