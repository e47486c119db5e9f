//go:build !js

package e2e_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// countAsked counts how often the page asks the device for its position.
const countAsked = `window.asked = 0; const ask = Geolocation.prototype.getCurrentPosition;
Geolocation.prototype.getCurrentPosition = function (ok, no, how) {
	const id = "position " + ++window.asked, then = f => what => { pending.delete(id); f(what); };
	pending.set(id, "position");
	return ask.call(this, then(ok), then(no), how);
};
Geolocation.prototype.watchPosition = () => { window.asked++; };`

// permit answers for the person whether the page may know the position.
func (p *page) permit(setting browser.PermissionSetting) {
	p.t.Helper()
	call(p, browser.SetPermission, browser.SetPermissionParams{BrowserContextID: chromedp.FromContext(p.ctx).BrowserContextID, Permission: &browser.PermissionDescriptor{Name: "geolocation"}, Setting: setting})
}

// click clicks the element of a selector.
func (p *page) click(selector string) {
	p.t.Helper()
	p.until(selector, fmt.Sprintf(`document.querySelector(%q)`, selector))
	eval[bool](p, fmt.Sprintf(`(document.querySelector(%q).click(), true)`, selector))
}

// reloadAfter does something and loads the page anew in the same task, as a
// phone puts a page away.
func (p *page) reloadAfter(js string) {
	p.t.Helper()
	p.do(chromedp.Evaluate[chromedp.Void](`window.before = true; ` + js + `; location.reload()`))
	p.until("the page anew", `!window.before && document.querySelector("#status")`)
}

// TestWhereAmI: the device is asked when the button is pressed and never
// before, also without the server; a refusal, a place far away and a device
// that knows nothing are told apart.
func TestWhereAmI(t *testing.T) {
	url, shut := serveUntil(t)
	p := openNew(t, 390, 844) // what is permitted is, in all of a context
	p.beforeScripts(countAsked)
	v := atHome()
	v.url = url
	p.begin(v)
	line := eval[[][]float64](p, `fetch("/web/demo.trip.geojson").then(r => r.json()).then(t => t.features.find(f => f.geometry.type === "LineString").geometry.coordinates)`)
	p.offlineReady()
	shut()
	p.click("#onroad")
	p.until("the panel", `document.querySelector("#road-go")`)
	if n := eval[int](p, `window.asked`); n != 0 {
		t.Fatalf("the device was asked %d times before anybody wished so", n)
	}
	p.permit(browser.PermissionSettingDenied)
	p.click("#here")
	p.until("the refusal", `document.querySelector("#here-lost")?.textContent.includes("may not know where you are")`)

	p.permit(browser.PermissionSettingGranted)
	at := func(lon, lat float64) {
		call(p, emulation.SetGeolocationOverride, emulation.SetGeolocationOverrideParams{Longitude: &lon, Latitude: &lat, Accuracy: new(25.0)})
	}
	call(p, emulation.SetGeolocationOverride, emulation.SetGeolocationOverrideParams{}) // knows nothing
	p.click("#here")
	p.until("no position", `document.querySelector("#here-lost")?.textContent.includes("does not know where it is")`)
	at(-100, 40)
	p.click("#here")
	p.until("too far", `document.querySelector("#here-lost")?.textContent.includes("km off your route")`)
	mid := line[len(line)/2]
	at(mid[0], mid[1])
	p.click("#here")
	p.until("the place", `document.querySelector("#here-said").textContent.includes("Your device says km") && !document.querySelector("#here-lost") && document.querySelector("#f-road-km").value > 0`)
	if said := eval[string](p, `document.querySelector("#here-said").textContent`); !strings.Contains(said, "to within 25") {
		t.Errorf("said %q", said)
	}
	if n := eval[int](p, `window.asked`); n != 4 {
		t.Errorf("asked %d times for four presses", n)
	}
	if wide := eval[int](p, `document.documentElement.scrollWidth`); wide > 390 {
		t.Errorf("the page is %d px wide on a phone of 390", wide)
	}
	p.shot("where-am-i")
	p.axe()
	p.put("f-road-time", "2027-06-13T15:00")
	p.click("#road-go")
	p.until("the rest of the trip", `document.querySelector("#status").dataset.state === "planned" && document.querySelector("#behind")`)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

// TestStopsPassed: of the stops behind only those count that were called at;
// what is ticked off in the list is that already, also after a reload in the
// same breath, and so is the kind of a gauge.
func TestStopsPassed(t *testing.T) {
	p := home(t, 390, 844)
	names := strings.Split(eval[string](p, stopNames), "; ")
	p.until("ticks", `document.querySelectorAll(".tickoff input").length > 2`)
	p.reloadAfter(`document.querySelectorAll(".tickoff input")[0].click()`)
	p.until("the tick", `document.querySelectorAll(".call.made").length === 1`)
	p.planned()
	if next := eval[string](p, `document.querySelector(".next").parentElement.querySelector("h4").textContent`); next != names[1] {
		t.Errorf("next is %s, want %s", next, names[1])
	}
	p.click("#onroad")
	p.put("f-road-kind-diesel", "lamp")
	p.reloadAfter(`true`)
	p.planned()
	p.until("the panel and the gauge as they were", `document.querySelector("#f-road-kind-diesel")?.value === "lamp" && document.querySelector("#f-road-value-diesel")`)
	// Between the third stop and the fourth, wherever the plan has them.
	p.put("f-road-km", eval[string](p, `(k => String((k[2] + k[3]) / 2))([...document.querySelectorAll(".call .where")].map(w => +w.textContent.match(/(\d+)\s?km|km\s?(\d+)/).slice(1).find(Boolean)))`))
	p.put("f-road-time", "2027-06-13T10:30")
	p.until("three stops behind", `document.querySelectorAll("[name^='road:made:']").length === 3`)
	if made := eval[string](p, `[...document.querySelectorAll("[name^='road:made:']")].map(b => b.checked).join()`); made != "true,false,false" {
		t.Errorf("called at %s, want the one that is ticked off", made)
	}
	eval[bool](p, `(document.querySelectorAll("[name^='road:made:']")[2].click(), true)`)
	p.until("a tick", `document.querySelectorAll("[name^='road:made:']")[2].checked`)
	p.click("#road-go")
	p.until("the rest of the trip", `["planned", "refused"].includes(document.querySelector("#status").dataset.state) && document.querySelector("#behind")`)
	if behind := eval[string](p, `document.querySelector("#behind").textContent`); !strings.Contains(behind, names[0]) || strings.Contains(behind, names[1]) || !strings.Contains(behind, names[2]) {
		t.Errorf("behind is %q, want %s and %s", behind, names[0], names[2])
	}
	if news := eval[string](p, `document.querySelector(".news").textContent`); !strings.Contains(news, names[1]+" without stopping") {
		t.Errorf("told %q", news)
	}
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}
