package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/andybalholm/brotli"
)

// siteMark is the file by which a folder is known as one of ours.
const siteMark = "ullage-site.txt"

// siteText begins it; the paths of all files follow, one a line.
const siteText = `Written by: ullage site. The next run removes the files listed here and writes them again.
Serve this folder at the root of a host name over https. The page needs these media types:
.wasm application/wasm, .js and .mjs text/javascript, .svg image/svg+xml, .webmanifest application/manifest+json.
The .br files are for hosts that send packed files (Content-Encoding: br). Licences: web/licences.txt, web/maplibre/LICENSE.txt.
`

// site writes the page as static files.
func site(args []string, stdout, stderr io.Writer) int {
	fset := flag.NewFlagSet("ullage site", flag.ContinueOnError)
	fset.SetOutput(stderr)
	out := fset.String("out", "", "folder to write; empty, not there yet, or an earlier site")
	quality := fset.Int("brotli", brotli.BestCompression, "quality of the packed .br files, 0 to 11; -1: none")
	if err := fset.Parse(args); err != nil {
		return flagExit(err)
	}
	if *out == "" || fset.NArg() > 0 || *quality < -1 || *quality > brotli.BestCompression {
		fmt.Fprintln(stderr, "ullage site: say where to write: ullage site -out DIR [-brotli 0…11, or -1 for no packed files]")
		return exitUsage
	}
	if err := checkFolder(*out); err != nil {
		fmt.Fprintf(stderr, "ullage site: %v\n", err)
		return exitUsage
	}
	client, err := buildClient()
	var files map[string][]byte
	if err == nil {
		files, err = pages(client)
	}
	if err == nil {
		err = writeFiles(*out, files, *quality, stdout)
	}
	if err != nil {
		fmt.Fprintf(stderr, "ullage site: %v\n", err)
		return exitUsage
	}
	return exitOK
}

// checkFolder refuses a folder that holds anything but an earlier site.
func checkFolder(dir string) error {
	ours := map[string]bool{siteMark: true}
	if b, err := os.ReadFile(filepath.Join(dir, siteMark)); err == nil {
		for _, name := range strings.Split(string(b), "\n") {
			ours[name] = true
		}
	}
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, p)
		if err == nil && !ours[filepath.ToSlash(name)] {
			err = fmt.Errorf("%s holds %s, which is not of an earlier site; give an empty folder", dir, name)
		}
		return err
	})
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// writeFiles writes the files, each with a packed one beside it, and says
// what a visitor loads.
func writeFiles(dir string, files map[string][]byte, quality int, stdout io.Writer) error {
	if err := clearSite(dir); err != nil {
		return err
	}
	written := []string{siteText}
	var raw, packed int
	for _, name := range sorted(files) {
		b := files[name]
		p := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(p, b, 0o644); err != nil {
			return err
		}
		small := len(b)
		if quality >= 0 && packs(name) {
			z, err := pack(b, quality)
			if err != nil {
				return fmt.Errorf("pack %s: %w", name, err)
			}
			if err := os.WriteFile(p+".br", z, 0o644); err != nil {
				return err
			}
			small = len(z)
			written = append(written, name+".br")
		}
		written = append(written, name)
		if name == "web/app.wasm" {
			fmt.Fprintf(stdout, "%-14s %9d bytes, packed %8d\n", name, len(b), small)
		}
		raw, packed = raw+len(b), packed+small
	}
	fmt.Fprintf(stdout, "%-14s %9d bytes, packed %8d, in %s\n", "all files", raw, packed, dir)
	return os.WriteFile(filepath.Join(dir, siteMark), []byte(strings.Join(written, "\n")+"\n"), 0o644)
}

// clearSite removes an earlier site, so that no file of it stays behind. The
// mark stays until it is written anew: a broken run can be repeated.
func clearSite(dir string) error {
	if err := checkFolder(dir); err != nil {
		return err
	}
	b, err := os.ReadFile(filepath.Join(dir, siteMark))
	if err != nil {
		return nil // an empty folder
	}
	for _, name := range strings.Split(string(b), "\n") {
		if filepath.IsLocal(name) && name != siteMark {
			if err := os.Remove(filepath.Join(dir, filepath.FromSlash(name))); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return err
			}
		}
	}
	return nil
}

// pack compresses with brotli (RFC 7932) at a quality of 0 to 11.
func pack(b []byte, quality int) ([]byte, error) {
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: quality, LGWin: 24})
	if _, err := w.Write(b); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
