//go:build !js

package e2e_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/paulmach/orb"

	"ullage/data/demo"
	"ullage/data/osm/osmtest"
	"ullage/geo"
	"ullage/geo/road"
	"ullage/geo/road/net"
	"ullage/planner/trip"
)

// passage returns the ends of a passage of 2.7 m on the island.
func passage(t *testing.T) (a, b orb.Point) {
	return osmtest.Passage(t, osmtest.Network(t, osmtest.Demo))
}

// tripThere is the demo trip with a vehicle of 3.05 m and a route from a to b:
// the map then shows the two.
func tripThere(a, b orb.Point) *trip.Trip {
	tr := demo.Trip()
	tr.Name, tr.Vehicle.HeightM, tr.Route = "To the passage", 3.05, orb.LineString{a, b}
	return &tr
}

// at returns where a position is on the screen.
func (p *page) at(q orb.Point) (x, y float64) {
	p.t.Helper()
	xy := eval[[]float64](p, fmt.Sprintf(`((r, at) => [r.x + at.x, r.y + at.y])(document.querySelector("#map-canvas").getBoundingClientRect(), liveMap.project([%v, %v]))`, q[0], q[1]))
	return xy[0], xy[1]
}

// tap clicks a position on the map.
func (p *page) tap(q orb.Point) {
	p.t.Helper()
	x, y := p.at(q)
	p.do(chromedp.MouseClickXY(x, y))
}

// still waits until the map shows all that it is to show, as large as its
// place, and has not moved for a while: nothing is under way any more.
func (p *page) still() {
	p.t.Helper()
	p.until("the map still", `(m => {
		const box = m.getContainer(), pixels = m.getCanvas(), now = performance.now();
		const view = [m.getCenter(), m.getZoom(), box.clientWidth, box.clientHeight].join();
		if (globalThis.lastView !== view) { globalThis.lastView = view; globalThis.lastMove = now; }
		return m.loaded() && !m.isMoving() && pixels.clientWidth === box.clientWidth && pixels.clientHeight === box.clientHeight && now - lastMove > 300;
	})(liveMap)`)
}

// zoom presses the button for a closer scale, or a wider one, so often.
func (p *page) zoom(steps int) {
	p.t.Helper()
	p.still()
	button, one := 0, 1
	if steps < 0 {
		button, one = 1, -1
	}
	for ; steps != 0; steps -= one {
		want := eval[float64](p, `liveMap.getZoom()`) + float64(one)
		eval[bool](p, fmt.Sprintf(`(document.querySelectorAll(".zoom button")[%d].click(), true)`, button))
		p.until("another scale", fmt.Sprintf(`Math.abs(liveMap.getZoom() - %v) < 1e-6`, want))
	}
	p.still()
}

const said = `(document.querySelector(".draftbar .said")?.innerText || "")`

// press presses a button of the page by its words.
func (p *page) press(words string) {
	p.t.Helper()
	p.until("the button "+words, fmt.Sprintf(`[...document.querySelectorAll("button")].some(b => b.textContent === %q && !b.disabled)`, words))
	eval[bool](p, fmt.Sprintf(`([...document.querySelectorAll("button")].find(b => b.textContent === %q).click(), true)`, words))
}

// drawing opens the page on the trip to the passage and begins to draw.
func drawing(t *testing.T, p *page, a, b orb.Point) {
	t.Helper()
	p.begin(visit{trip: tripThere(a, b), brief: true})
	p.press("Draw route")
	p.until("the controls", `document.querySelector(".draftbar")`)
	p.still()
}

// tooLow finds the reason why the passage is closed: its height and the vehicle's.
const tooLow = `/2[.]70?\sm\s.*3[.]05\sm/`

