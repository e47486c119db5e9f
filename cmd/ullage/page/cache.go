package page

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"slices"
	"time"

	"ullage/cmd/ullage/whole"
)

// keptFiles is how many built and packed files stay: some versions of each.
const keptFiles = 24

// cacheDir is where what was built is kept: in the user's cache, else among
// temporary files.
func cacheDir() string {
	dir, err := os.UserCacheDir()
	if err != nil {
		dir = os.TempDir()
	}
	return filepath.Join(dir, "ullage")
}

// kept returns the file of a name, which must tell its content; it is made if it
// is not there. A cache that cannot be written is no reason to fail.
func kept(name string, make func() ([]byte, error)) ([]byte, error) {
	dir := filepath.Join(cacheDir(), "built")
	file := filepath.Join(dir, name)
	if b, err := os.ReadFile(file); err == nil && len(b) > 0 {
		now := time.Now()
		_ = os.Chtimes(file, now, now) // in use: it is not the oldest
		return b, nil
	}
	b, err := make()
	if err != nil {
		return nil, err
	}
	if os.MkdirAll(dir, 0o755) == nil && writeIfOther(file, b) == nil {
		forgetOldest(dir)
	}
	return b, nil
}

// forgetOldest leaves the newest files of a folder.
func forgetOldest(dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) <= keptFiles {
		return
	}
	age := func(e os.DirEntry) time.Time {
		i, err := e.Info()
		if err != nil {
			return time.Time{}
		}
		return i.ModTime()
	}
	slices.SortFunc(entries, func(a, b os.DirEntry) int { return age(a).Compare(age(b)) })
	for _, e := range entries[:len(entries)-keptFiles] {
		_ = os.Remove(filepath.Join(dir, e.Name()))
	}
}

// writeIfOther leaves a file alone that holds b already, and else replaces it
// at once: another build may read it meanwhile.
func writeIfOther(name string, b []byte) error {
	if was, err := os.ReadFile(name); err == nil && bytes.Equal(was, b) {
		return nil
	}
	return whole.File(name, func(w io.Writer) error { _, err := w.Write(b); return err })
}
