package browser

import (
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// ErrNoBrowser is what every call returns where there is no browser.
var ErrNoBrowser = errors.New("browser: there is no browser here")

// An Error is an exception or rejection of the browser, told apart by its
// name: QuotaExceededError, NotAllowedError, AbortError…
type Error struct {
	Name    string
	Message string
}

func (e *Error) Error() string {
	if e.Name == "" {
		return e.Message
	}
	return e.Name + ": " + e.Message
}

// Is reports whether target is an [Error] of the same name.
func (e *Error) Is(target error) bool {
	t, ok := target.(*Error)
	return ok && t.Name == e.Name
}

// ErrQuota matches the refusal to keep more data.
var ErrQuota error = &Error{Name: "QuotaExceededError"}

// InWorker reports whether the program runs in a browser without a document:
// in a worker.
func InWorker() bool {
	return app.IsClient && !app.Window().Get("document").Truthy()
}

// try turns a thrown exception into an error. A getter or setter that throws
// cannot be caught: reach it with [reflectGet].
func try(f func() app.Value) (v app.Value, err error) {
	if app.IsServer {
		return app.Undefined(), ErrNoBrowser
	}
	defer func() {
		if r := recover(); r != nil {
			e, ok := r.(error)
			if !ok {
				panic(r)
			}
			v, err = app.Undefined(), e
		}
	}()
	return f(), nil
}

// await waits for promise p.
func await(p app.Value) (app.Value, error) {
	type result struct {
		v   app.Value
		err error
	}
	c := make(chan result, 1)
	ok := app.FuncOf(func(_ app.Value, a []app.Value) any { c <- result{v: first(a)}; return nil })
	no := app.FuncOf(func(_ app.Value, a []app.Value) any { c <- result{err: failure(first(a))}; return nil })
	defer ok.Release()
	defer no.Release()
	if _, err := try(func() app.Value { return p.Call("then", ok, no) }); err != nil {
		return app.Undefined(), err
	}
	r := <-c
	return r.v, r.err
}

// awaitCall makes a call that returns a promise and waits for it.
func awaitCall(f func() app.Value) (app.Value, error) {
	p, err := try(f)
	if err != nil {
		return p, err
	}
	return await(p)
}

// failure keeps the name and the message of what was thrown.
func failure(v app.Value) error {
	if v == nil || !v.Truthy() {
		return &Error{Message: "no reason given"}
	}
	if v.Type() != app.TypeObject {
		return &Error{Message: v.String()}
	}
	e := &Error{Message: "no reason given"}
	if n := v.Get("name"); n.Truthy() {
		e.Name = n.String()
	}
	if m := v.Get("message"); m.Truthy() {
		e.Message = m.String()
	}
	return e
}

// reflectGet reads a property whose getter may throw.
func reflectGet(v app.Value, name string) (app.Value, error) {
	return try(func() app.Value { return app.Window().Get("Reflect").Call("get", v, name) })
}

func first(a []app.Value) app.Value {
	if len(a) == 0 {
		return app.Undefined()
	}
	return a[0]
}

// toGo copies an ArrayBuffer or a Uint8Array.
func toGo(v app.Value) ([]byte, error) {
	if !v.Truthy() {
		return nil, fmt.Errorf("browser: no bytes")
	}
	u, err := try(func() app.Value { return app.Window().Get("Uint8Array").New(v) })
	if err != nil {
		return nil, err
	}
	b := make([]byte, u.Get("length").Int())
	app.CopyBytesToGo(b, u)
	return b, nil
}

// toJS copies into a new Uint8Array.
func toJS(b []byte) (app.Value, error) {
	return try(func() app.Value {
		u := app.Window().Get("Uint8Array").New(len(b))
		app.CopyBytesToJS(u, b)
		return u
	})
}

// guard keeps a panic of a callback from ending the program: the page would
// stay on the screen, dead. What happened goes to the browser's console.
func guard(where string) {
	if r := recover(); r != nil {
		app.Log(fmt.Sprintf("browser: %s: %v", where, r))
	}
}

// listen adds a listener and returns the function that removes it.
func listen(target app.Value, event string, options map[string]any, f func(app.Value)) (stop func()) {
	fn := app.FuncOf(func(_ app.Value, a []app.Value) any {
		defer guard(event)
		f(first(a))
		return nil
	})
	if options == nil {
		options = map[string]any{}
	}
	target.Call("addEventListener", event, fn, options)
	done := false
	return func() {
		if !done {
			done = true
			target.Call("removeEventListener", event, fn, options)
			fn.Release()
		}
	}
}
