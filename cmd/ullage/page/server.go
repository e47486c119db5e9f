package page

import (
	"net"
	"net/http"
	"sync"
	"time"
)

// mostConnections are open at a time: a page needs six, and memory is some kilobytes each.
const mostConnections = 512

// NewServer is a server that nobody can hold up: who is slow to ask, to take the answer or to go on is cut off, and of
// too many connections that which has waited longest without asking for anything makes room.
func NewServer(h http.Handler) *http.Server {
	c := &crowd{most: mostConnections, waiting: map[net.Conn]time.Time{}}
	return &http.Server{
		Handler: h, ConnState: c.hear, MaxHeaderBytes: 64 << 10,
		ReadHeaderTimeout: 10 * time.Second, ReadTimeout: 30 * time.Second, IdleTimeout: 2 * time.Minute,
		WriteTimeout: 10 * time.Minute, // the program over a slow network
	}
}

// A crowd knows the connections that are open.
type crowd struct {
	most    int
	mu      sync.Mutex
	waiting map[net.Conn]time.Time // those that ask for nothing, since when
	busy    int
}

// hear is told of every change of a connection.
func (c *crowd) hear(conn net.Conn, state http.ConnState) {
	c.mu.Lock()
	defer c.mu.Unlock()
	_, waited := c.waiting[conn]
	if !waited && state != http.StateNew {
		c.busy--
	}
	delete(c.waiting, conn)
	switch state {
	case http.StateNew, http.StateIdle:
		c.waiting[conn] = time.Now()
	case http.StateActive:
		c.busy++
	}
	if len(c.waiting)+c.busy > c.most {
		c.makeRoom(conn)
	}
}

// makeRoom closes the connection that has waited longest; the newest only if there is no other.
func (c *crowd) makeRoom(newest net.Conn) {
	longest := newest
	for conn, since := range c.waiting {
		if conn != newest && (longest == newest || since.Before(c.waiting[longest])) {
			longest = conn
		}
	}
	_ = longest.Close() // the server hears of it
	if _, there := c.waiting[longest]; there {
		delete(c.waiting, longest)
		c.busy++ // until it is heard of
	}
}
