package browser

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// This file holds the small favours that a page asks of its window.

// Print opens the print dialogue; the page must be drawn before, so call it
// in Context.Defer.
func Print() error {
	_, err := try(func() app.Value { return app.Window().Call("print") })
	return err
}

// Matches reports whether a media query holds: "(prefers-color-scheme: dark)".
func Matches(query string) bool {
	v, err := try(func() app.Value { return app.Window().Call("matchMedia", query) })
	return err == nil && v.Get("matches").Truthy()
}

// WatchMedia calls f whenever the answer to a media query changes.
func WatchMedia(query string, f func(bool)) (stop func()) {
	v, err := try(func() app.Value { return app.Window().Call("matchMedia", query) })
	if err != nil {
		return func() {}
	}
	return listen(v, "change", nil, func(e app.Value) { f(e.Get("matches").Truthy()) })
}

// Across returns how far across an element a pointer event is, 0 left to 1
// right; ok is false if the element has no width.
func Across(element, event app.Value) (x float64, ok bool) {
	r, err := try(func() app.Value { return element.Call("getBoundingClientRect") })
	if err != nil {
		return 0, false
	}
	w := r.Get("width").Float()
	if w <= 0 {
		return 0, false
	}
	x = (event.Get("clientX").Float() - r.Get("left").Float()) / w
	return min(max(x, 0), 1), true
}

// Focus moves the keyboard to the element of that id and scrolls it into view.
func Focus(id string) {
	_, _ = try(func() app.Value {
		e := app.Window().GetElementByID(id)
		if !e.Truthy() {
			return e
		}
		e.Call("focus", map[string]any{"preventScroll": true})
		return e.Call("scrollIntoView", map[string]any{"block": "nearest"})
	})
}

// NewerWaits reports whether a newer version of the page is loaded and waits
// for its turn. It waits.
func NewerWaits() bool {
	r, ok := registration()
	return ok && r.Get("waiting").Truthy()
}

// UseNewer lets the waiting version take over; the page hears of it through
// OnAppUpdate and reloads then. It waits.
func UseNewer() {
	if r, ok := registration(); ok && r.Get("waiting").Truthy() {
		r.Get("waiting").Call("postMessage", "skip-waiting")
	}
}

// OfflineReady reports whether a reload would work without a network: the
// service worker is in charge and its cache holds the program. It waits.
func OfflineReady() bool {
	if r, ok := registration(); !ok || !r.Get("active").Truthy() {
		return false
	}
	c, err := reflectGet(app.Window(), "caches")
	if err != nil || !c.Truthy() {
		return false
	}
	hit, err := awaitCall(func() app.Value { return c.Call("match", "/web/app.wasm") })
	return err == nil && hit.Truthy()
}

func registration() (app.Value, bool) {
	if app.IsServer {
		return nil, false
	}
	sw, err := reflectGet(app.Window().Get("navigator"), "serviceWorker")
	if err != nil || !sw.Truthy() {
		return nil, false
	}
	r, err := awaitCall(func() app.Value { return sw.Call("getRegistration") })
	return r, err == nil && r.Truthy()
}
