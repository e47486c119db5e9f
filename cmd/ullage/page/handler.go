package page

import (
	"crypto/sha256"
	"fmt"
	"net/http"
	"path"
	"strings"
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

// Handler serves files by path, strictly: own origin only, right media
// types, each file revalidated by its content.
func Handler(files map[string][]byte) http.Handler {
	tags := map[string]string{}
	for name, b := range files {
		tags[name] = fmt.Sprintf(`"%x"`, sha256.Sum256(b))
	}
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
		b, ok := files[name]
		if !ok {
			http.NotFound(w, r)
			return
		}
		h.Set("Cache-Control", "no-cache")
		h.Set("ETag", tags[name])
		if r.Header.Get("If-None-Match") == tags[name] {
			w.WriteHeader(http.StatusNotModified)
			return
		}
		h.Set("Content-Type", mediaType(name))
		h.Set("Content-Length", fmt.Sprint(len(b)))
		if r.Method == http.MethodGet {
			_, _ = w.Write(b) // the reader went away: nobody to tell
		}
	})
}

// strict sets what every answer says, the waiting page's too.
func strict(h http.Header) {
	h.Set("Content-Security-Policy", policy+"; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Permissions-Policy", "geolocation=(self), camera=(), microphone=()")
}
