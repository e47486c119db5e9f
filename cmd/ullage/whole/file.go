package whole

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File makes a file of what write writes, or replaces it by that. Until write is done and its bytes are on the disk, the
// file is as it was before; after an error too. A link stays one, and so do a file's permissions; what is no plain
// file, as /dev/stdout, is written to.
func File(name string, write func(io.Writer) error) error {
	return fileOn(system{}, name, write)
}

func fileOn(d disk, name string, write func(io.Writer) error) error {
	if to, err := filepath.EvalSymlinks(name); err == nil {
		name = to
	}
	mode := fs.FileMode(0o666) // less what the user takes away
	if info, err := os.Stat(name); err == nil {
		if info.IsDir() {
			return fmt.Errorf("%s is a folder; give the name of a file", name)
		}
		if !info.Mode().IsRegular() {
			return into(name, write)
		}
		mode = info.Mode().Perm()
	}
	_, old := left(name, "new")
	for _, p := range old {
		_ = d.removeAll(p) // in nobody's way
	}
	next := beside(name, "new")
	if err := fill(d, next, mode, write); err != nil {
		return errors.Join(err, d.removeAll(next))
	}
	if err := d.rename(next, name); err != nil {
		return errors.Join(err, d.removeAll(next))
	}
	return d.sync(filepath.Dir(name))
}

// into writes to what cannot be replaced.
func into(name string, write func(io.Writer) error) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return errors.Join(write(f), f.Close())
}

// fill makes a file whose bytes are on the disk.
func fill(d disk, name string, mode fs.FileMode, write func(io.Writer) error) error {
	f, err := d.create(name, mode)
	if err != nil {
		return err
	}
	if err := write(f); err != nil {
		return errors.Join(err, f.Close())
	}
	if err := f.Sync(); err != nil {
		return errors.Join(err, f.Close())
	}
	return f.Close()
}
