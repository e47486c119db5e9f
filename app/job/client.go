package job

import (
	"errors"
	"fmt"
	"sync"

	"ullage/planner/trip"
)

// A Link carries frames to the side that works.
type Link interface {
	Send(frame []byte) error
	Close()
}

// A Dial starts the side that works: receive gets each frame it sends, died
// is called once if it ends by itself.
type Dial func(receive func(frame []byte), died func(error)) (Link, error)

// A Client asks on behalf of the page. Its callbacks run through the dispatch
// function given to [NewClient]; its methods return at once.
type Client struct {
	dial     Dial
	dispatch func(func())

	mu      sync.Mutex
	link    Link
	last    int // ID of the latest request
	plan    int // ID of the latest plan; 0: none is wanted
	waiting map[int]waiting
	places  []Open   // what the worker holds, to open again if it dies
	roads   *waiting // and whether it is to read their roads
	drawn   int      // ID of the latest drawing
}

var errOvertaken = errors.New("something newer was asked for")

type waiting struct {
	open     Open
	progress func(done, total int64)
	opened   func(Opened, error)
	answer   func(Answer)
	roads    func(RoadsRead, error)
	followed func(Followed, error)
}

// OpenOptions say how a file is taken. The zero value replaces the places
// that are there, if the file has any.
type OpenOptions struct{ Add bool }

// NewClient returns a client that has not started its worker yet; the first
// request does. dispatch runs a callback where the page wants it:
//
//	job.NewClient(dial, func(f func()) { ctx.Dispatch(func(app.Context) { f() }) })
func NewClient(dial Dial, dispatch func(func())) *Client {
	return &Client{dial: dial, dispatch: dispatch, waiting: map[int]waiting{}}
}

// Open reads a file. progress may be nil. Files are read in the order of the
// calls, plans asked for later wait for them.
func (c *Client) Open(name string, data []byte, opt OpenOptions, progress func(done, total int64), done func(Opened, error)) {
	o := Open{Name: name, Add: opt.Add, Data: data}
	c.ask(Request{Open: &o}, waiting{open: o, progress: progress, opened: done})
}

// Plan asks for an itinerary; show gets each better one and then the last.
// An earlier Plan that is not done is stopped, and its show not called again.
func (c *Client) Plan(t trip.Trip, show func(Answer)) {
	c.ask(Request{Plan: &Plan{Trip: t, Route: t.Route}}, waiting{answer: show})
}

// Roads reads the roads of the files that are open, beside plans. Plans asked
// for after done follow them. What was being read before is left.
func (c *Client) Roads(progress func(done, total int64), done func(RoadsRead, error)) {
	w := waiting{progress: progress, roads: done}
	c.ask(Request{Roads: true}, w)
	c.mu.Lock()
	c.roads = &w
	c.mu.Unlock()
}

// Follow asks for the ways of a vehicle on roads. Of several that are asked
// before the first is answered, only the latest is; the others end with an
// error. done is called where the
// answer comes in, not through dispatch: a drag waits for it.
func (c *Client) Follow(f Follow, done func(Followed, error)) {
	c.ask(Request{Follow: &f}, waiting{followed: done})
}

// Cancel stops the plan that is being made.
func (c *Client) Cancel() { c.ask(Request{Cancel: true}, waiting{}) }

// Close ends the worker. Nothing is called afterwards.
func (c *Client) Close() {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.link != nil {
		c.link.Close()
	}
	c.link, c.waiting, c.plan = nil, map[int]waiting{}, 0
}

func (c *Client) ask(r Request, w waiting) {
	c.mu.Lock()
	err := c.start()
	if err == nil {
		err = c.send(r, w)
	}
	c.mu.Unlock()
	if err != nil {
		c.dispatch(func() { w.fail(err) })
	}
}

// start starts the worker if there is none, and gives it its places again.
func (c *Client) start() error {
	if c.link != nil {
		return nil
	}
	var link Link
	link, err := c.dial(c.receive, func(err error) { c.died(link, err) })
	if err != nil {
		return fmt.Errorf("the planner cannot start: %w", err)
	}
	c.link = link
	roads := c.roads
	for i, o := range c.places {
		o.Add = i > 0
		if err := c.send(Request{Open: &o}, waiting{open: o}); err != nil {
			return err
		}
	}
	if roads != nil {
		err = c.send(Request{Roads: true}, *roads)
		c.roads = roads
	}
	return err
}

