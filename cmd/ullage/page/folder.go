package page

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ullage/cmd/ullage/whole"
)

// siteMark is the file by which a folder is known as one of ours.
const siteMark = "ullage-site.txt"

// siteText begins it; the paths of all files follow, one a line.
const siteText = `Written by: ullage site. The next run replaces this folder; it holds the files listed here and no others.
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

// WriteOptions say how a site is written. The zero value packs quickly.
type WriteOptions struct {
	Quality int               // of the packed files beside the others, 0 to 11; -1: none
	Packing func(name string) // called before a file is packed, which can take a while; nil: not called
}

// Sizes are the bytes of a site: what a visitor loads.
type Sizes struct{ Program, ProgramPacked, All, AllPacked int }

// WriteFiles writes the files, each with a packed one beside it, in place of an
// earlier site. Until all are written that stays as it was.
func WriteFiles(dir string, files map[string][]byte, opt WriteOptions) (Sizes, error) {
	var sum Sizes
	if err := CheckFolder(dir); err != nil {
		return sum, err
	}
	err := whole.Folder(dir, func(put whole.Put) error {
		names, packed, err := opt.packed(files)
		if err != nil {
			return err
		}
		// The mark comes first: what a killed run leaves says what it is.
		if err := put(siteMark, []byte(siteText+strings.Join(names, "\n")+"\n")); err != nil {
			return err
		}
		for _, name := range names {
			b, plain := files[name]
			if !plain {
				b = packed[name]
			}
			if err := put(name, b); err != nil {
				return err
			}
		}
		sum = sizesOf(files, packed)
		return nil
	})
	return sum, err
}

// packed are the names of all files of a site, and those of them that are packed.
func (opt WriteOptions) packed(files map[string][]byte) (names []string, packed map[string][]byte, err error) {
	packed = map[string][]byte{}
	for _, name := range sorted(files) {
		names = append(names, name)
		if opt.Quality < 0 || !packs(name) {
			continue
		}
		if opt.Packing != nil {
			opt.Packing(name)
		}
		z, err := Pack(files[name], opt.Quality)
		if err != nil {
			return nil, nil, fmt.Errorf("pack %s: %w", name, err)
		}
		names = append(names, name+".br")
		packed[name+".br"] = z
	}
	return names, packed, nil
}

// sizesOf are the bytes that a visitor loads.
func sizesOf(files, packed map[string][]byte) (sum Sizes) {
	for name, b := range files {
		size := len(b)
		if z, there := packed[name+".br"]; there {
			size = len(z)
		}
		sum.All, sum.AllPacked = sum.All+len(b), sum.AllPacked+size
		if name == programName {
			sum.Program, sum.ProgramPacked = len(b), size
		}
	}
	return sum
}
