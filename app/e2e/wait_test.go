//go:build !js

package e2e_test

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/chromedp/chromedp"
)

// Nothing here sleeps: a test waits for what is to come, as long as it takes.

// patience is how long a page may take on a busy machine; nothing is measured
// by it.
const patience = 3 * time.Minute

// watch looks at a claim, which may await, whenever the page changes, and now
// and then for what is not in its document. It gives "" when the claim holds.
const watch = `new Promise(done => {
	let why = "it does not hold";
	const end = said => { observer.disconnect(); clearInterval(timer); clearTimeout(enough); done(said); };
	const look = async () => { try { if (%s) end(""); } catch (e) { why = String(e); } };
	const observer = new MutationObserver(look), timer = setInterval(look, 50), enough = setTimeout(() => end(why), %d);
	observer.observe(document, {subtree: true, childList: true, attributes: true, characterData: true});
	look();
})`

// until waits for a claim to hold, in this document or, if the page is being
// loaded anew, in the next.
func (p *page) until(what, claim string) {
	p.t.Helper()
	end := time.Now().Add(patience)
	why := ""
	for left := patience; left > 0; left = time.Until(end) {
		ctx, cancel := context.WithTimeout(p.ctx, left+5*time.Second)
		said, err := chromedp.Run(ctx, chromedp.Evaluate[string](fmt.Sprintf(watch, claim, left.Milliseconds()), chromedp.EvalAwaitPromise))
		cancel()
		if err == nil && said == "" {
			return
		}
		if why = said; err != nil { // the document went away
			why = err.Error()
			time.Sleep(5 * time.Millisecond)
		}
	}
	p.shot("timeout")
	p.t.Fatalf("waited %v for %s: %s; status: %s; heard: %q", patience, what, why, p.status(), p.complaints())
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
