package job

import (
	"context"
	"fmt"
	"sync"
	"sync/atomic"
)

// A Server takes frames of requests and sends frames of responses. Files are
// read one after the other; of plans the latest counts. Roads are read beside
// plans, of which each shows something first. Drawings are answered at once.
type Server struct {
	handler *Handler
	files   atomic.Int32 // that wait to be opened
	busy    atomic.Int32 // files and plans of which nothing has come yet
	reading atomic.Int32 // roads are being read: a better plan comes soon
	turn    sync.Mutex   // one file or plan works at a time: the handler's places are its own

	mu     sync.Mutex
	latest int // ID of the latest plan or cancel
	stop   context.CancelFunc
	drawn  int                // ID of the latest drawing
	leave  context.CancelFunc // the roads that are being read
}

// NewServer returns a server of h.
func NewServer(h *Handler) *Server {
	s := &Server{handler: h, stop: func() {}, leave: func() {}}
	h.wanted = func() bool { return s.files.Load() > 0 || s.reading.Load() > 0 }
	h.first = func() bool { return s.busy.Load() > 0 }
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
	switch {
	case err != nil:
		emit(Response{Error: err.Error()})
	case r.Follow != nil:
		s.follow(r, emit)
	case r.Roads:
		s.readRoads(r, emit)
	case r.Cancel:
		s.newest(r.ID, func() {})
	default:
		s.work(r, emit)
	}
}

// follow answers a drawing, unless a later one is asked for by then.
func (s *Server) follow(r Request, emit func(Response)) {
	s.mu.Lock()
	s.drawn = r.ID
	s.mu.Unlock()
	go s.beside(r, emit, func() {
		if !s.outdrawn(r.ID) {
			s.handler.Handle(context.Background(), r, emit)
		}
	})
}

// readRoads reads the roads of the files that were sent before.
func (s *Server) readRoads(r Request, emit func(Response)) {
	ctx, cancel := context.WithCancel(context.Background())
	s.leaveRoads(cancel)
	s.reading.Add(1)
	go s.beside(r, emit, func() {
		defer cancel()
		defer s.reading.Add(-1)
		s.turn.Lock()
		files := s.handler.files
		s.turn.Unlock()
		s.handler.handleRoads(ctx, r.ID, files, emit)
	})
}

// leaveRoads leaves the roads that are being read; stop leaves those that are from now on.
func (s *Server) leaveRoads(stop context.CancelFunc) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.leave()
	s.leave = stop
}

// newest makes a plan, or its end, the one that counts.
func (s *Server) newest(id int, stop context.CancelFunc) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.stop()
	s.latest, s.stop = id, stop
}

// work reads a file or makes a plan, in its turn.
func (s *Server) work(r Request, emit func(Response)) {
	ctx, cancel := context.WithCancel(context.Background())
	if r.Open != nil {
		s.files.Add(1)
		if !r.Open.Add {
			s.leaveRoads(func() {})
		}
	}
	if r.Plan != nil {
		s.newest(r.ID, cancel)
	}
	s.busy.Add(1)
	shown := sync.OnceFunc(func() { s.busy.Add(-1) })
	go s.beside(r, emit, func() {
		defer cancel()
		defer shown()
		s.turn.Lock()
		defer s.turn.Unlock()
		if r.Open != nil {
			s.files.Add(-1)
		}
		if r.Plan != nil && s.overtaken(r.ID) {
			return
		}
		s.handler.Handle(ctx, r, func(res Response) {
			if res.Answer != nil {
				shown()
			}
			if r.Plan == nil || !s.overtaken(r.ID) {
				emit(res)
			}
		})
	})
}

// beside does work; if it panics, the one who asked hears of it.
func (s *Server) beside(r Request, emit func(Response), work func()) {
	defer func() {
		if p := recover(); p != nil {
			emit(Response{ID: r.ID, Error: fmt.Sprintf("the planner broke on this (%v): please report it with the trip file", p)})
		}
	}()
	work()
}

// outdrawn tells whether a later drawing is asked for.
func (s *Server) outdrawn(id int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return id < s.drawn
}

func (s *Server) overtaken(id int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return id < s.latest
}
