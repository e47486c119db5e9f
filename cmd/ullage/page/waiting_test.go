package page

import (
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

// The waiting page is there at once, is no script's business, is kept by
// nobody, and gives way to the real one at the same address.
func TestWaiting(t *testing.T) {
	var w Waiting
	s := httptest.NewServer(&w)
	defer s.Close()
	get := func(path string) (*http.Response, string) {
		t.Helper()
		r, err := http.Get(s.URL + path)
		if err != nil {
			t.Fatal(err)
		}
		defer r.Body.Close()
		b, err := io.ReadAll(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		return r, string(b)
	}
	w.Say(Words{Title: "Ullage", Now: "Compiling <the page>", Usual: "a minute"})
	r, text := get("/")
	if r.StatusCode != http.StatusServiceUnavailable || r.Header.Get("Cache-Control") != "no-store" || r.Header.Get("Content-Type") != "text/html; charset=utf-8" {
		t.Errorf("status %d, %v", r.StatusCode, r.Header)
	}
	for _, want := range []string{`http-equiv="refresh" content="1"`, "Compiling &lt;the page&gt;", "a minute"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	if p := r.Header.Get("Content-Security-Policy"); !strings.HasPrefix(p, "default-src 'none'") || strings.Contains(text, "<script") || strings.Contains(text, "style=") {
		t.Errorf("policy %q, page %s", p, text)
	}
	if r, text := get("/waiting.css"); r.StatusCode != http.StatusOK || r.Header.Get("Content-Type") != "text/css; charset=utf-8" || text == "" {
		t.Errorf("its style: status %d, %s", r.StatusCode, text)
	}
	if r, _ := get("/app-worker.js"); r.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("what is not there yet has status %d", r.StatusCode)
	}
	w.Ready(Handler(map[string][]byte{"index.html": []byte("the page")}))
	if r, text := get("/"); r.StatusCode != http.StatusOK || text != "the page" {
		t.Errorf("when it is ready: status %d, %s", r.StatusCode, text)
	}
}

// What go build says becomes steps; complaints stay.
func TestFollow(t *testing.T) {
	var steps []Step
	complaints := follow(strings.NewReader("go: downloading github.com/paulmach/orb v0.14.0\ninternal/goarch\nullage/geo\nullage/cmd/client\n# ullage/geo\ngeo/line.go:3:1: syntax error\n"), func(s Step) { steps = append(steps, s) })
	want := []Step{{Fetching, 1}, {Compiling, 1}, {Compiling, 2}, {Linking, 0}}
	if len(steps) != len(want) {
		t.Fatalf("steps %v, want %v", steps, want)
	}
	for i := range want {
		if steps[i] != want[i] {
			t.Errorf("step %d is %v, want %v", i, steps[i], want[i])
		}
	}
	if strings.Join(complaints, "|") != "# ullage/geo|geo/line.go:3:1: syntax error" {
		t.Errorf("complaints %q", complaints)
	}
}
