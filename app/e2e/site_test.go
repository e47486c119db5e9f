//go:build !js

package e2e_test

import (
	"bufio"
	"errors"
	"fmt"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// One server and one build of the page's program are enough for all tests: each
// has a door of its own to it, which to the browser is an origin of its own.

// A site is `ullage serve` in a process of its own.
type site struct {
	url string
	cmd *exec.Cmd
	dir string // of the command
}

var theSite = sync.OnceValues(func() (*site, error) {
	dir, err := os.MkdirTemp("", "ullage-e2e-")
	if err != nil {
		return nil, err
	}
	s := &site{dir: dir}
	bin := filepath.Join(dir, "ullage")
	if out, err := exec.Command("go", "build", "-o", bin, "../../cmd/ullage").CombinedOutput(); err != nil {
		return s, fmt.Errorf("build the command: %w\n%s", err, out)
	}
	s.cmd = exec.Command(bin, "serve", "-addr", "127.0.0.1:0")
	s.cmd.Stderr = os.Stderr
	out, err := s.cmd.StdoutPipe()
	if err == nil {
		err = s.cmd.Start()
	}
	if err != nil {
		return s, err
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		return s, fmt.Errorf("ullage serve ended: %w", errors.Join(err, s.cmd.Wait()))
	}
	_, at, _ := strings.Cut(line, "http://")
	at, _, _ = strings.Cut(at, "/")
	s.url = "http://" + at
	return s, nil
})

// end stops the server and takes the command away.
func (s *site) end() {
	if s.cmd != nil && s.cmd.Process != nil {
		_ = s.cmd.Process.Kill()
		_ = s.cmd.Wait()
	}
	os.RemoveAll(s.dir)
}

// serve returns the address of the server itself.
func serve(t *testing.T) string {
	t.Helper()
	s, err := theSite()
	if err != nil {
		t.Fatal(err)
	}
	return s.url
}

// door returns the address of the page at a door of this test's own.
func door(t *testing.T) string {
	t.Helper()
	address, _ := serveUntil(t)
	return address
}

// serveUntil returns such an address and what shuts the door: for the page
// there is no server then.
func serveUntil(t *testing.T) (address string, shut func()) {
	t.Helper()
	to, err := url.Parse(serve(t))
	if err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(httputil.NewSingleHostReverseProxy(to))
	shut = sync.OnceFunc(func() { server.CloseClientConnections(); server.Close() })
	t.Cleanup(shut)
	return server.URL, shut
}
