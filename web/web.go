// Package web holds the static files of the page: style, icons, the few lines
// of JavaScript that cannot be Go, and the vendored map library.
//
// maplibre/ is the distribution of the npm package maplibre-gl 6.17.0
// (BSD-3-Clause, maplibre/LICENSE.txt), unchanged; SHA256SUMS in it is
// checked by a test. Files are served below /web/ under their path here.
package web

import (
	"embed"
	"io/fs"
	"path"
	"sort"
)

//go:embed *.css *.js *.mjs *.svg *.png *.txt maplibre
var files embed.FS

// ServiceWorker is the template of the service worker; it is not served as it
// is.
//
//go:embed service-worker.js
var ServiceWorker string

// Files returns the static files by path: "ullage.css", "maplibre/maplibre-gl.mjs".
func Files() map[string][]byte {
	out := map[string][]byte{}
	err := fs.WalkDir(files, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || p == "service-worker.js" {
			return err
		}
		out[p], err = files.ReadFile(p)
		return err
	})
	if err != nil {
		panic("web: embedded files cannot be read: " + err.Error())
	}
	return out
}

// Cacheable returns the paths that the page needs to run, sorted: what the
// service worker keeps. The map library asks for its worker with its version
// behind a question mark, and the cache matches whole addresses.
func Cacheable() []string {
	var out []string
	for p := range Files() {
		switch {
		case p == "maplibre/maplibre-gl-worker.mjs":
			out = append(out, p+"?v="+MapLibreVersion)
		case path.Ext(p) != ".txt" && path.Base(p) != "SHA256SUMS":
			out = append(out, p)
		}
	}
	sort.Strings(out)
	return out
}

// MapLibreVersion is the version of the vendored map library.
const MapLibreVersion = "6.17.0"
