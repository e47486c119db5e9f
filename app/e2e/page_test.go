//go:build !js

package e2e_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// ownOrigin: all that was loaded came from the page's own origin. What the
// Content-Security-Policy refused is among the browser's complaints.
const ownOrigin = `performance.getEntriesByType("resource").every(r => r.name.startsWith(location.origin) || r.name.startsWith("blob:") || r.name.startsWith("data:"))`

// TestDemo: the page opens with the demo trip planned, keeps to its own
// origin and policy, and starts and plans again with the server stopped.
func TestDemo(t *testing.T) {
	url, shut := serveUntil(t)
	p := openNew(t, 1400, 900)
	p.do(chromedp.Navigate(url))
	p.planned()
	if n := eval[int](p, `document.querySelectorAll("#strips svg").length`); n < 7 {
		t.Errorf("%d level strips, want one for each of the 7 tanks", n)
	}
	if n := eval[int](p, `document.querySelector("#itinerary").textContent.length`); n < 500 {
		t.Errorf("the itinerary has %d characters", n)
	}
	p.until("the map", `document.querySelector("#map canvas.maplibregl-canvas")`)
	if !eval[bool](p, ownOrigin) {
		t.Error("something was loaded from another origin")
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
	before := eval[string](p, `document.querySelector("#itinerary").textContent`)

	p.offlineReady()
	shut()
	p.do(chromedp.Reload())
	p.planned()
	if after := eval[string](p, `document.querySelector("#itinerary").textContent`); after != before {
		t.Errorf("planned without the server:\n%s\nwith it:\n%s", after, before)
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("without the server the browser complains: %q", bad)
	}
	p.shot("offline")
}

// TestFirstVisit: the page does not start again by itself when its service
// worker takes over, whatever a person did by then.
func TestFirstVisit(t *testing.T) {
	p := openNew(t, 1400, 900)
	p.beforeScripts(noWebGL)
	p.beforeScripts(leaveItAtThat)
	p.do(chromedp.Navigate(door(t)))
	eval[bool](p, `window.firstLoad = true`)
	p.planned()
	p.offlineReady()
	if !eval[bool](p, `window.firstLoad === true`) {
		t.Error("the page was loaded anew during the first visit")
	}
}

// TestWithoutWebGL: without WebGL2 the page still plans, and draws an overview.
func TestWithoutWebGL(t *testing.T) {
	p := openWithoutWebGL(t, 1400, 900)
	p.do(chromedp.Navigate(serve(t)))
	if eval[bool](p, `Boolean(document.createElement("canvas").getContext("webgl2"))`) {
		t.Fatal("this browser has WebGL2 all the same: the test shows nothing")
	}
	p.planned()
	if eval[bool](p, `Boolean(document.querySelector("#map canvas.maplibregl-canvas"))`) {
		t.Error("there is a map canvas")
	}
	if n := eval[int](p, `document.querySelectorAll("#map svg path, #map svg polyline").length`); n == 0 {
		t.Error("no overview is drawn")
	}
	p.shot("without-webgl")
}

// TestNoSiteData: where the browser keeps nothing for the site, the page still
// starts and plans.
func TestNoSiteData(t *testing.T) {
	p := open(t, 1400, 900)
	forbid := `for (const n of ["localStorage", "indexedDB"]) Object.defineProperty(window, n, {configurable: true, get() { throw new DOMException("no", "SecurityError"); }})`
	p.beforeScripts(forbid)
	p.begin(visit{drawn: true, brief: true})
	p.until("a word on it", notice+`.includes("keeps nothing for this page")`)
	p.shot("forgets")
}

// The line follows the valley roads of Andorra roughly, from Sant Julià de
// Lòria by Andorra la Vella, Encamp and Canillo to the Pas de la Casa; read
// off OpenStreetMap by hand.
var andorra = [][2]float64{
	{1.4914, 42.4637}, {1.4995, 42.4836}, {1.5147, 42.5018}, {1.5338, 42.5087}, {1.5480, 42.5155}, {1.5806, 42.5361},
	{1.5900, 42.5530}, {1.5993, 42.5676}, {1.6320, 42.5760}, {1.6640, 42.5790}, {1.6950, 42.5600}, {1.7333, 42.5424},
}

func gpx(t *testing.T) string {
	var b strings.Builder
	b.WriteString(`<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Through Andorra</name><trkseg>`)
	for _, p := range andorra {
		fmt.Fprintf(&b, `<trkpt lat="%g" lon="%g"/>`, p[1], p[0])
	}
	b.WriteString(`</trkseg></trk></gpx>`)
	f := filepath.Join(t.TempDir(), "andorra.gpx")
	if err := os.WriteFile(f, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	return f
}

// TestFiles: an extract and a route chosen by button are planned, and are
// there again after a reload.
func TestFiles(t *testing.T) {
	extract := shared(t, "data/osm/andorra-2025-01-19.osm.pbf")
	p := open(t, 1400, 900)
	v := atHome()
	v.drawn = false
	p.begin(v)
	p.do(chromedp.SetUploadFiles("#file", []string{extract, gpx(t)}))
	p.until("the new route", `document.body.textContent.includes("Through Andorra")`)
	p.until("an answer", settled)
	if s := p.status(); !strings.HasPrefix(s, "planned") {
		t.Fatal(s)
	}
	p.shot("andorra")
	before := eval[string](p, `document.querySelector("#itinerary").textContent`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}

	p.do(chromedp.Reload())
	p.until("the kept trip", `document.body.textContent.includes("Through Andorra")`)
	p.until("an answer", settled)
	if after := eval[string](p, `document.querySelector("#itinerary").textContent`); after != before {
		t.Errorf("after a reload:\n%s\nbefore:\n%s", after, before)
	}
}

// TestUnreadable: a file that is nothing of ours gives one clear line.
func TestUnreadable(t *testing.T) {
	p := home(t, 1400, 900)
	f := filepath.Join(t.TempDir(), "letter.txt")
	if err := os.WriteFile(f, []byte("Dear all,\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.SetUploadFiles("#file", []string{f}))
	p.until("an error", `document.querySelector("#status").dataset.state === "error"`)
	if s := p.status(); !strings.Contains(s, "letter.txt") || !strings.Contains(s, "GPX") {
		t.Errorf("status %q names neither the file nor what would do", s)
	}
}
