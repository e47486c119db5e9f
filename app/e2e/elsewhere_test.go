//go:build !js

package e2e_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestDrawElsewhere is how a first trip of one's own begins: map data of
// another country are opened while the demo is there, and a route is drawn in
// them. The page says that the route is elsewhere and shows the map data; what
// is drawn by half is there after a reload, on the road.
func TestDrawElsewhere(t *testing.T) {
	extract := shared(t, "data/osm/andorra-2025-01-19.osm.pbf")
	p := open(t, 1400, 900)
	v := atHome()
	v.drawn = false
	p.begin(v)
	p.until("the map", `document.querySelector("#map canvas.maplibregl-canvas")`)
	p.do(chromedp.SetUploadFiles("#file", []string{extract}))
	p.until("words about it", `document.querySelector("#elsewhere")`)
	p.until("an answer", settled)
	if text := eval[string](p, `document.querySelector("#refusal").innerText`); !strings.Contains(text, "of somewhere else") || strings.Contains(text, "Diesel") {
		t.Errorf("the refusal says %q, want the map data and no tank", text)
	}
	p.still()
	p.shot("elsewhere")

	p.press("Draw a route there")
	p.until("the controls", `document.querySelector(".draftbar")`)
	p.still()
	at := eval[[]float64](p, `(r => [r.x, r.y, r.width, r.height])(document.querySelector("#map-canvas").getBoundingClientRect())`)
	for i, share := range [][2]float64{{0.3, 0.6}, {0.75, 0.3}} {
		p.do(chromedp.MouseClickXY(at[0]+share[0]*at[2], at[1]+share[1]*at[3]))
		p.until("the point", fmt.Sprintf(said+`.startsWith("%d point")`, i+1))
	}
	const onRoads = `/^2 points/.test(document.querySelector(".draftbar .said")?.innerText) && !/Dashed/.test(document.querySelector(".draftbar .said").innerText)`
	p.until("a way by road", onRoads)
	drawn := eval[string](p, said)

	p.do(chromedp.Reload())
	p.until("the route by halves", onRoads)
	if again := eval[string](p, said); again != drawn {
		t.Errorf("after a reload %q, before %q", again, drawn)
	}
	p.still()
	p.shot("elsewhere-again")
	p.press("Use this route")
	p.until("the trip there", `!document.querySelector(".draftbar") && !document.querySelector("#elsewhere")`)
	p.until("an answer", settled)
	if name := eval[string](p, `document.querySelector("#trip-title").textContent`); !strings.Contains(name, " to ") {
		t.Errorf("the trip is called %q, want it after its towns", name)
	}
	p.do(chromedp.Reload())
	p.until("an answer", settled)
	if eval[bool](p, `Boolean(document.querySelector(".draftbar"))`) {
		t.Error("a route that was used is being drawn again")
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}
