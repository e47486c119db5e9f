//go:build !js

package e2e_test

import (
	"encoding/base64"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"ullage/data/tripfile"
	"ullage/planner/trip"
)

// second opens another tab of the browser that a page is in.
func (p *page) second(v visit) *page {
	p.t.Helper()
	q := openIn(p.t, p.ctx, 1400, 900)
	q.url = p.url
	q.begin(v)
	return q
}

// fullDevice has the browser refuse to keep more than globalThis.room bytes at once, as
// it does where a device is full: the transaction is taken back when it is to be done.
// (Storage.overrideQuotaForOrigin leaves IndexedDB alone.)
const fullDevice = `{ const put = IDBObjectStore.prototype.put;
	IDBObjectStore.prototype.put = function(value, ...key) {
		const done = put.call(this, value, ...key), tx = this.transaction;
		if (value.byteLength > (globalThis.room ?? Infinity)) queueMicrotask(() => {
			Object.defineProperty(tx, "error", {value: new DOMException("full", "QuotaExceededError")});
			try { tx.abort(); } catch {}
		});
		return done;
	}; }`

const notice = `(document.querySelector("#notice")?.textContent || "")`

// TestFullDevice: a map that the device has no room for is said to be missing now and on
// the next visit; the places of the one before do not come back under its name, nor is a
// plan made without any.
func TestFullDevice(t *testing.T) {
	extract := shared(t, "data/osm/andorra-2025-01-19.osm.pbf")
	p := open(t, 1400, 900)
	p.beforeScripts(fullDevice)
	p.begin(atHome())
	p.until("the island kept", stored("map", "FeatureCollection"))
	eval[int](p, `globalThis.room = 100_000`)
	p.do(chromedp.SetUploadFiles("#file", []string{extract}))
	p.until("a word on it", notice+`.includes("no room on this device for andorra")`)
	p.shot("no-room")
	p.do(chromedp.Reload())
	p.until("a word on it", `document.querySelector("#status").dataset.state === "error" && document.querySelector("#status").textContent.includes("andorra-2025-01-19.osm.pbf is not on this device")`)
	if eval[bool](p, `Boolean(document.querySelector("#itinerary h4")) || document.querySelector(".sources").textContent.includes("island.geojson")`) {
		t.Error("something stands in for the map that is missing")
	}
	p.shot("map-missing")
	p.do(chromedp.SetUploadFiles("#file", []string{extract}))
	p.until("the map kept", `document.querySelector(".sources").textContent.includes("andorra-2025-01-19.osm.pbf") && !document.querySelector("#notice") && `+stored("map", "OSMHeader"))
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

// TestTwoTabs: what one tab ticks the other shows; when one changes the trip the other is
// told, and goes on with a copy, which is there again after a reload, or with what the
// other has.
func TestTwoTabs(t *testing.T) {
	p := home(t, 390, 844)
	v := atHome()
	v.trip, v.roadless = nil, false // kept already
	q := p.second(v)
	made := func(n int) string { return fmt.Sprintf(`document.querySelectorAll(".call.made").length === %d`, n) }
	for n, tab := range []*page{p, q} {
		eval[bool](tab, fmt.Sprintf(`(document.querySelectorAll(".tickoff input")[%d].click(), true)`, n))
		p.until("the ticks of both", made(n+1))
		q.until("the ticks of both", made(n+1))
	}
	p.edit("f-adults", "3")
	q.until("told", `document.querySelector("#overtaken")`)
	q.shot("overtaken")
	q.edit("f-name", "The other way")
	eval[bool](q, `(document.querySelectorAll("#overtaken button")[1].click(), true)`)
	q.until("a copy", `!document.querySelector("#overtaken")`)
	q.edit("f-adults", "1")
	adults := `document.querySelector(".trip .sum")?.textContent.includes(%q)`
	p.do(chromedp.Reload())
	p.until("the trip of this tab, and the other beside it", fmt.Sprintf(adults, "3 adults")+` && document.querySelector("#kept .desk")?.textContent.includes("The other way")`)
	p.shot("also-kept")
	q.do(chromedp.Reload())
	q.until("the copy", fmt.Sprintf(adults, "1 adult")+` && document.querySelector("#trip-title").textContent === "The other way"`)
	for _, tab := range []*page{p, q} {
		if eval[bool](tab, `Boolean(document.querySelector("#overtaken"))`) {
			t.Error("a tab with a desk of its own is told of another")
		}
		if bad := tab.complaints(); len(bad) > 0 {
			t.Errorf("the browser complains: %q", bad)
		}
	}
}

// TestSameBreath: letters typed, a whole edit and vehicles dropped in the moment before
// the page goes away are there again.
func TestSameBreath(t *testing.T) {
	p := home(t, 1400, 900)
	fleet := trip.Fleet()[:1]
	fleet[0].ID, fleet[0].Name = "own", "Our own van"
	f := filepath.Join(t.TempDir(), "fleet.json")
	file, err := os.Create(f)
	if err == nil {
		err = tripfile.WriteFleet(file, fleet)
	}
	if err != nil {
		t.Fatal(err)
	}
	file.Close()
	p.edit("f-name", "Before all")
	vehicles := `[...document.querySelectorAll("#f-vehicle option")].some(o => o.textContent.includes("Our own van"))`
	p.do(chromedp.SetUploadFiles("#file", []string{f}))
	p.until("the vehicles", vehicles)
	typed := `(f => { f.value = %q; f.dispatchEvent(new Event("input", {bubbles: true})); })(document.getElementById(%q))`
	p.reloadAfter(fmt.Sprintf(typed, "Within a breath", "f-name") + ";" + fmt.Sprintf(typed, "tw", "f-adults"))
	p.until("all again", `document.querySelector("#trip-title")?.textContent === "Within a breath" && document.querySelector("#f-adults")?.value === "tw" && document.querySelector("#f-adults-wrong") && `+vehicles)
	if bad := p.complaints(); len(bad) > 0 {
		t.Errorf("the browser complains: %q", bad)
	}
}

// TestNewerTrip: a trip of a newer version is said to be one and stays kept; a press goes
// on with a fresh trip, and all that is kept goes as one file to another device.
func TestNewerTrip(t *testing.T) {
	p := open(t, 390, 844)
	v := atHome()
	v.newer = true
	p.visit(v)
	p.until("a word on it", `document.querySelector("#unread-0")`)
	if said := eval[string](p, `document.querySelector("#unread-0").textContent`); !strings.Contains(said, "newer version") {
		t.Errorf("it says %q", said)
	}
	p.shot("newer")
	eval[bool](p, `(document.querySelectorAll("#unread-0 button")[1].click(), true)`)
	p.until("a fresh trip", `document.querySelector("#status").dataset.state === "planned"`)
	p.edit("f-name", "A fresh one")
	p.until("the older beside it", `document.querySelector("#kept .desk")?.textContent.includes("this one cannot read") && !document.querySelector("#unread-0") && `+stored("aside", "ullage-trip-2")+` && `+stored("trip", "A fresh one"))
	p.shot("set-aside")
	got := eval[string](p, `new Promise(done => {
		const url = URL.createObjectURL;
		URL.createObjectURL = b => {
			const r = new FileReader();
			r.onload = () => { URL.createObjectURL = url; done(r.result.split(",")[1]); };
			r.readAsDataURL(b);
			return url.call(URL, b);
		};
		[...document.querySelectorAll("#kept button")].at(-1).click();
	})`)
	all, err := base64.StdEncoding.DecodeString(got)
	f := filepath.Join(t.TempDir(), "all.tar")
	if err == nil {
		err = os.WriteFile(f, all, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	q := openIn(t, chrome(t), 1400, 900, chromedp.WithNewBrowserContext()) // another device
	v = atHome()
	v.trip, v.roadless = nil, false
	q.begin(v)
	q.do(chromedp.SetUploadFiles("#file", []string{f}))
	q.until("all of it", `document.querySelector("#trip-title")?.textContent === "A fresh one" && document.querySelector("#kept .desk")?.textContent.includes("this version cannot read")`)
	q.planned()
	if bad := append(p.complaints(), q.complaints()...); len(bad) > 0 {
		t.Errorf("the browsers complain: %q", bad)
	}
}
