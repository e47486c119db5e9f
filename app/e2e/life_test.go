//go:build !js

package e2e_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

const itinerary = `document.querySelector("#itinerary").textContent`

// replanned waits for the plan after a change.
func (p *page) replanned() {
	p.t.Helper()
	p.until("a new plan begun", `document.querySelector("#status").dataset.state === "planning"`)
	p.planned()
}

// winter moves the trip to January, with gas enough for it.
func (p *page) winter() {
	p.t.Helper()
	p.edit("f-level-lpg", "20")
	p.replanned()
	p.edit("f-start", "2028-01-14")
	p.replanned()
}

// TestComfort: who wants it cooler in January needs less gas.
func TestComfort(t *testing.T) {
	p := home(t, 1400, 900)
	p.winter()
	warm, gas := eval[string](p, itinerary), eval[string](p, lpgLine)
	p.edit("f-inside", "12")
	p.replanned()
	if cool := eval[string](p, itinerary); cool == warm {
		t.Errorf("12 °C inside gives the plan of 20 °C:\n%s", cool)
	}
	if now := eval[string](p, lpgLine); now == gas || !strings.Contains(now, "we plan for") {
		t.Errorf("counted with at 20 °C: %q, at 12 °C: %q", gas, now)
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

const lpgLine = `[...document.querySelectorAll("#counted li")].map(l => l.textContent).find(s => s.startsWith("LPG"))`

// TestOnTheRoad: without the server, two gauges and a closed place give a plan
// from here, with what is behind and what was learnt; it can be taken back.
func TestOnTheRoad(t *testing.T) {
	url, shut := serveUntil(t)
	p := open(t, 1400, 900)
	p.begin(visit{url: url, drawn: true, brief: true})
	p.until("roads", `document.querySelector("#roads")?.dataset.state === "ready"`)
	p.planned()
	p.offlineReady()
	shut()
	before := eval[string](p, itinerary)
	eval[bool](p, `(document.querySelector("#onroad").click(), true)`)
	p.until("the panel", `document.querySelector("#road-go")`)
	p.put("f-road-km", "240")
	p.put("f-road-time", eval[string](p, `document.querySelector("#f-road-time").value.replace(/-11T.*/, "-12T10:10")`))
	p.put("f-road-kind-diesel", "quarters")
	p.put("f-road-value-diesel", "2")
	p.put("f-road-kind-grey", "percent")
	p.put("f-road-value-grey", "20")
	closed := eval[string](p, `(b => (b.click(), b.closest(".field").querySelector("label").textContent))(document.querySelectorAll("[name^='road:closed:']")[1])`)
	place, _, _ := strings.Cut(closed, " · ")
	p.shot("road")
	eval[bool](p, `(document.querySelector("#road-go").click(), true)`)
	p.until("the rest of the trip", fmt.Sprintf(`document.querySelector("#status").dataset.state === "planned" && document.querySelector("#behind") && %s.includes("Left out: " + %q)`, itinerary, place))
	if stops := eval[string](p, stopNames); strings.Contains(stops, place) {
		t.Errorf("%s is closed and still among %s", place, stops)
	}
	if news := eval[string](p, `document.querySelector(".news").textContent`); !strings.Contains(news, "Diesel: probably") || !strings.Contains(news, "Grey water: probably") {
		t.Errorf("the gauges taught %q", news)
	}
	if behind := eval[string](p, `document.querySelector("#behind").textContent`); !strings.Contains(behind, "✓") || !strings.Contains(behind, "night") {
		t.Errorf("behind is %q", behind)
	}
	p.shot("road-after")
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}

	eval[bool](p, `(document.querySelector(".road .quiet").click(), true)`)
	p.until("the whole trip again", `document.querySelector("#status").dataset.state === "planned" && !document.querySelector("#behind")`)
	if said := eval[string](p, `document.querySelector("#f-road-value-diesel").value`); said != "2" {
		t.Errorf("taken back, the gauge of diesel is %q, want what was said", said)
	}
	eval[bool](p, `(document.querySelector("#road-go").click(), true)`)
	p.until("the rest of the trip again", `document.querySelector("#status").dataset.state === "planned" && document.querySelector("#behind")`)

	p.do(chromedp.Reload()) // the trip from the road is the trip that is kept
	p.until("the kept trip", `document.querySelector("#status").dataset.state === "planned" && document.querySelector("#behind") && document.querySelector(".news").textContent.includes("you use ")`)
	if now := eval[string](p, itinerary); now == before {
		t.Error("after a reload the whole trip is back")
	}
}

// put sets a control that is there, as a person does.
func (p *page) put(id, value string) {
	p.t.Helper()
	p.until(id, fmt.Sprintf(`document.getElementById(%q)`, id))
	eval[bool](p, fmt.Sprintf(`(f => { f.value = %q; for (const e of ["input", "change"]) f.dispatchEvent(new Event(e, {bubbles: true})); return true; })(document.getElementById(%q))`, value, id))
	p.until(id+" taken", fmt.Sprintf(`document.getElementById(%q).value === %q`, id, value))
}

// TestTicksAndUnitsStay: what is ticked and the units chosen are there after a reload at once.
func TestTicksAndUnitsStay(t *testing.T) {
	p := home(t, 1400, 900)
	if eval[bool](p, `document.documentElement.scrollHeight > innerHeight`) {
		t.Error("the page is longer than the window: only the words are to scroll")
	}
	p.edit("f-units", "british")
	p.until("miles", `document.querySelector(".verdict .count").textContent.includes("mi")`)
	p.reloadAfter(`document.querySelectorAll("#list-set-off input")[1].click()`)
	p.until("a tick", `document.querySelector("#list-set-off summary")?.textContent.includes("1 of")`)
	p.planned()
	if got := eval[string](p, `document.querySelector("#list-set-off summary").textContent + [...document.querySelectorAll("#list-set-off input")].map(i => +i.checked).slice(0, 3)`); !strings.Contains(got, "1 of") || !strings.HasSuffix(got, "0,1,0") {
		t.Errorf("after a reload: %q", got)
	}
	if got := eval[string](p, `document.querySelector(".verdict .count").textContent`); !strings.Contains(got, "mi") {
		t.Errorf("after a reload the units are others: %q", got)
	}
	eval[bool](p, `(document.querySelector("#list-set-off .quiet").click(), true)`)
	p.until("no tick", `document.querySelector("#list-set-off summary").textContent.includes("0 of")`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

// metricLeft are the lines of the page that still count in metric units.
const metricLeft = `(() => {
	document.querySelectorAll("details").forEach(d => d.open = true);
	document.querySelectorAll("#f-units").forEach(e => e.remove());
	const words = [...document.querySelectorAll("[aria-label], [aria-valuetext]")].map(e => e.ariaLabel + " " + e.ariaValueText);
	return [document.body.innerText, ...words].join("\n").split("\n").filter(l => /\d[\s\u202f]?(km|L|°C|kg|m|km\/h)\b|\/L\b|\bkm \d/.test(l));
})()`

// TestAmericanPage: every number of the page follows the units chosen, in the
// forms, the panel of the road, facts, cautions and checklists, in a winter
// that is cold enough for cautions with temperatures.
func TestAmericanPage(t *testing.T) {
	p := open(t, 1400, 900)
	v := atHome()
	v.brief = false // the other plans are looked at too
	p.begin(v)
	p.winter()
	p.edit("f-units", "american")
	p.until("miles", `document.querySelector(".verdict .count").textContent.includes("mi")`)
	p.until("other plans", `document.querySelector("#others details")`)
	p.click("#onroad")
	p.until("the panel", `document.querySelector("#road-go")`)
	if left := eval[[]string](p, metricLeft); len(left) > 0 {
		t.Errorf("still metric: %q", left)
	}
}

// TestCurrency: another currency exchanges nothing, and the page says what
// typical prices are worth in it; prices that are named count.
func TestCurrency(t *testing.T) {
	p := home(t, 1400, 900)
	p.edit("f-currency", "NOK")
	p.replanned()
	p.until("what sums are worth", `/All sums are in NOK\b.*diesel\s1[.]60\sNOK\/L/.test(document.querySelector(".limits").textContent)`)
	// The sites of the island state their charges in EUR: they are told, and not counted.
	left := eval[[]string](p, `document.querySelector(".page").innerText.split("\n").filter(l => /\d[\u202f\s]?EUR/.test(l))`)
	for _, l := range left {
		if !strings.Contains(l, "not in NOK") {
			t.Errorf("on the page of a trip in NOK: %q", l)
		}
	}
	if len(left) == 0 {
		t.Error("no stop tells of its charge in EUR")
	}
	p.edit("f-price-diesel", "20.5")
	p.replanned()
	p.until("own price", `/20[.]50\sNOK\/L/.test(document.querySelector("#itinerary").textContent) && !/diesel\s1[.]60/i.test(document.querySelector(".limits").textContent)`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}
