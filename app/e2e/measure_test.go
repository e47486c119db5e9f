//go:build !js

package e2e_test

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// beforeScripts runs source in every document before its own scripts.
func (p *page) beforeScripts(source string) {
	p.t.Helper()
	call(p, cdpage.AddScriptToEvaluateOnNewDocument, cdpage.AddScriptToEvaluateOnNewDocumentParams{Source: source})
}

func call[P, R any](p *page, c cdp.Command[P, R], params P) R {
	p.t.Helper()
	r, err := chromedp.Run(p.ctx, chromedp.Action[R](func(ctx context.Context, t *chromedp.Target) (R, error) {
		return cdp.Call(ctx, t, c, params)
	}))
	if err != nil {
		p.t.Fatal(err)
	}
	return r
}

// probe keeps the longest time between two frames, by the state that the page
// was in at the end of it.
const probe = `new Promise(done => {
	window.gap = {max: 0, by: {}, frames: 0, last: performance.now(), on: true};
	const step = now => {
		const g = window.gap;
		if (g.frames > 0) {
			const state = document.querySelector("#status").dataset.state;
			g.max = Math.max(g.max, now - g.last);
			g.by[state] = Math.max(g.by[state] || 0, Math.round(now - g.last));
		}
		g.last = now; g.frames++;
		if (g.on) requestAnimationFrame(step);
	};
	requestAnimationFrame(now => { window.gap.last = now; requestAnimationFrame(step); done(true); });
})`

// TestMeasure reports figures and asserts none: frame gaps, cold and kept
// starts. go test ./app/e2e -run Measure -v -measure
func TestMeasure(t *testing.T) {
	if !*measured {
		t.Skip("a measurement: run with -measure")
	}
	url := serve(t)
	p := openAlone(t, 1400, 900)
	begin := time.Now()
	p.do(chromedp.Navigate(url))
	p.until("the program", `!document.querySelector("#app-wasm-loader")`)
	t.Logf("cold start: program runs after %v", time.Since(begin).Round(time.Millisecond))
	p.planned()
	t.Logf("cold start: planned after %v", time.Since(begin).Round(time.Millisecond))
	p.offlineReady()
	for range 3 {
		begin = time.Now()
		p.do(chromedp.Reload())
		p.until("the program", `!document.querySelector("#app-wasm-loader")`)
		ran := time.Since(begin)
		p.planned()
		t.Logf("kept start: program runs after %v, planned after %v", ran.Round(time.Millisecond), time.Since(begin).Round(time.Millisecond))
	}
	p.still()

	p.do(chromedp.Click("#change"))
	p.until("the form", `document.querySelector("#f-adults")`)
	eval[bool](p, probe)
	p.until("a second of frames", `gap.frames > 60`)
	idle := eval[float64](p, `window.gap.max`)
	eval[bool](p, `(() => {
		window.gap.max = 0; window.gap.by = {};
		const f = document.querySelector("#f-adults");
		f.value = "3";
		f.dispatchEvent(new Event("input", {bubbles: true}));
		return true;
	})()`)
	p.until("planning", `document.querySelector("#status").dataset.state === "planning"`)
	p.until("an answer", `["planned", "refused", "error"].includes(document.querySelector("#status").dataset.state)`)
	eval[bool](p, `(gap.until = gap.frames + 60, true)`)
	p.until("the answer drawn", `gap.frames > gap.until`)
	load, _ := os.ReadFile("/proc/loadavg")
	t.Logf("longest frame gap: idle %.0f ms; from the change to the plan drawn, in ms by state: %s, %d frames; %s; load %s", idle,
		eval[string](p, `JSON.stringify(window.gap.by)`), eval[int](p, `window.gap.frames`), p.status(), load)
}

// TestAccessible runs axe-core (W3C WCAG 2.1 A and AA and its best practices)
// where ULLAGE_AXE names its axe.min.js.
func TestAccessible(t *testing.T) {
	path := os.Getenv("ULLAGE_AXE")
	if path == "" {
		if os.Getenv("ULLAGE_REQUIRE_BROWSER") == "1" {
			t.Fatal("ULLAGE_REQUIRE_BROWSER=1, but ULLAGE_AXE does not name axe.min.js")
		}
		t.Skip("ULLAGE_AXE does not name axe.min.js (npm package axe-core): accessibility rules are not checked")
	}
	axe, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	p := open(t, 1400, 900)
	p.begin(visit{})
	p.planned()
	p.until("the map", `document.querySelector("#map canvas.maplibregl-canvas")`)
	p.until("other plans", `document.querySelectorAll("#others details").length === 2`)
	looks := []struct {
		name          string
		width, height int64
		scheme        string
	}{{"wide", 1400, 900, "light"}, {"phone", 390, 844, "light"}, {"dark", 1400, 900, "dark"}}
	look := func(i int) {
		p.do(chromedp.EmulateViewport(looks[i].width, looks[i].height))
		call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: looks[i].scheme}}})
		p.still()
	}
	for i := range looks {
		look(i)
		p.shot(looks[i].name)
	}
	eval[bool](p, `(["#change", "#onroad"].forEach(id => document.querySelector(id).click()), document.querySelectorAll("#checklists details, #counted details").forEach(d => d.open = true), true)`)
	p.until("both forms", `document.querySelector("#f-inside") && document.querySelector("#road-go")`)
	eval[chromedp.Void](p, string(axe)+";undefined")
	for i := range looks {
		look(i)
		found := eval[[]string](p, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"]})
			.then(r => r.violations.map(v => v.id + ": " + v.help + ": " + v.nodes.map(n => n.html.slice(0, 160)).join(" | ")))`)
		for _, v := range found {
			t.Errorf("%s: %s", looks[i].name, v)
		}
	}
}

// TestPrint: on paper the days are there and the controls are not.
func TestPrint(t *testing.T) {
	p := home(t, 1000, 1400)
	call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	p.shot("print")
	text := eval[string](p, `document.querySelector("#itinerary").innerText`)
	if !strings.Contains(text, "1") || len(text) < 500 {
		t.Errorf("on paper the itinerary has %d characters", len(text))
	}
	if n := eval[int](p, `[...document.querySelectorAll("button")].filter(b => b.offsetParent).length`); n > 0 {
		t.Errorf("%d buttons would be printed", n)
	}
}
