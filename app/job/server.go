package job

import (
	"context"
	"fmt"
	"sync"
	"sync/atomic"
)

// A Server takes frames of requests and sends frames of responses. Files are
// read one after the other; of plans the latest counts.
type Server struct {
	handler *Handler
	files   atomic.Int32 // that wait to be opened
	turn    sync.Mutex   // one request works at a time: the handler's places are its own

	mu     sync.Mutex
	latest int // ID of the latest plan or cancel
	stop   context.CancelFunc
}

// NewServer returns a server of h.
func NewServer(h *Handler) *Server {
	s := &Server{handler: h, stop: func() {}}
	h.wanted = func() bool { return s.files.Load() > 0 }
	return s
}

// Receive begins a request and returns at once. reply may be called from
// another goroutine, also after Receive has returned. A frame that is no
// request is answered with an error to request 0.
func (s *Server) Receive(frame []byte, reply func([]byte) error) {
	emit := func(r Response) {
		b, err := EncodeResponse(r)
		if err != nil {
			b, _ = EncodeResponse(Response{ID: r.ID, Error: err.Error()})
		}
		_ = reply(b) // nobody is left to tell
	}
	r, err := DecodeRequest(frame)
	if err != nil {
		emit(Response{Error: err.Error()})
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	if r.Plan != nil || r.Cancel {
		s.mu.Lock()
		s.stop()
		s.latest, s.stop = r.ID, cancel
		s.mu.Unlock()
	}
	if r.Cancel {
		cancel()
		return
	}
	if r.Open != nil {
		s.files.Add(1)
	}
	go func() {
		defer cancel()
		s.turn.Lock()
		defer s.turn.Unlock()
		if r.Open != nil {
			s.files.Add(-1)
		}
		if r.Plan != nil && s.overtaken(r.ID) {
			return
		}
		defer func() {
			if p := recover(); p != nil {
				emit(Response{ID: r.ID, Error: fmt.Sprintf("the planner broke on this (%v): please report it with the trip file", p)})
			}
		}()
		s.handler.Handle(inSlices(ctx), r, func(res Response) {
			if r.Plan == nil || !s.overtaken(r.ID) {
				emit(res)
			}
		})
	}()
}

func (s *Server) overtaken(id int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return id < s.latest
}
