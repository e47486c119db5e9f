package browser

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A Quick is the [keep.Quick] of this device (localStorage, which storage.js replaces by
// one in memory where the browser forbids it).
type Quick struct{}

// Keys lists what there is.
func (Quick) Keys() []string {
	var out []string
	_, _ = try(func() app.Value {
		local := app.Window().Get("localStorage")
		for i := range local.Get("length").Int() {
			out = append(out, local.Call("key", i).String())
		}
		return nil
	})
	return out
}

// Get returns the text under a key; ok is false where there is none.
func (Quick) Get(key string) (text string, ok bool) { return item("localStorage", key) }

// Set keeps a text. The error matches [ErrQuota] if there is no room.
func (Quick) Set(key, text string) error { return setItem("localStorage", key, text) }

// Delete takes a text away.
func (Quick) Delete(key string) {
	_, _ = try(func() app.Value { return app.Window().Get("localStorage").Call("removeItem", key) })
}

// Session is a text that this tab keeps while it is open, also over a reload; "" is none.
func Session(key string) string {
	text, _ := item("sessionStorage", key)
	return text
}

// SetSession keeps such a text.
func SetSession(key, text string) error { return setItem("sessionStorage", key, text) }

func item(storage, key string) (text string, ok bool) {
	v, err := try(func() app.Value { return of(storage).Call("getItem", key) })
	if err != nil || v.IsNull() {
		return "", false
	}
	return v.String(), true
}

func setItem(storage, key, text string) error {
	_, err := try(func() app.Value { return of(storage).Call("setItem", key, text) })
	if err != nil {
		return fmt.Errorf("keep %s: %w", key, err)
	}
	return nil
}

// of is a storage of the window; reading it throws where the browser forbids it.
func of(storage string) app.Value {
	v, err := reflectGet(app.Window(), storage)
	if err != nil {
		panic(err) // caught where it is asked for
	}
	return v
}

// WatchQuick calls f when another page keeps a text, or takes one away: "".
func WatchQuick(f func(key, text string)) (stop func()) {
	if app.IsServer {
		return func() {}
	}
	return listen(app.Window(), "storage", nil, func(e app.Value) {
		key, text := e.Get("key"), e.Get("newValue")
		if key.Truthy() {
			if !text.Truthy() {
				f(key.String(), "")
				return
			}
			f(key.String(), text.String())
		}
	})
}

// Room is how many bytes of this device the page has used, and how many it may use in
// all; ok is false where the browser does not tell. It waits.
func Room() (used, most float64, ok bool) {
	v, err := storageCall("estimate")
	if err != nil || !v.Truthy() || !v.Get("quota").Truthy() {
		return 0, 0, false
	}
	if u := v.Get("usage"); u.Truthy() {
		used = u.Float()
	}
	return used, v.Get("quota").Float(), true
}

// Persist asks the browser not to clear what the page keeps when the device runs short
// of room, and tells whether it will not. It waits.
func Persist() bool {
	v, err := storageCall("persist")
	return err == nil && v.Truthy()
}

func storageCall(name string) (app.Value, error) {
	s, err := reflectGet(app.Window().Get("navigator"), "storage")
	if err != nil || !s.Truthy() {
		return app.Undefined(), fmt.Errorf("the browser does not tell: %w", err)
	}
	return awaitCall(func() app.Value { return s.Call(name) })
}

// NewID is a name that no other page has.
func NewID() string {
	v, err := try(func() app.Value {
		words := app.Window().Get("Uint32Array").New(2)
		return app.Window().Get("crypto").Call("getRandomValues", words)
	})
	if err != nil {
		return "0"
	}
	return fmt.Sprintf("%08x%08x", v.Index(0).Int(), v.Index(1).Int())
}
