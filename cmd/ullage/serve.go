package main

import (
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
)

// serve builds the page and serves it on this machine.
func serve(args []string, stdout, stderr io.Writer) int {
	fs := flag.NewFlagSet("ullage serve", flag.ContinueOnError)
	fs.SetOutput(stderr)
	addr := fs.String("addr", "127.0.0.1:8080", "address to listen on; port 0 takes any free one")
	if err := fs.Parse(args); err != nil {
		return flagExit(err)
	}
	if fs.NArg() > 0 {
		fmt.Fprintf(stderr, "ullage serve: unexpected %q; try: ullage serve -addr 127.0.0.1:8080\n", fs.Arg(0))
		return exitUsage
	}
	l, err := net.Listen("tcp", *addr)
	if err != nil {
		fmt.Fprintf(stderr, "ullage serve: %v; another port: ullage serve -addr 127.0.0.1:0\n", err)
		return exitUsage
	}
	defer l.Close()
	fmt.Fprintln(stderr, "ullage serve: building the page …")
	client, err := buildClient()
	if err != nil {
		fmt.Fprintf(stderr, "ullage serve: %v\n", err)
		return exitUsage
	}
	files, err := pages(client)
	if err != nil {
		fmt.Fprintf(stderr, "ullage serve: %v\n", err)
		return exitUsage
	}
	if h, _, _ := net.SplitHostPort(l.Addr().String()); !net.ParseIP(h).IsLoopback() {
		fmt.Fprintln(stderr, "ullage serve: this address can be reached from other machines; offline use needs https there")
	}
	fmt.Fprintf(stdout, "Ullage is at http://%s/ (end with Ctrl-C)\n", l.Addr())
	err = http.Serve(l, siteHandler(files))
	if err != nil && !errors.Is(err, http.ErrServerClosed) {
		fmt.Fprintf(stderr, "ullage serve: %v\n", err)
		return exitUsage
	}
	return exitOK
}

// flagExit is the exit code after flags were not understood; help is not a
// mistake.
func flagExit(err error) int {
	if errors.Is(err, flag.ErrHelp) {
		return exitOK
	}
	return exitUsage
}

// siteHandler serves files by path, strictly: own origin only, right media
// types, each file revalidated by its content.
func siteHandler(files map[string][]byte) http.Handler {
	tags := map[string]string{}
	for name, b := range files {
		tags[name] = fmt.Sprintf(`"%x"`, sha256.Sum256(b))
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy+"; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Permissions-Policy", "geolocation=(self), camera=(), microphone=()")
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
