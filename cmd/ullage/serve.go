package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"strings"
	"syscall"
	"time"

	"ullage/cmd/ullage/page"
	"ullage/planner/fact"
)

// A serveRun serves the page on this machine.
type serveRun struct{ addr, hosts string }

func setUpServe(set *flag.FlagSet) action {
	s := &serveRun{}
	set.StringVar(&s.addr, "addr", "127.0.0.1:8080", "")
	set.StringVar(&s.hosts, "host", "", "")
	return s.run
}

func (s *serveRun) run(ctx context.Context, args []string, to streams) int {
	if len(args) > 0 {
		return to.wrong("serve: %q is too much: write ullage serve -addr 127.0.0.1:8080", args[0])
	}
	l, err := net.Listen("tcp", s.addr)
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return to.wrong("serve: %s is taken by another program, perhaps by another ullage serve: end it, or take a free port with -addr 127.0.0.1:0", s.addr)
	case err != nil:
		return to.wrong("serve: %v; write the address as -addr 127.0.0.1:8080", err)
	}
	o := opening{l, to, strings.FieldsFunc(s.hosts, func(r rune) bool { return r == ',' || r == ' ' }), func(b *building) (map[string][]byte, error) { return b.files(ctx) }}
	if err := o.serve(ctx); err != nil {
		return to.wrong("serve: %v", err)
	}
	return exitOK
}

// An opening is an address that answers, and what it will answer with.
type opening struct {
	at    net.Listener
	to    streams
	hosts []string                                   // names that it is asked for by, besides its own
	build func(*building) (map[string][]byte, error) // all files of the page
}

// serve answers from now on: with a page that waits, and with the files once they
// are there. It ends when ctx does, without an error.
func (o opening) serve(ctx context.Context) error {
	l, to := o.at, o.to
	waiting := &page.Waiting{}
	b := newBuilding(to.err)
	b.hear = func(now, usual string) {
		waiting.Say(page.Words{Title: voice.Text("serve.waiting"), Now: now, Usual: usual})
	}
	b.hear("", "")
	server := page.NewServer(page.OnlyHosts(o.hosts, waiting))
	ended := goServe(server, l)
	defer server.Close()
	at := fact.V{"address": fact.Text("http://" + l.Addr().String() + "/")}
	fmt.Fprintln(to.err, voice.Text("serve.open", at))
	if h, _, _ := net.SplitHostPort(l.Addr().String()); !net.ParseIP(h).IsLoopback() {
		fmt.Fprintln(to.err, voice.Text("serve.reachable"))
	}
	files, err := o.build(b)
	if ctx.Err() != nil {
		return nil // the build was broken off
	}
	if err != nil {
		return err
	}
	waiting.Ready(page.Handler(files))
	if _, err := fmt.Fprintln(to.out, voice.Text("serve.ready", at)); err != nil {
		return fmt.Errorf("print: %w", err)
	}
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	bye, cancel := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
	defer cancel()
	if err := server.Shutdown(bye); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}

// goServe serves beside, and tells if that ends by itself.
func goServe(server *http.Server, l net.Listener) <-chan error {
	ended := make(chan error, 1)
	go func() {
		if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
			ended <- err
		}
	}()
	return ended
}
