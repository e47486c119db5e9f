package main

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"
)

// A noise is a buffer that several goroutines write to and read.
type noise struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (n *noise) Write(b []byte) (int, error) {
	n.mu.Lock()
	defer n.mu.Unlock()
	return n.b.Write(b)
}

func (n *noise) String() string {
	n.mu.Lock()
	defer n.mu.Unlock()
	return n.b.String()
}

// The address answers while the page is still being built, says what is being
// done, gives the page once it is there, and ends without complaint.
func TestServeWaits(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, end := context.WithCancel(t.Context())
	defer end()
	var out, errs noise
	built, ended := make(chan struct{}), make(chan error, 1)
	go func() {
		ended <- opening{l, streams{&out, &errs}, nil, func(b *building) (map[string][]byte, error) {
			b.hear("Compiling the page", "about a minute")
			<-built
			return map[string][]byte{"index.html": []byte("the page")}, nil
		}}.serve(ctx)
	}()
	get := func() (int, string) {
		r, err := http.Get("http://" + l.Addr().String() + "/")
		if err != nil {
			t.Fatal(err)
		}
		defer r.Body.Close()
		b, _ := io.ReadAll(r.Body)
		return r.StatusCode, string(b)
	}
	until(t, func() bool {
		status, text := get()
		return status == http.StatusServiceUnavailable && strings.Contains(text, "Compiling the page")
	})
	if !strings.Contains(errs.String(), "is open already") || out.String() != "" {
		t.Errorf("said %q, %q before the page was there", errs.String(), out.String())
	}
	close(built)
	until(t, func() bool { status, text := get(); return status == http.StatusOK && text == "the page" })
	until(t, func() bool { return strings.HasPrefix(out.String(), "Ullage is at http://"+l.Addr().String()) })
	end()
	if err := <-ended; err != nil {
		t.Errorf("ended with %v", err)
	}
}

// until waits for a state.
func until(t *testing.T, is func() bool) {
	t.Helper()
	for deadline := time.Now().Add(30 * time.Second); !is(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("it does not come to that")
		}
	}
}

// Ctrl-C during the build ends it, and is no mistake.
func TestServeEndsWhileBuilding(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, end := context.WithCancel(t.Context())
	var out, errs noise
	err = opening{l, streams{&out, &errs}, nil, func(*building) (map[string][]byte, error) {
		end()
		return nil, ctx.Err()
	}}.serve(ctx)
	if err != nil || out.String() != "" {
		t.Errorf("ended with %v, %q", err, out.String())
	}
}

func TestServeAndSiteUsage(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	for _, tc := range []struct {
		args []string
		want string
	}{
		{[]string{"serve", "extra"}, `"extra" is too much`},
		{[]string{"serve", "-addr", "nowhere"}, "write the address as -addr 127.0.0.1:8080"},
		{[]string{"serve", "-addr", l.Addr().String()}, "is taken by another program"},
		{[]string{"site"}, "ullage site -out DIR"},
		{[]string{"site", "-out", "x", "-brotli", "12"}, "0 to 11"},
		{[]string{"site", "-out", "testdata"}, "which is not of an earlier site"},
	} {
		if code, out, errs := ullage(tc.args...); code != exitUsage || !strings.Contains(errs, tc.want) || out != "" {
			t.Errorf("%q: code %d, out %q, err %q", tc.args, code, out, errs)
		}
	}
}
