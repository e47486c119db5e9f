package browser

import (
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A Worker is this same program on a thread of its own. Frames of bytes go to
// it and come from it.
type Worker struct {
	v     app.Value
	stops []func()
	ready bool
	queue [][]byte // until it is ready: a message to a worker that does not listen yet is lost
}

// StartWorker starts the worker. receive gets each frame it sends; died is
// called once if it ends or cannot start. Frames sent before it is ready
// wait.
func StartWorker(receive func(frame []byte), died func(error)) (*Worker, error) {
	v, err := try(func() app.Value { return app.Window().Get("Worker").New("/web/worker.js") })
	if err != nil {
		return nil, fmt.Errorf("start the worker: %w", err)
	}
	w := &Worker{v: v}
	over := false
	end := func(err error) {
		if !over {
			over = true
			died(err)
		}
	}
	w.stops = []func(){
		listen(v, "message", nil, func(e app.Value) {
			data := e.Get("data")
			if data.Type() == app.TypeString { // worker.js tells why it ended
				end(errors.New(data.String()))
				return
			}
			b, err := toGo(data)
			if err != nil {
				end(fmt.Errorf("a frame from the worker: %w", err))
				return
			}
			if !w.ready { // its first, empty frame
				w.ready = true
				for _, frame := range w.queue {
					if err := send(v, frame); err != nil {
						end(err)
					}
				}
				w.queue = nil
				return
			}
			receive(b)
		}),
		listen(v, "error", nil, func(e app.Value) {
			reason := "it could not be loaded"
			if m := e.Get("message"); m.Truthy() {
				reason = m.String()
			}
			end(errors.New(reason))
		}),
	}
	return w, nil
}

// Send hands a frame over. The bytes are copied once.
func (w *Worker) Send(frame []byte) error {
	if !w.ready {
		w.queue = append(w.queue, frame)
		return nil
	}
	return send(w.v, frame)
}

// Close ends the worker at once, whatever it does.
func (w *Worker) Close() {
	for _, stop := range w.stops {
		stop()
	}
	w.stops = nil
	_, _ = try(func() app.Value { return w.v.Call("terminate") })
}

// ServeWorker is the life of the program inside a worker: each frame that
// comes is given to receive, reply sends one back. It does not return.
func ServeWorker(receive func(frame []byte, reply func([]byte) error)) {
	self := app.Window()
	reply := func(frame []byte) error { return send(self, frame) }
	listen(self, "message", nil, func(e app.Value) {
		b, err := toGo(e.Get("data"))
		if err != nil {
			return
		}
		receive(b, reply)
	})
	_ = reply(nil) // ready
	select {}
}

// send posts a frame and gives its buffer away instead of copying it again.
func send(to app.Value, frame []byte) error {
	u, err := toJS(frame)
	if err != nil {
		return err
	}
	if _, err := try(func() app.Value { return to.Call("postMessage", u, []any{u.Get("buffer")}) }); err != nil {
		return fmt.Errorf("post %d bytes: %w", len(frame), err)
	}
	return nil
}
