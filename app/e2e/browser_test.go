//go:build !js

// Package e2e_test opens the page in Chromium as a person would: it builds
// the command, serves, and looks at what is shown.
//
// Without Chromium these tests skip; ULLAGE_REQUIRE_BROWSER=1 makes that a
// failure. ULLAGE_SHOTS=DIR keeps pictures of the page.
package e2e_test

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// chromium returns the browser or skips.
func chromium(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			return p
		}
	}
	if os.Getenv("ULLAGE_REQUIRE_BROWSER") == "1" {
		t.Fatal("ULLAGE_REQUIRE_BROWSER=1, but there is no Chromium on the PATH")
	}
	t.Skip("no Chromium on the PATH: what a browser shows is not tested (Debian: apt install chromium)")
	return ""
}

// launch starts a browser with extra flags.
func launch(path string, flags ...chromedp.ExecAllocatorOption) (context.Context, func(), error) {
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-quic", true), chromedp.Flag("process-per-site", true), chromedp.Flag("disable-component-update", true))
	if !*measured { // nobody sees what moves, and painting it takes a tenth of the time
		opts = append(opts, chromedp.Flag("force-prefers-reduced-motion", true))
	}
	alloc, end := chromedp.NewExecAllocator(context.Background(), append(opts, flags...)...)
	ctx, cancel := chromedp.NewContext(alloc)
	if err := chromedp.Do(ctx); err != nil {
		cancel()
		end()
		return nil, nil, fmt.Errorf("start %s: %w", path, err)
	}
	return ctx, func() {
		within, stop := context.WithTimeout(ctx, 10*time.Second)
		defer stop()
		_ = chromedp.Cancel(within) // asks first: what it used is then counted as ours
		cancel()
		end()
	}, nil
}

// theBrowser is the one browser of all tests but those that need other flags.
var theBrowser struct {
	once sync.Once
	ctx  context.Context
	end  func()
	err  error
}

func chrome(t *testing.T) context.Context {
	t.Helper()
	path := chromium(t)
	b := &theBrowser
	b.once.Do(func() { b.ctx, b.end, b.err = launch(path) })
	if b.err != nil {
		t.Fatal(b.err)
	}
	return b.ctx
}

func TestMain(m *testing.M) {
	code := m.Run()
	if theBrowser.end != nil {
		theBrowser.end()
	}
	if s, _ := theSite(); s != nil {
		s.end()
	}
	os.Exit(code)
}

// A seat is a browser context for one page at a time. Every page has an origin
// of its own, a port, so nothing is kept of another; but all are of one site,
// whose process keeps the program compiled.
type seat struct {
	once sync.Once
	ctx  context.Context // of the tab that keeps the program
	err  error
}

// Two pages are open at a time: more would only wait for a processor, and
// longer than anybody's patience.
var seats = func() chan *seat {
	c := make(chan *seat, 2)
	for range cap(c) {
		c <- new(seat)
	}
	return c
}()

// compile lets a tab keep the program, as long as the browser lives.
func (s *seat) compile(browser context.Context, url string) {
	s.ctx, _ = chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	if s.err = chromedp.Do(s.ctx, chromedp.Navigate(url+"/web/licences.txt")); s.err == nil {
		_, s.err = chromedp.Run(s.ctx, chromedp.Evaluate[bool](
			`WebAssembly.compileStreaming(fetch("/web/app.wasm")).then(program => Boolean(window.program = program))`, chromedp.EvalAwaitPromise))
	}
}

// take waits for a seat until the test ends.
func take(t *testing.T) *seat {
	t.Helper()
	chromium(t)
	t.Parallel()
	s := <-seats
	t.Cleanup(func() { seats <- s })
	return s
}

// A page is one tab of a browser, at an origin where nothing is kept.
type page struct {
	t   *testing.T
	ctx context.Context
	url string // its door; "" before its first visit
	mu  sync.Mutex
	bad []string // errors and refusals that the browser reported
}

// open opens a tab of that size beside those of other tests.
func open(t *testing.T, width, height int) *page {
	t.Helper()
	s := take(t)
	url, browser := serve(t), chrome(t)
	s.once.Do(func() { s.compile(browser, url) })
	if s.err != nil {
		t.Fatal(s.err)
	}
	return openIn(t, s.ctx, width, height)
}

// openNew opens a tab in a browser context of its own: all that a first visit
// does is done.
func openNew(t *testing.T, width, height int) *page {
	t.Helper()
	take(t)
	return openIn(t, chrome(t), width, height, chromedp.WithNewBrowserContext())
}

// openAlone opens a tab while no other test has one: to measure.
func openAlone(t *testing.T, width, height int) *page {
	t.Helper()
	return openIn(t, chrome(t), width, height, chromedp.WithNewBrowserContext())
}

// openWithoutWebGL opens a tab in a browser of its own that has no WebGL2.
func openWithoutWebGL(t *testing.T, width, height int) *page {
	t.Helper()
	take(t)
	ctx, end, err := launch(chromium(t), chromedp.Flag("disable-gpu", true), chromedp.Flag("disable-software-rasterizer", true))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(end)
	return openIn(t, ctx, width, height, chromedp.WithNewBrowserContext())
}

func openIn(t *testing.T, parent context.Context, width, height int, opts ...chromedp.ContextOption) *page {
	t.Helper()
	p := &page{t: t}
	ctx, cancel := chromedp.NewContext(parent, append(opts, chromedp.WithListener(p.hear))...)
	t.Cleanup(cancel)
	p.ctx = ctx
	p.do(chromedp.EmulateViewport(int64(width), int64(height)))
	p.beforeScripts(watchAsked)
	return p
}

// hear keeps exceptions, errors of the console and refusals by the policy.
func (p *page) hear(ev any) {
	var text string
	switch e := ev.(type) {
	case *runtime.EventExceptionThrown:
		text = "exception: " + e.ExceptionDetails.Text
		if x := e.ExceptionDetails.Exception; x != nil {
			text += " " + x.Description
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			text = fmt.Sprintf("%s: %s %s", e.Entry.Source, e.Entry.Text, e.Entry.URL)
		}
	}
	if text != "" {
		p.mu.Lock()
		p.bad = append(p.bad, text)
		p.mu.Unlock()
	}
}

// complaints returns what was heard so far and forgets it.
func (p *page) complaints() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	bad := p.bad
	p.bad = nil
	return bad
}

func (p *page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, steps...); err != nil {
		p.t.Fatal(err)
	}
}

func eval[T any](p *page, js string) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](js, chromedp.EvalAwaitPromise))
	if err != nil {
		p.t.Fatalf("%s: %v", js, err)
	}
	return v
}

// shot keeps a picture if ULLAGE_SHOTS names a folder.
func (p *page) shot(name string) {
	dir := os.Getenv("ULLAGE_SHOTS")
	if dir == "" {
		return
	}
	b, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, name+".png"), b, 0o644)
	}
	if err != nil {
		p.t.Logf("no picture %s: %v", name, err)
	}
}

// shared returns a file of the shared data or skips.
func shared(t *testing.T, path string) string {
	t.Helper()
	p, err := filepath.Abs(filepath.Join("../../../shared", path))
	if err == nil {
		_, err = os.Stat(p)
	}
	if err != nil {
		t.Skipf("open data are not beside the project, as ../shared/data: %v", err)
	}
	return p
}
