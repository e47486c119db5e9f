//go:build !js

package e2e_test

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"os"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"ullage/data"
	"ullage/data/demo"
	"ullage/data/osm"
	"ullage/data/tripfile"
	"ullage/planner/trip"
)

// What is not about starting begins where a last visit ended: the trip and the
// places are kept on the device. And it does without what it does not look at:
// the live map, which costs most of a page's time where there is no graphics
// card, and what the planner still has to say after its answer.

// A visit is how a page is opened. The zero value is a first visit.
type visit struct {
	url      string     // "": of a door of its own
	trip     *trip.Trip // kept from the last visit; nil: the site's own
	roadless bool       // the island's places are kept without its roads: one plan, by estimates
	drawn    bool       // the browser has no WebGL2: an overview is drawn
	brief    bool       // the planner is told to leave it at its answer
	newer    bool       // the trip is kept by a newer version
}

// home is the page as the last visit to the demo left it, planned.
func home(t *testing.T, width, height int) *page {
	t.Helper()
	p := open(t, width, height)
	p.begin(atHome())
	p.planned()
	return p
}

func atHome() visit {
	tr := demo.Trip()
	return visit{trip: &tr, roadless: true, drawn: true, brief: true}
}

// begin opens the page and waits for its first answer.
func (p *page) begin(v visit) {
	p.t.Helper()
	p.visit(v)
	p.answered()
}

// visit opens the page.
func (p *page) visit(v visit) {
	p.t.Helper()
	if v.url == "" {
		if p.url == "" {
			p.url = door(p.t)
		}
		v.url = p.url
	}
	if os.Getenv("ULLAGE_SHOTS") != "" { // pictures show all that there is
		v.drawn, v.brief = false, false
	}
	if v.drawn {
		p.beforeScripts(noWebGL)
	}
	if v.brief {
		p.beforeScripts(leaveItAtThat)
	}
	p.beforeScripts(showMap)
	if v.trip != nil || v.roadless {
		p.keep(v)
	}
	p.do(chromedp.Navigate(v.url))
}

const noWebGL = `{ const get = HTMLCanvasElement.prototype.getContext;
	HTMLCanvasElement.prototype.getContext = function(kind, ...rest) { return kind === "webgl2" ? null : get.call(this, kind, ...rest); }; }`

// leaveItAtThat cancels a plan when its answer is there: what would follow
// (other plans, the price of safety) is shown by a page that is not brief.
// TestCancelFrame holds that this is how a cancel looks.
const leaveItAtThat = `{ const Real = Worker, text = new TextDecoder();
	globalThis.Worker = class extends Real {
		constructor(...a) {
			super(...a);
			let latest = 0; // plan that was asked for: an older one has been stopped
			const post = this.postMessage.bind(this);
			this.postMessage = (m, ...rest) => {
				const plan = m instanceof Uint8Array && text.decode(m.subarray(4, 40)).match(/^{"id":(\d+),"plan"/);
				if (plan) latest = +plan[1];
				return post(m, ...rest);
			};
			this.addEventListener("message", e => {
				if (!(e.data instanceof Uint8Array) || e.data.length < 5) return;
				const size = new DataView(e.data.buffer, e.data.byteOffset).getUint32(0, true);
				const r = JSON.parse(text.decode(e.data.subarray(4, 4 + size)));
				if (r.answer?.done && !r.answer.last && r.id === latest) post(cancel(r.id));
			});
		}
	};
	const cancel = ` + cancelFrame + `; }`

// cancelFrame makes the request that stops a plan.
const cancelFrame = `id => {
		const head = new TextEncoder().encode(JSON.stringify({id, cancel: true})), frame = new Uint8Array(4 + head.length);
		new DataView(frame.buffer).setUint32(0, head.length, true);
		frame.set(head, 4);
		return frame;
	}`

// showMap keeps the live map where tests find it.
const showMap = `addEventListener("maplibre-ready", () => {
	const lib = globalThis.maplibregl;
	globalThis.maplibregl = {...lib, Map: class extends lib.Map { constructor(o) { super(o); globalThis.liveMap = this; } }};
}, {once: true, capture: true});`

// stored claims that a part of what the page keeps has these words in it.
func stored(part, words string) string {
	return fmt.Sprintf(`(await new Promise(done => {
		const ask = indexedDB.open("ullage", 1), text = b => new TextDecoder().decode(b ?? new Uint8Array());
		ask.onsuccess = () => {
			const table = ask.result.transaction("files").objectStore("files");
			table.get("shelf").onsuccess = e => {
				const entry = JSON.parse(text(e.target.result) || '{"desks": {"": {"entries": []}}}').desks[""].entries.find(e => e.part === %q);
				table.get("data/" + entry?.hash).onsuccess = e => { ask.result.close(); done(text(e.target.result).includes(%q)); };
			};
		};
	}))`, part, words)
}

// islandPlaces are the demo's places as GeoJSON.
var islandPlaces = sync.OnceValues(func() ([]byte, error) {
	x, err := osm.Read(context.Background(), "demo.osm.pbf", bytes.NewReader(demo.Extract()), osm.Options{})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = data.WritePlaces(&b, x.Places)
	return b.Bytes(), err
})

// keep puts what a last visit would have kept into the store of the page.
func (p *page) keep(v visit) {
	p.t.Helper()
	kept := map[string][]byte{}
	if v.trip != nil {
		var b bytes.Buffer
		if err := tripfile.Write(&b, *v.trip); err != nil {
			p.t.Fatal(err)
		}
		kept["trip"] = b.Bytes()
		if v.newer {
			kept["trip"] = bytes.Replace(b.Bytes(), []byte(trip.Format), []byte("ullage-trip-2"), 1)
		}
	}
	if v.roadless {
		places, err := islandPlaces()
		if err != nil {
			p.t.Fatal(err)
		}
		kept["places"], kept["places/0"] = []byte(`[{"name": "island.geojson", "key": "places/0"}]`), places
	}
	text := map[string]string{}
	for name, b := range kept {
		text[name] = base64.StdEncoding.EncodeToString(b)
	}
	files, err := json.Marshal(text)
	if err != nil {
		p.t.Fatal(err)
	}
	// It is the first to ask for the store, and writes only where there is none.
	p.beforeScripts(fmt.Sprintf(`{ const files = %s, ask = indexedDB.open("ullage", 1);
		ask.onsuccess = () => ask.result.close();
		ask.onupgradeneeded = () => {
			const table = ask.result.createObjectStore("files");
			for (const [name, text] of Object.entries(files)) table.put(Uint8Array.from(atob(text), c => c.charCodeAt(0)), name);
		}; }`, files))
}
