// Package browser is the only place that touches JavaScript values: files,
// storage, the network, the map, the worker and the small favours that a page
// asks of the browser.
//
// It owns the calls and their errors; it knows nothing of trips and plans.
// Every function that can fail returns an error, every callback handed to
// JavaScript is released by the stop function or Close that comes with it.
// Outside a browser all calls return [ErrNoBrowser], so that the page can be
// drawn and tested natively.
//
// Functions said to wait must be called off the page's own goroutine (inside
// Context.Async): a blocked page cannot run the callback it waits for.
// Callbacks run on a goroutine of their own: return to the page with
// Context.Dispatch.
//
//	stop := browser.WatchMedia("(prefers-color-scheme: dark)", func(dark bool) { … })
//	defer stop()
//
// Read value.go first.
//
// Files, each using only those above it:
//
//   - value.go: values of JavaScript, and their errors
//   - file.go: files chosen, fetched and given
//   - here.go: where the device is
//   - page.go: favours asked of the window
//   - store.go: bytes kept on this device
//   - quick.go: short texts kept at once, and room
//   - worker.go: this program on a thread of its own
//   - map.go: the map
//   - sketch.go: what is drawn above it
package browser
