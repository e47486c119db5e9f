package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"net/http"
	"path"
	"strconv"
	"strings"
	"sync"
	"time"
)

// mediaType returns the type that a browser must see, by the file's ending.
// The program and the modules do not start with any other.
func mediaType(name string) string {
	t, ok := map[string]string{
		".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
		".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
		".wasm": "application/wasm", ".webmanifest": "application/manifest+json",
		".svg": "image/svg+xml", ".png": "image/png", ".geojson": "application/geo+json",
		".txt": "text/plain; charset=utf-8", ".pbf": "application/octet-stream",
	}[path.Ext(name)]
	if !ok {
		return "application/octet-stream"
	}
	return t
}

// A served file is plain, and packed for who takes that.
type served struct {
	plain  []byte
	tag    string
	packed func() []byte // nil: not packed
}

// quickly is the quality at which files are packed while somebody waits: the program in half a second.
const quickly = 4

func serving(files map[string][]byte) map[string]served {
	out := make(map[string]served, len(files))
	for name, b := range files {
		f := served{plain: b, tag: fmt.Sprintf("%x", sha256.Sum256(b)), packed: func() []byte { return nil }}
		if packs(name) {
			f.packed = sync.OnceValue(func() []byte {
				z, err := Pack(b, quickly)
				if err != nil || len(z) >= len(b) {
					return nil // as it is, then
				}
				return z
			})
		}
		out[name] = f
	}
	return out
}

// Handler serves files by path, strictly: own origin only, right media types,
// each file revalidated by its content, packed for who takes brotli. Conditions and
// ranges are the standard library's.
func Handler(files map[string][]byte) http.Handler {
	all := serving(files)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		strict(h)
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(r.URL.Path, "/")
		if name == "" {
			name = "index.html"
		}
		f, ok := all[name]
		if !ok {
			http.NotFound(w, r)
			return
		}
		h.Set("Cache-Control", "no-cache")
		h.Set("Content-Type", mediaType(name))
		b, tag := f.plain, f.tag
		if packs(name) {
			h.Set("Vary", "Accept-Encoding")
			if z := []byte(nil); accepts(r.Header.Get("Accept-Encoding"), "br") {
				if z = f.packed(); z != nil {
					b, tag = z, tag+"-br"
					h.Set("Content-Encoding", "br")
				}
			}
		}
		h.Set("ETag", strconv.Quote(tag))
		http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(b))
	})
}

// accepts reads Accept-Encoding (RFC 9110, 12.5.3): a coding is taken if it is named, and not with a weight of 0.
func accepts(header, coding string) bool {
	for item := range strings.SplitSeq(header, ",") {
		name, weight, weighed := strings.Cut(item, ";")
		if !strings.EqualFold(strings.TrimSpace(name), coding) {
			continue
		}
		q, err := strconv.ParseFloat(strings.TrimPrefix(strings.TrimSpace(weight), "q="), 64)
		return !weighed || err == nil && q > 0
	}
	return false
}

// strict sets what every answer says, the waiting page's too.
func strict(h http.Header) {
	h.Set("Content-Security-Policy", policy+"; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Permissions-Policy", "geolocation=(self), camera=(), microphone=()")
}
