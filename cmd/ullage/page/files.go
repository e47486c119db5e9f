package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"regexp"
	"sort"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	page "ullage/app"
	"ullage/data/demo"
	"ullage/data/tripfile"
	"ullage/web"
)

// programName is the path of the program in the site.
const programName = "web/app.wasm"

// Files returns every file of the site by its path from the root
// ("index.html", "web/app.wasm"), made around the client program. The same
// program and sources give a site of the same version. go-app keeps its routes:
// it is called once in a process.
func Files(client []byte) (map[string][]byte, error) {
	out := map[string][]byte{programName: client}
	for name, b := range web.Files() {
		out["web/"+name] = b
	}
	out["web/demo.osm.pbf"] = demo.Extract()
	var trip bytes.Buffer
	if err := tripfile.Write(&trip, demo.Trip()); err != nil {
		return nil, err
	}
	out["web/demo.trip.geojson"] = trip.Bytes()

	app.Route("/", func() app.Composer { return &page.Page{} })
	h := handler(version(out), len(client))
	for name, at := range map[string]string{
		"index.html": "/", "app.js": "/app.js", "app.css": "/app.css", "app-worker.js": "/app-worker.js",
		"wasm_exec.js": "/wasm_exec.js", "manifest.webmanifest": "/manifest.webmanifest",
	} {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://ullage.invalid"+at, nil))
		if w.Code != http.StatusOK {
			return nil, fmt.Errorf("make %s: status %d", name, w.Code)
		}
		out[name] = w.Body.Bytes()
	}
	return out, finish(out)
}

// handler describes the page to go-app.
func handler(version string, size int) *app.Handler {
	h := &app.Handler{
		Name: "Ullage", ShortName: "Ullage", Title: "Ullage", Lang: "en",
		Description: "Plans where a motorhome refuels, fills, drains and spends the nights.",
		Author:      "The Ullage authors",
		Icon: app.Icon{Default: "/web/icon-192.png", Large: "/web/icon-512.png",
			Maskable: "/web/icon-512.png", SVG: "/web/mark.svg"},
		BackgroundColor: "#12343b", ThemeColor: "#12343b",
		LoadingLabel:          "Loading {progress} %",
		Styles:                []string{"/web/maplibre/maplibre-gl.css", "/web/ullage.css"},
		RawHeaders:            []string{`<script type="module" src="/web/glue.mjs"></script>`},
		ServiceWorkerTemplate: web.ServiceWorker,
		Version:               version,
		WasmContentLength:     strconv.Itoa(size),
		CacheableResources:    []string{"/web/demo.osm.pbf", "/web/demo.trip.geojson"},
	}
	for _, p := range web.Cacheable() {
		h.CacheableResources = append(h.CacheableResources, "/web/"+p)
	}
	return h
}

// version is a hash of the files: another content, another version.
func version(files map[string][]byte) string {
	h := sha256.New()
	for _, name := range sorted(files) {
		fmt.Fprintf(h, "%s %d\n", name, len(files[name]))
		h.Write(files[name])
	}
	return fmt.Sprintf("%x", h.Sum(nil)[:8])
}

var nowhere = regexp.MustCompile(`(?m)^.*"https://".*\n`)

// finish sets right what go-app writes: the storage script must run before
// the program, the policy must stand before the first script for hosts that
// send no headers of their own, the manifest should have an identity.
func finish(files map[string][]byte) error {
	// Addresses of the page and a picture of it, for a host name nobody gave.
	index := nowhere.ReplaceAllString(string(files["index.html"]), "")
	const head = "<head>"
	if strings.Count(index, head) != 1 {
		return fmt.Errorf("make index.html: it has no <head> to put the policy into")
	}
	first := head + "\n" + `<meta http-equiv="Content-Security-Policy" content="` + policy + `">` +
		"\n" + `<script src="/web/storage.js"></script>`
	files["index.html"] = []byte(strings.Replace(index, head, first, 1))

	var m map[string]any
	if err := json.Unmarshal(files["manifest.webmanifest"], &m); err != nil {
		return fmt.Errorf("make manifest.webmanifest: %w", err)
	}
	m["id"] = "/"
	b, err := json.Marshal(m)
	files["manifest.webmanifest"] = b
	return err
}

func sorted(files map[string][]byte) []string {
	var names []string
	for name := range files {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
