package whole

import (
	"io"
	"io/fs"
	"os"
)

// A disk is what is asked of the system; tests have one that fails.
type disk interface {
	create(name string, mode fs.FileMode) (file, error) // which must not be there
	mkdir(name string) error                            // with those above it
	rename(from, to string) error
	exchange(a, b string) error // errors.ErrUnsupported where that is not one step
	removeAll(name string) error
	sync(folder string) error
}

type file interface {
	io.WriteCloser
	Sync() error
}

// system is the disk of this machine.
type system struct{}

func (system) create(name string, mode fs.FileMode) (file, error) {
	return os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

func (system) mkdir(name string) error      { return os.MkdirAll(name, 0o755) }
func (system) rename(from, to string) error { return os.Rename(from, to) }
func (system) exchange(a, b string) error   { return exchange(a, b) }
func (system) removeAll(name string) error  { return os.RemoveAll(name) }

// sync brings the names in a folder to the disk. Systems that cannot open a folder, as Windows, do that by themselves.
func (system) sync(folder string) error {
	d, err := os.Open(folder)
	if err != nil {
		return nil
	}
	defer d.Close()
	_ = d.Sync() // some file systems refuse it for folders: the names are then as safe as they can be
	return nil
}
