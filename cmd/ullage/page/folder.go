package page

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// siteMark is the file by which a folder is known as one of ours.
const siteMark = "ullage-site.txt"

// siteText begins it; the paths of all files follow, one a line.
const siteText = `Written by: ullage site. The next run removes the files listed here and writes them again.
Serve this folder at the root of a host name over https. The page needs these media types:
.wasm application/wasm, .js and .mjs text/javascript, .svg image/svg+xml, .webmanifest application/manifest+json.
The .br files are for hosts that send packed files (Content-Encoding: br). Licences: web/licences.txt, web/maplibre/LICENSE.txt.
`

// CheckFolder refuses a folder that holds anything but an earlier site.
func CheckFolder(dir string) error {
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

// clearSite removes an earlier site, so that no file of it stays behind. The
// mark stays until it is written anew: a broken run can be repeated.
func clearSite(dir string) error {
	if err := CheckFolder(dir); err != nil {
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

// WriteOptions say how a site is written. The zero value packs quickly.
type WriteOptions struct {
	Quality int               // of the packed files beside the others, 0 to 11; -1: none
	Packing func(name string) // called before a file is packed, which can take a while; nil: not called
}

// Sizes are the bytes of a site: what a visitor loads.
type Sizes struct{ Program, ProgramPacked, All, AllPacked int }

// WriteFiles writes the files, each with a packed one beside it.
func WriteFiles(dir string, files map[string][]byte, opt WriteOptions) (Sizes, error) {
	var sum Sizes
	if err := clearSite(dir); err != nil {
		return sum, err
	}
	written := []string{siteText}
	for _, name := range sorted(files) {
		names, size, err := opt.write(filepath.Join(dir, filepath.FromSlash(name)), name, files[name])
		if err != nil {
			return sum, err
		}
		written = append(written, names...)
		sum.All, sum.AllPacked = sum.All+len(files[name]), sum.AllPacked+size
		if name == programName {
			sum.Program, sum.ProgramPacked = len(files[name]), size
		}
	}
	return sum, os.WriteFile(filepath.Join(dir, siteMark), []byte(strings.Join(written, "\n")+"\n"), 0o644)
}

// write writes one file to p, and a packed one beside it. It returns what of the
// site was written, and how many bytes a visitor loads.
func (opt WriteOptions) write(p, name string, b []byte) (written []string, size int, err error) {
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		return nil, 0, err
	}
	if err := os.WriteFile(p, b, 0o644); err != nil {
		return nil, 0, err
	}
	if opt.Quality < 0 || !packs(name) {
		return []string{name}, len(b), nil
	}
	if opt.Packing != nil {
		opt.Packing(name)
	}
	z, err := Pack(b, opt.Quality)
	if err != nil {
		return nil, 0, fmt.Errorf("pack %s: %w", name, err)
	}
	return []string{name + ".br", name}, len(z), os.WriteFile(p+".br", z, 0o644)
}