func (c *Client) send(r Request, w waiting) error {
	c.last++
	r.ID = c.last
	if r.Plan != nil || r.Cancel {
		delete(c.waiting, c.plan)
		c.plan = 0
	}
	if r.Plan != nil {
		c.plan = r.ID
	}
	if r.Follow != nil {
		if w, ok := c.waiting[c.drawn]; ok {
			delete(c.waiting, c.drawn)
			go c.dispatch(func() { w.fail(errOvertaken) })
		}
		c.drawn = r.ID
	}
	if r.Roads || r.Open != nil && !r.Open.Add {
		c.roads = nil
		for id, w := range c.waiting {
			if w.roads != nil {
				delete(c.waiting, id)
			}
		}
	}
	b, err := EncodeRequest(r)
	if err == nil {
		err = c.link.Send(b)
	}
	if err != nil {
		return fmt.Errorf("ask the planner: %w", err)
	}
	if !r.Cancel {
		c.waiting[r.ID] = w
	}
	return nil
}

func (c *Client) receive(frame []byte) {
	r, err := DecodeResponse(frame)
	c.mu.Lock()
	w, ok := c.waiting[r.ID]
	if !ok {
		c.mu.Unlock()
		return
	}
	if err != nil || r.Error != "" || r.Opened != nil || r.Roads != nil || r.Followed != nil || r.Answer != nil && r.Answer.Last {
		delete(c.waiting, r.ID)
	}
	if r.Opened != nil && r.Opened.Kind == "places" {
		if !w.open.Add {
			c.places = nil
		}
		c.places = append(c.places, w.open)
	}
	c.mu.Unlock()

	if w.followed != nil && err == nil && r.Followed != nil {
		w.followed(*r.Followed, nil)
		return
	}
	c.dispatch(func() {
		switch {
		case err != nil:
			w.fail(err)
		case r.Error != "":
			w.fail(errors.New(r.Error))
		case r.Progress != nil && w.progress != nil:
			w.progress(r.Progress.Done, r.Progress.Total)
		case r.Opened != nil && w.opened != nil:
			w.opened(*r.Opened, nil)
		case r.Roads != nil && w.roads != nil:
			w.roads(*r.Roads, nil)
		case r.Answer != nil && c.wants(r.ID):
			w.answer(*r.Answer)
		}
	})
}

// wants reports whether this plan is still the latest when its turn on the
// page comes.
func (c *Client) wants(id int) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return id == c.plan
}

// died tells all who wait; the next request starts a new worker.
func (c *Client) died(link Link, err error) {
	c.mu.Lock()
	if c.link != link {
		c.mu.Unlock()
		return
	}
	left := c.waiting
	c.link, c.waiting, c.plan = nil, map[int]waiting{}, 0
	for _, w := range left {
		if w.roads != nil {
			c.roads = nil // what may have broken the worker is not tried again
		}
	}
	c.mu.Unlock()
	for _, w := range left {
		c.dispatch(func() { w.fail(fmt.Errorf("the planner stopped: %w", err)) })
	}
}

func (w waiting) fail(err error) {
	if w.opened != nil {
		w.opened(Opened{Name: w.open.Name}, err)
	}
	if w.answer != nil {
		w.answer(Answer{Last: true, Err: err})
	}
	if w.roads != nil {
		w.roads(RoadsRead{}, err)
	}
	if w.followed != nil {
		w.followed(Followed{}, err)
	}
}

// InProcess dials a server of h in this program: what tests use in place of a
// worker.
func InProcess(h *Handler) Dial {
	return func(receive func([]byte), died func(error)) (Link, error) {
		return inProcess{NewServer(h), receive}, nil
	}
}

type inProcess struct {
	server  *Server
	receive func([]byte)
}

func (p inProcess) Send(frame []byte) error {
	p.server.Receive(frame, func(b []byte) error { p.receive(b); return nil })
	return nil
}

func (p inProcess) Close() {}
