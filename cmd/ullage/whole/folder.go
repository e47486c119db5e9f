package whole

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
)

// A Put writes one file of a folder, by its path with slashes.
type Put func(name string, b []byte) error

// Folder makes a folder of what fill puts, or replaces it by that: all of the old one is gone then. Until all bytes are on
// the disk it is as it was before; after an error too. A link to a folder stays one.
func Folder(name string, fill func(Put) error) error {
	return folderOn(system{}, name, fill)
}

func folderOn(d disk, name string, fill func(Put) error) error {
	name, err := filepath.Abs(name)
	if err != nil {
		return err
	}
	if to, err := filepath.EvalSymlinks(name); err == nil {
		name = to
	}
	if err := restore(d, name); err != nil {
		return err
	}
	if err := d.mkdir(filepath.Dir(name)); err != nil {
		return err
	}
	next := beside(name, "new")
	if err := stage(d, next, fill); err != nil {
		return errors.Join(err, d.removeAll(next))
	}
	if err := replace(d, next, name); err != nil {
		return errors.Join(err, d.removeAll(next))
	}
	return nil
}

// restore gives an old folder its name back that a run was killed with on the way, and removes what was left.
func restore(d disk, name string) error {
	_, abandonedNew := left(name, "new")
	was, abandonedOld := left(name, "old")
	if _, err := os.Lstat(name); errors.Is(err, fs.ErrNotExist) && len(was) > 0 {
		if err := d.rename(was[0], name); err != nil {
			return err
		}
	}
	for _, p := range append(abandonedNew, abandonedOld...) {
		if err := d.removeAll(p); err != nil {
			return err
		}
	}
	return nil
}

// stage makes a folder with all its bytes on the disk.
func stage(d disk, dir string, put func(Put) error) error {
	if err := d.mkdir(dir); err != nil {
		return err
	}
	folders := map[string]bool{dir: true}
	err := put(func(name string, b []byte) error {
		p := filepath.Join(dir, filepath.FromSlash(name))
		if parent := filepath.Dir(p); !folders[parent] {
			for q := name; path.Dir(q) != "."; q = path.Dir(q) {
				folders[filepath.Join(dir, filepath.FromSlash(path.Dir(q)))] = true
			}
			if err := d.mkdir(parent); err != nil {
				return err
			}
		}
		return fill(d, p, 0o666, func(w io.Writer) error { _, err := w.Write(b); return err })
	})
	for f := range folders {
		err = errors.Join(err, d.sync(f))
	}
	return err
}

// replace gives a folder the name of another, which is removed.
func replace(d disk, next, name string) error {
	parent := filepath.Dir(name)
	if _, err := os.Lstat(name); errors.Is(err, fs.ErrNotExist) {
		if err := d.rename(next, name); err != nil {
			return err
		}
		return d.sync(parent)
	}
	err := d.exchange(next, name)
	if errors.Is(err, errors.ErrUnsupported) {
		return stepwise(d, next, name)
	}
	if err != nil {
		return fmt.Errorf("%w; a folder that is a mount point cannot be replaced: give one inside it", err)
	}
	return errors.Join(d.sync(parent), d.removeAll(next)) // the old one has that name now
}

// stepwise is replace where two names cannot change places: between its renames there is no folder of that name.
func stepwise(d disk, next, name string) error {
	old := beside(name, "old")
	if err := d.rename(name, old); err != nil {
		return err
	}
	if err := d.rename(next, name); err != nil {
		return errors.Join(err, d.rename(old, name))
	}
	return errors.Join(d.sync(filepath.Dir(name)), d.removeAll(old))
}
