//go:build !js

package e2e_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// Nothing here sleeps: a test waits for what is to come, as long as something
// is under way that may bring it.

// patience is how long a page may take over one thing on a busy machine;
// nothing is measured by it.
const patience = 5 * time.Minute

// quiet is how often a page is looked at while nothing is under way before it
// is plain that nothing more will come. It counts looks and no seconds: where
// the page has to wait for a processor, so do the looks.
const quiet = 400

// watch looks at a claim, which may await, whenever the page changes, and 20
// times a second for what is not in its document. It gives "" when the claim
// holds, and why it does not when nothing is under way or it took too long.
const watch = `new Promise(done => {
	let why = "it does not hold", quiet = 0;
	const end = said => { observer.disconnect(); clearInterval(timer); clearTimeout(enough); done(said); };
	const look = async () => { try { if (%s) end(""); } catch (e) { why = String(e); } };
	const underWay = () => {
		const map = globalThis.liveMap;
		return document.readyState !== "complete" || !["planned", "refused", "error"].includes(document.querySelector("#status")?.dataset.state)
			|| document.querySelector("#roads")?.dataset.state === "reading" || globalThis.pending?.size > 0 || map?.isMoving() || map?.loaded() === false;
	};
	const observer = new MutationObserver(() => { quiet = 0; look(); }), enough = setTimeout(() => end(why), %d);
	const timer = setInterval(() => { quiet = underWay() ? 0 : quiet + 1; if (quiet > %d) end(why + ", and nothing is under way"); else look(); }, 50);
	observer.observe(document, {subtree: true, childList: true, attributes: true, characterData: true});
	look();
})`

// watchAsked keeps what was asked of the planner and is not answered, by its
// ID. A newer plan, or a cancel, ends a plan; newer roads end roads.
const watchAsked = `{ const Real = Worker, text = new TextDecoder(), asked = globalThis.pending = new Map();
	const head = f => JSON.parse(text.decode(f.subarray(4, 4 + new DataView(f.buffer, f.byteOffset).getUint32(0, true))));
	globalThis.Worker = class extends Real {
		constructor(...a) {
			super(...a);
			if (a[0] !== "/web/worker.js") return; // of the map
			asked.set(0, "its start");
			const post = this.postMessage.bind(this), terminate = this.terminate.bind(this);
			this.terminate = () => { asked.clear(); terminate(); };
			this.postMessage = (m, ...rest) => {
				const r = head(m), kind = r.plan || r.cancel ? "plan" : r.roads ? "roads" : "other";
				for (const [id, k] of asked) if (k === kind && k !== "other") asked.delete(id);
				if (!r.cancel) asked.set(r.id, kind);
				return post(m, ...rest);
			};
			this.addEventListener("message", e => {
				if (!(e.data instanceof Uint8Array)) return asked.clear(); // it died
				if (e.data.length < 5) return asked.delete(0);             // it is ready
				const r = head(e.data);
				if (r.error || r.opened || r.roads || r.followed || r.answer?.last) asked.delete(r.id);
			});
		}
	};
}`

// until waits for a claim to hold, in this document or, if the page is being
// loaded anew, in the next.
func (p *page) until(what, claim string) {
	p.t.Helper()
	begin := time.Now()
	if why := p.wait(claim, quiet, p.patience()); why != "" {
		p.shot("timeout")
		p.t.Fatalf("waited %v for %s: %s; status: %s; heard: %q", time.Since(begin).Round(time.Second), what, why, p.status(), p.complaints())
	}
}

// patience leaves time before go's own limit, which would end all tests and
// not say what was waited for.
func (p *page) patience() time.Duration {
	if end, ok := p.t.Deadline(); ok {
		return min(patience, time.Until(end)-30*time.Second)
	}
	return patience
}

// wait returns why a claim does not hold, "" if it does.
func (p *page) wait(claim string, quiet int, most time.Duration) (why string) {
	why = "there is no time left"
	end := time.Now().Add(most)
	for left := most; left > 0; left = time.Until(end) {
		ctx, cancel := context.WithTimeout(p.ctx, left+5*time.Second)
		said, err := chromedp.Run(ctx, chromedp.Evaluate[string](fmt.Sprintf(watch, claim, left.Milliseconds(), quiet), chromedp.EvalAwaitPromise))
		cancel()
		if err == nil {
			return said
		}
		why = err.Error() // the document went away
		time.Sleep(5 * time.Millisecond)
	}
	return why
}

func (p *page) status() string {
	v, _ := chromedp.Run(p.ctx, chromedp.Evaluate[string](
		`(s => s ? s.dataset.state + ": " + s.textContent : "none")(document.querySelector("#status"))`))
	return v
}

// settled: an answer stands, and no better one by road is on its way.
const settled = `(["planned", "refused", "error"].includes(document.querySelector("#status")?.dataset.state) && document.querySelector("#roads")?.dataset.state !== "reading")`

// answered waits until there is a plan, or a word that there is none.
func (p *page) answered() {
	p.t.Helper()
	p.until("an answer", settled)
	if s := p.status(); strings.HasPrefix(s, "error") {
		p.t.Fatal(s)
	}
}

// planned waits until a plan stands, by road where there are roads.
func (p *page) planned() {
	p.t.Helper()
	p.until("a plan", settled)
	if s := p.status(); !strings.HasPrefix(s, "planned") {
		p.shot("no-plan")
		p.t.Fatalf("no plan: %s", s)
	}
}

// offlineReady waits until the service worker has everything and is in charge.
func (p *page) offlineReady() {
	p.t.Helper()
	p.until("the service worker", `navigator.serviceWorker.controller && navigator.serviceWorker.controller.state === "activated"`)
}

// TestWaitEnds: who waits gives up when nothing is under way that could bring
// it, and not before.
func TestWaitEnds(t *testing.T) {
	p := open(t, 100, 100)
	p.do(chromedp.Navigate(door(t) + "/web/licences.txt"))
	const few, many = 5, 20 // looks
	state := func(s string) {
		eval[bool](p, fmt.Sprintf(`(document.body.innerHTML = '<p id="status" data-state=%q>', true)`, s))
	}
	later := func(n int) string { return fmt.Sprintf(`(window.looks = (window.looks ?? 0) + 1) > %d`, n) }

	state("planned")
	if why := p.wait("false", few, patience); !strings.HasSuffix(why, "nothing is under way") {
		t.Errorf("for what does not come: %q", why)
	}
	if why := p.wait("noSuch.thing", few, patience); !strings.Contains(why, "noSuch is not defined") {
		t.Errorf("for what makes no sense: %q", why)
	}
	for what, js := range map[string]string{
		"a plan":                `document.querySelector("#status").dataset.state = "planning"`,
		"the program":           `document.querySelector("#status").remove()`,
		"an answer to come":     `pending.set(7, "other")`,
		"the map":               `globalThis.liveMap = {isMoving: () => true, loaded: () => true}`,
		"what it shows":         `globalThis.liveMap = {isMoving: () => false, loaded: () => false}`,
		"changes, now and then": `setInterval(() => document.body.append("."), 60)`,
	} {
		p.do(chromedp.Reload())
		state("planned")
		eval[bool](p, `(`+js+`, true)`)
		if why := p.wait(later(many), few, patience); why != "" {
			t.Errorf("while %s is under way: %q", what, why)
		}
	}
}