// TestDrawRoundAPassage: two clicks on either side of a passage of 2.7 m give
// a route that goes round it with a vehicle of 3.05 m, and the page says why,
// while drawing and of the trip. Steps are taken back and made again.
func TestDrawRoundAPassage(t *testing.T) {
	a, b := passage(t)
	for _, size := range []struct {
		name          string
		width, height int
		dark          bool
	}{{"draw-dark", 1400, 900, true}, {"draw-phone", 390, 844, false}} {
		t.Run(size.name, func(t *testing.T) {
			p := open(t, size.width, size.height)
			if size.dark {
				call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
					Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}})
			}
			drawing(t, p, a, b)
			p.zoom(2) // at the closest scale for a route, 14, the two are not apart
			p.tap(a)
			p.until("a point", said+`.startsWith("1 point")`)
			p.tap(b)
			p.until("the way round", tooLow+`.test(`+said+`)`)
			words := eval[string](p, said)
			var km float64
			if _, err := fmt.Sscanf(strings.ReplaceAll(words, "\u202f", " "), "2 points, %f", &km); err != nil || km < 0.2 {
				t.Errorf("%q: %v km, want a way round of some hundred metres", words, km)
			}
			if strings.Contains(words, "no road is known") {
				t.Errorf("%q, though there are roads", words)
			}
			p.still() // for the picture
			p.shot(size.name)
			if !eval[bool](p, `(b => { const r = b.getBoundingClientRect(); return document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2) === b; })(document.querySelector(".draftbar .main"))`) {
				t.Error("the button to use the route is out of sight")
			}
			if top := eval[float64](p, `document.querySelector(".zoom").getBoundingClientRect().top`); top < 0 {
				t.Errorf("the map begins %v px above the screen", -top)
			}
			p.axe()
			p.press("Undo")
			p.until("one point", said+`.startsWith("1 point")`)
			p.press("Redo")
			p.until("two points", said+`.startsWith("2 points")`)
			p.tap(a) // a tap on a point chooses it
			p.press("Remove point 1")
			p.until("one point", said+`.startsWith("1 point")`)
			p.press("Undo")
			p.press("Use this route")
			p.until("the trip says why", `!document.querySelector(".draftbar") && `+tooLow+`.test(document.querySelector(".limits").textContent)`)
			p.until("an answer", settled)
			if bad := p.complaints(); len(bad) > 0 {
				t.Errorf("the browser complains: %q", bad)
			}
		})
	}
}

// TestDragAndInsert: a point is dragged, and another pulled out of the line;
// what lies in the sea stays as drawn and is said to be so.
func TestDragAndInsert(t *testing.T) {
	a, b := passage(t)
	p := open(t, 1400, 900)
	drawing(t, p, a, b)
	p.zoom(2) // at the closest scale for a route, 14, the two are not apart
	p.tap(a)
	p.until("a point", said+`.startsWith("1 point")`)
	far := orb.Point{b[0] + 3*(b[0]-a[0]), b[1] + 3*(b[1]-a[1])}
	p.tap(far)
	p.until("two points by road", said+`.startsWith("2 points") && !document.querySelector(".draftbar .off")`)
	before := eval[string](p, said)
	x, y := p.at(a)
	p.drag(x, y, x-120, y+80)
	p.until("another way", said+`.startsWith("2 points") && `+said+fmt.Sprintf(` !== %q`, before))
	p.press("Undo")
	p.until("the way of before", said+fmt.Sprintf(` === %q`, before))
	p.zoom(-9) // out to the sea
	box := eval[[]float64](p, `(r => [r.x, r.y, r.width, r.height])(document.querySelector("#map-canvas").getBoundingClientRect())`)
	p.do(chromedp.MouseClickXY(box[0]+20, box[1]+box[3]/2))
	p.until("the word for it", said+`.includes("no road is known there")`)
	p.shot("draw-off")
	// With the pointer nowhere, the middle of the map can be added.
	p.press("Add the middle of the map")
	p.until("four points", said+`.startsWith("4 points")`)
	p.press("Cancel")
	p.until("no drawing", `!document.querySelector(".draftbar")`)
}

