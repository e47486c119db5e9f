package page

import (
	"embed"
	"html/template"
	"net/http"
	"sync/atomic"
)

//go:embed waiting.html waiting.css
var waitingFiles embed.FS

var waitingPage = template.Must(template.ParseFS(waitingFiles, "waiting.html"))

// Words are what the waiting page says.
type Words struct {
	Title string
	Now   string // what is being done
	Usual string // how long that usually takes
}

// A Waiting answers from the first moment on: with a page that says what is being
// done and loads itself again each second, until there is the real one. Only the
// browser's own refresh is used: the policy allows no script here either.
type Waiting struct {
	words atomic.Pointer[Words]
	ready atomic.Pointer[http.Handler]
}

// Say changes what the waiting page says.
func (w *Waiting) Say(words Words) { w.words.Store(&words) }

// Ready puts the real page in the place of the waiting one.
func (w *Waiting) Ready(h http.Handler) { w.ready.Store(&h) }

func (w *Waiting) ServeHTTP(out http.ResponseWriter, r *http.Request) {
	if h := w.ready.Load(); h != nil {
		(*h).ServeHTTP(out, r)
		return
	}
	h := out.Header()
	strict(h)
	h.Set("Cache-Control", "no-store") // nobody may keep this in place of the page
	switch r.URL.Path {
	case "/waiting.css":
		h.Set("Content-Type", mediaType("waiting.css"))
		b, _ := waitingFiles.ReadFile("waiting.css")
		_, _ = out.Write(b)
	case "/", "/index.html":
		words := w.words.Load()
		if words == nil {
			words = &Words{}
		}
		// Not 200: a service worker of an earlier page must not take it for a new one.
		h.Set("Retry-After", "1")
		h.Set("Content-Type", mediaType("index.html"))
		out.WriteHeader(http.StatusServiceUnavailable)
		_ = waitingPage.Execute(out, words) // the reader went away: nobody to tell
	default:
		h.Set("Retry-After", "1")
		http.Error(out, "not ready", http.StatusServiceUnavailable)
	}
}
