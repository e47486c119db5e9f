package job

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"sync"
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
	places  []Open   // what the worker holds, to open again if it dies; without bytes where they can be read again
	reading bool     // they are being read again
	later   []asked  // what waits for that
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
type OpenOptions struct {
	Add      bool
	Progress func(done, total int64) // nil: nobody looks
	Again    func() ([]byte, error)  // reads the file anew if the worker died, and may wait; nil: its bytes are held
}

// NewClient returns a client that has not started its worker yet; the first
// request does. dispatch runs a callback where the page wants it:
//
//	job.NewClient(dial, func(f func()) { ctx.Dispatch(func(app.Context) { f() }) })
func NewClient(dial Dial, dispatch func(func())) *Client {
	return &Client{dial: dial, dispatch: dispatch, waiting: map[int]waiting{}}
}

// Open reads a file. Files are read in the order of the
// calls, plans asked for later wait for them.
func (c *Client) Open(name string, data []byte, opt OpenOptions, done func(Opened, error)) {
	o := Open{Name: name, Add: opt.Add, Data: data, again: opt.Again}
	c.ask(Request{Open: &o}, waiting{open: o.bare(), progress: opt.Progress, opened: done})
}

// Plan asks for an itinerary; show gets each better one and then the last.
// An earlier Plan that is not done is stopped, and its show not called again.
func (c *Client) Plan(p Plan, show func(Answer)) {
	p.Route = p.Trip.Route
	c.ask(Request{Plan: &p}, waiting{answer: show})
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

// An asked is a request and who waits for it.
type asked struct {
	Request
	waiting
}

// ask sends a request, to a new worker if there is none. What is asked while that
// one is given its places again waits.
func (c *Client) ask(r Request, w waiting) {
	c.mu.Lock()
	err := c.start()
	if err == nil && c.reading {
		c.later = append(c.later, asked{r, w})
	} else if err == nil {
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
	if len(c.places) > 0 {
		c.reading = true
		go c.reopen(link, c.places, c.roads)
	}
	return nil
}

// reopen reads the files of places again, then sends what waits for them. A file
// that is not there any more is left out: who asks for a plan hears of its places.
func (c *Client) reopen(link Link, places []Open, roads *waiting) {
	for i, o := range places {
		data, err := o.Data, error(nil)
		if o.again != nil {
			data, err = o.again()
		}
		if err != nil {
			continue
		}
		o.Add, o.Data = i > 0, data
		c.mu.Lock()
		if c.link == link {
			_ = c.send(Request{Open: &o}, waiting{open: o.bare()}) // who waits hears of it
		}
		c.mu.Unlock()
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.link != link {
		return
	}
	if roads != nil {
		_ = c.send(Request{Roads: true}, *roads)
		c.roads = roads
	}
	later := c.later
	c.reading, c.later = false, nil
	for _, a := range later {
		if err := c.send(a.Request, a.waiting); err != nil {
			go c.dispatch(func() { a.fail(err) })
		}
	}
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
	w, ok := c.settle(r, err)
	if !ok {
		return
	}
	if w.followed != nil && err == nil && r.Followed != nil {
		w.followed(*r.Followed, nil)
		return
	}
	c.dispatch(func() {
		if err == nil {
			err = r.fails()
		}
		if err != nil {
			w.fail(err)
			return
		}
		c.deliver(r, w)
	})
}

// settle finds who waits for a response, who waits no more if it is the last one.
func (c *Client) settle(r Response, err error) (waiting, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	w, ok := c.waiting[r.ID]
	if !ok {
		return w, false
	}
	if err != nil || r.ends() {
		delete(c.waiting, r.ID)
	}
	if r.Opened != nil && r.Opened.Kind == "places" {
		if !w.open.Add {
			c.places = nil
		}
		c.places = append(c.places, w.open)
	}
	return w, true
}

// deliver gives a response to who waits for it.
func (c *Client) deliver(r Response, w waiting) {
	switch {
	case r.Progress != nil && w.progress != nil:
		w.progress(r.Progress.Done, r.Progress.Total)
	case r.Opened != nil && w.opened != nil:
		w.opened(*r.Opened, nil)
	case r.Roads != nil && w.roads != nil:
		w.roads(*r.Roads, nil)
	case r.Answer != nil && c.wants(r.ID):
		w.answer(*r.Answer)
	}
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
	left := slices.Collect(maps.Values(c.waiting))
	for _, a := range c.later {
		left = append(left, a.waiting)
	}
	c.link, c.waiting, c.plan, c.reading, c.later = nil, map[int]waiting{}, 0, false, nil
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