// TestTrackOnRoads: a recorded track is put on roads and taken off again.
func TestTrackOnRoads(t *testing.T) {
	p := open(t, 1400, 900)
	p.begin(visit{drawn: true, brief: true})
	var track orb.LineString
	for i, q := range demo.Trip().Route[:200] {
		track = append(track, orb.Point{q[0], q[1] + 5e-5*math.Sin(float64(i))}) // 5 m beside the road
	}
	f := gpxFile(t, "Recorded", track)
	p.do(chromedp.SetUploadFiles("#file", []string{f}))
	p.until("the track", `document.body.textContent.includes("Recorded")`)
	p.until("an answer", settled)
	p.press("Put route on roads")
	p.until("the way back", `document.querySelector("#track")?.textContent === "Route as in its file"`)
	p.until("an answer", settled)
	p.press("Route as in its file")
	p.until("the way there", `document.querySelector("#track")?.textContent === "Put route on roads"`)
	p.until("an answer", settled)
	if s := p.status(); !strings.HasPrefix(s, "planned") {
		t.Error(s)
	}
}

// TestLedRoundAPassage: a file's route through a passage of 2.7 m is warned of
// with a vehicle of 3.05 m, led round it at a press, and the page says so, after
// a reload too. The route as in its file comes back.
func TestLedRoundAPassage(t *testing.T) {
	a, b := passage(t)
	far := func(a, b orb.Point) orb.Point { return orb.Point{a[0] + 9*(a[0]-b[0]), a[1] + 9*(a[1]-b[1])} }
	p := open(t, 1400, 900)
	p.begin(visit{trip: tripThere(a, b), drawn: true, brief: true})
	network := osmtest.Network(t, osmtest.Demo)
	car, err := road.NewRouter(context.Background(), network, net.Vehicle{}, road.Shortest)
	if err != nil {
		t.Fatal(err)
	}
	path, err := car.Query().Route(car.Snap(far(a, b), 3000), car.Snap(a, 100), car.Snap(b, 100), car.Snap(far(b, a), 3000))
	if err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.SetUploadFiles("#file", []string{gpxFile(t, "Through", network.Line(path.Steps))}))
	p.until("the track", `document.body.textContent.includes("Through")`)
	p.until("an answer", settled)
	p.press("Find a way round")
	round := `document.querySelector(".limits").textContent.includes("goes round") && ` + tooLow + `.test(document.querySelector(".limits").textContent) && !document.querySelector("#offer")`
	p.until("the way round", round)
	p.until("an answer", settled)
	p.shot("led-round")
	p.axe()
	p.until("all kept", stored("trip", `"round"`)+" && "+stored("origin", `"matched":true`))
	p.do(chromedp.Reload())
	p.until("the trip again", `document.body.textContent.includes("Through")`)
	p.until("an answer", settled)
	p.until("the way round, again", round)
	p.press("Route as in its file")
	p.until("the offer again", `document.querySelector("#offer")`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

// gpxFile writes a track file.
func gpxFile(t *testing.T, name string, track orb.LineString) string {
	t.Helper()
	var b strings.Builder
	fmt.Fprintf(&b, `<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>%s</name><trkseg>`, name)
	for _, q := range track {
		fmt.Fprintf(&b, `<trkpt lat="%.6f" lon="%.6f"/>`, q[1], q[0])
	}
	b.WriteString(`</trkseg></trk></gpx>`)
	f := filepath.Join(t.TempDir(), strings.ToLower(name)+".gpx")
	if err := os.WriteFile(f, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	return f
}

// TestFollowStep measures how long a step of a drag takes to the eye: from the
// pointer's event to the end of the frame that shows the line along the roads.
// Everything is painted, without a graphics card.
func TestFollowStep(t *testing.T) {
	if !*measured {
		t.Skip("a measurement: run with -measure")
	}
	a, b := passage(t)
	p := open(t, 1400, 900)
	drawing(t, p, a, b)
	p.zoom(2) // at the closest scale for a route, 14, the two are not apart
	p.tap(a)
	p.until("a point", said+`.startsWith("1 point")`)
	p.tap(orb.Point{b[0] + 3*(b[0]-a[0]), b[1] + 3*(b[1]-a[1])})
	p.until("two points", said+`.startsWith("2 points")`)
	p.still()
	eval[bool](p, `(() => {
		window.steps = []; window.maps = 0; let moved = 0;
		addEventListener("mousemove", () => { moved = moved || performance.now() }, true);
		new MutationObserver(() => {
			if (!moved) return;
			const from = moved, c = new MessageChannel();
			moved = 0;
			c.port1.onmessage = () => steps.push(performance.now() - from);
			requestAnimationFrame(() => c.port2.postMessage(0));
		}).observe(document.querySelector("#map-canvas"), {subtree: true, attributes: true, attributeFilter: ["d"]});
		for (const f of ["drawElements", "drawArrays"]) { const draw = WebGL2RenderingContext.prototype[f]; WebGL2RenderingContext.prototype[f] = function() { maps++; return draw.apply(this, arguments) } }
		return true;
	})()`)
	x, y := p.at(a)
	p.drag(x, y, x-120, y+80)
	p.until("the sketch gone", `![...document.querySelectorAll(".sketch path")].some(e => e.getAttribute("d"))`)
	type result struct {
		Steps []float64
		Maps  int
	}
	got := eval[result](p, `({steps: steps.sort((a, b) => a - b), maps})`)
	n := len(got.Steps)
	if n < 10 {
		t.Fatalf("%d steps were shown", n)
	}
	load, _ := os.ReadFile("/proc/loadavg")
	t.Logf("%d steps, median %.1f ms, 90 %% %.1f ms, longest %.1f ms; %d calls to draw the map; load %s", n, got.Steps[n/2], got.Steps[n*9/10], got.Steps[n-1], got.Maps, load)
}

// drag moves the pointer with its button held, in steps that a hand makes.
func (p *page) drag(fromX, fromY, toX, toY float64) {
	p.t.Helper()
	held := func(e *input.DispatchMouseEventParams) {
		e.Button, e.Buttons, e.ClickCount = input.MouseButtonLeft, 1, 1
	}
	p.do(chromedp.MouseEvent(chromedp.MouseMoved, fromX, fromY),
		chromedp.MouseEvent(chromedp.MousePressed, fromX, fromY, held))
	const steps = 24
	for i := 1; i <= steps; i++ {
		k := float64(i) / steps
		p.do(chromedp.MouseEvent(chromedp.MouseMoved, fromX+k*(toX-fromX), fromY+k*(toY-fromY), held))
		eval[bool](p, `new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
	}
	p.shot("draw-drag")
	p.do(chromedp.MouseEvent(chromedp.MouseReleased, toX, toY, held))
}

// axe reports what axe-core finds wrong with the page as it is now.
func (p *page) axe() {
	p.t.Helper()
	text, err := os.ReadFile(os.Getenv("ULLAGE_AXE"))
	if err != nil {
		p.t.Logf("accessibility rules are not checked: ULLAGE_AXE: %v", err)
		return
	}
	eval[chromedp.Void](p, string(text)+";undefined")
	for _, v := range eval[[]string](p, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"]})
		.then(r => r.violations.map(v => v.id + ": " + v.help + ": " + v.nodes.map(n => n.html.slice(0, 160)).join(" | ")))`) {
		p.t.Error(v)
	}
}

// TestOtherWays: two clicks far apart, other ways of what lies between them,
// one taken with its button and one on the map; each sets a point.
func TestOtherWays(t *testing.T) {
	network := osmtest.Network(t, osmtest.Demo)
	r, err := road.NewRouter(context.Background(), network, net.Vehicle{}, road.Fastest)
	if err != nil {
		t.Fatal(err)
	}
	q := r.Query()
	a, b := otherWays(t, network, q)
	for _, size := range []struct {
		name          string
		width, height int
	}{{"ways-phone", 390, 844}} {
		t.Run(size.name, func(t *testing.T) {
			p := open(t, size.width, size.height)
			fitted(t, p, a, b)
			p.tap(a)
			p.until("a point", said+`.startsWith("1 point")`)
			p.tap(b)
			p.until("two points", said+`.startsWith("2 points")`)
			p.press("Other ways from point 1 to 2")
			p.until("some ways", `document.querySelectorAll(".draftbar .ways button").length > 0`)
			p.still() // for the picture
			p.shot(size.name)
			p.axe()
			words := eval[string](p, `document.querySelector(".draftbar .ways button").innerText`)
			if !strings.HasPrefix(words, "A") || !strings.Contains(words, "min") {
				t.Errorf("the first way is offered as %q", words)
			}
			eval[bool](p, `(document.querySelector(".draftbar .ways button").click(), true)`)
			p.until("a point on it", said+`.startsWith("3 points") && !document.querySelector(".draftbar .ways")`)
			p.press("Undo")
			p.until("two points", said+`.startsWith("2 points")`)
			p.press("Other ways from point 1 to 2")
			p.until("some ways", `document.querySelectorAll(".draftbar .ways button").length > 0`)
			p.still()
			paths, err := q.Alternatives(r.Snap(a, 500), r.Snap(b, 500), 2)
			if err != nil || len(paths) < 2 {
				t.Fatal(len(paths), err)
			}
			p.tap(apart(network, paths))
			p.until("a point on it", said+`.startsWith("3 points") && !document.querySelector(".draftbar .ways")`)
			p.press("Use this route")
			p.until("an answer", `!document.querySelector(".draftbar") && `+settled)
			if bad := p.complaints(); len(bad) > 0 {
				t.Errorf("the browser complains: %q", bad)
			}
		})
	}
}

// otherWays returns two points that have another way between them which goes well apart.
func otherWays(t *testing.T, network *net.Network, q *road.Query) (a, b orb.Point) {
	t.Helper()
	for e := uint32(0); e < uint32(network.Edges()); e += 7 {
		for f := e + 50; f < uint32(network.Edges()); f += 211 {
			from, to := road.Spot{OK: true, Edge: e}, road.Spot{OK: true, Edge: f}
			paths, err := q.Alternatives(from, to, 2)
			if a, b = from.Point(network), to.Point(network); err != nil || len(paths) < 2 || paths[0].LengthM < 20_000 {
				continue
			}
			at := apart(network, paths)
			if d := min(geo.DistanceM(at, a), geo.DistanceM(at, b)); d > 8000 && off(network.Line(paths[0].Steps), at) > 3000 {
				return a, b
			}
		}
	}
	t.Fatal("no two points of the island have two ways")
	return a, b
}

// apart is the point of the second way that is farthest from the first.
func apart(network *net.Network, paths []road.Path) (at orb.Point) {
	best := network.Line(paths[0].Steps)
	most := -1.0
	for _, p := range network.Line(paths[1].Steps) {
		if d := off(best, p); d > most {
			at, most = p, d
		}
	}
	return at
}

// off is how far a point is from the nearest corner of a line.
func off(line orb.LineString, p orb.Point) float64 {
	least := math.Inf(1)
	for _, q := range line {
		least = min(least, geo.DistanceM(p, q))
	}
	return least
}

// fitted opens the page on a trip from a to b and begins to draw on a map that shows both, and more.
func fitted(t *testing.T, p *page, a, b orb.Point) {
	t.Helper()
	// The controls lie over the map's edges, most of them in the south: the trip is longer.
	box := orb.MultiPoint{a, b}.Bound()
	dx, dy := box.Max[0]-box.Min[0], box.Max[1]-box.Min[1]
	a, b = orb.Point{box.Min[0] - 0.3*dx, box.Min[1] - 1.6*dy}, orb.Point{box.Max[0] + 0.3*dx, box.Max[1] + 0.5*dy}
	drawing(t, p, a, b)
	if eval[float64](p, `innerWidth`) < 1000 {
		eval[bool](p, `(document.querySelector("#map").scrollIntoView({block: "center"}), true)`)
	}
	p.press("Whole route")
	p.still()
}
