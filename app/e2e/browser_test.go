//go:build !js

// Package e2e_test opens the page in Chromium as a person would: it builds
// the command, serves, and looks at what is shown.
//
// Without Chromium these tests skip; ULLAGE_REQUIRE_BROWSER=1 makes that a
// failure. ULLAGE_SHOTS=DIR keeps pictures of the page.
package e2e_test

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// patience is how long a page may take on a busy machine; nothing is measured
// by it.
const patience = 3 * time.Minute

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

var buildOnce = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "ullage-e2e-")
	if err != nil {
		return "", err
	}
	bin := filepath.Join(dir, "ullage")
	if out, err := exec.Command("go", "build", "-o", bin, "../../cmd/ullage").CombinedOutput(); err != nil {
		return "", fmt.Errorf("build the command: %w\n%s", err, out)
	}
	return bin, nil
})

func TestMain(m *testing.M) {
	code := m.Run()
	if bin, err := buildOnce(); err == nil {
		os.RemoveAll(filepath.Dir(bin))
	}
	os.Exit(code)
}

// A server is `ullage serve` in a process of its own.
type server struct {
	url  string
	stop func()
}

func serve(t *testing.T) server {
	t.Helper()
	bin, err := buildOnce()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(bin, "serve", "-addr", "127.0.0.1:0")
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	stop := sync.OnceFunc(func() { _ = cmd.Process.Kill(); _ = cmd.Wait() })
	t.Cleanup(stop)
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatalf("ullage serve ended: %v", err)
	}
	_, at, _ := strings.Cut(line, "http://")
	at, _, _ = strings.Cut(at, " ")
	return server{"http://" + at, stop}
}

// A page is one tab of a browser of its own.
type page struct {
	t   *testing.T
	ctx context.Context
	mu  sync.Mutex
	bad []string // errors and refusals that the browser reported
}

// open starts a browser with extra flags and a window of that size.
func open(t *testing.T, width, height int, flags ...chromedp.ExecAllocatorOption) *page {
	t.Helper()
	opts := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromium(t)), chromedp.NoSandbox,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.WindowSize(width, height))
	alloc, cancel := chromedp.NewExecAllocator(context.Background(), append(opts, flags...)...)
	t.Cleanup(cancel)
	ctx, cancel := chromedp.NewContext(alloc)
	t.Cleanup(cancel)
	p := &page{t: t, ctx: ctx}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(int64(width), int64(height))); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Listen(ctx, p.hear); err != nil {
		t.Fatal(err)
	}
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

// until waits for a claim to hold.
func (p *page) until(what, js string) {
	p.t.Helper()
	for end := time.Now().Add(patience); ; {
		v, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool]("Boolean("+js+")"))
		if err == nil && v {
			return
		}
		if time.Now().After(end) {
			p.shot("timeout")
			p.t.Fatalf("waited %v for %s; status: %s; heard: %q; last error: %v", patience, what, p.status(), p.complaints(), err)
		}
		time.Sleep(50 * time.Millisecond)
	}
}

func (p *page) status() string {
	v, _ := chromedp.Run(p.ctx, chromedp.Evaluate[string](
		`(s => s ? s.dataset.state + ": " + s.textContent : "none")(document.querySelector("#status"))`))
	return v
}

// settled: an answer stands, and no better one by road is on its way.
const settled = `(["planned", "refused", "error"].includes(document.querySelector("#status")?.dataset.state) && document.querySelector("#roads")?.dataset.state !== "reading")`

// planned waits until a plan stands, by road where there are roads.
func (p *page) planned() {
	p.t.Helper()
	p.until("a plan", settled)
	if s := p.status(); !strings.HasPrefix(s, "planned") {
		p.shot("no-plan")
		p.t.Fatalf("no plan: %s", s)
	}
}

// offlineReady waits until the service worker has everything and is in charge.
func (p *page) offlineReady() {
	p.t.Helper()
	p.until("the service worker", `navigator.serviceWorker.controller && navigator.serviceWorker.controller.state === "activated"`)
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
