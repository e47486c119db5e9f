package whole

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// failing is the system's disk until some step: that fails, or the process ends there (a panic, which nothing clears up after).
// Each byte written is a step.
type failing struct {
	system
	steps  int
	killed bool
	apart  bool // names cannot change places
}

var errFull = &fs.PathError{Op: "write", Path: "disk", Err: syscall.ENOSPC}

type kill struct{}

func (d *failing) step() error {
	if d.steps--; d.steps >= 0 {
		return nil
	}
	if d.killed {
		panic(kill{})
	}
	return errFull
}

func (d *failing) create(name string, mode fs.FileMode) (file, error) {
	if err := d.step(); err != nil {
		return nil, err
	}
	f, err := d.system.create(name, mode)
	return failingFile{f, d}, err
}

func (d *failing) mkdir(name string) error {
	return errors.Join(d.step(), d.system.mkdir(name))
}

func (d *failing) rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.system.rename(from, to)
}

func (d *failing) exchange(a, b string) error {
	if d.apart {
		return errors.ErrUnsupported
	}
	if err := d.step(); err != nil {
		return err
	}
	return d.system.exchange(a, b)
}

func (d *failing) removeAll(name string) error {
	if d.killed {
		d.step() // nothing clears up after a kill
	}
	return d.system.removeAll(name)
}

func (d *failing) sync(folder string) error {
	return errors.Join(d.step(), d.system.sync(folder))
}

type failingFile struct {
	file
	d *failing
}

func (f failingFile) Write(b []byte) (int, error) {
	for i := range b {
		if err := f.d.step(); err != nil {
			return i, err
		}
		if _, err := f.file.Write(b[i : i+1]); err != nil {
			return i, err
		}
	}
	return len(b), nil
}

func (f failingFile) Sync() error { return errors.Join(f.d.step(), f.file.Sync()) }

// run does something on a failing disk and tells whether it came to its end.
func run(do func() error) (ended bool, err error) {
	defer func() {
		if r := recover(); r != nil {
			if _, is := r.(kill); !is {
				panic(r)
			}
		}
	}()
	err = do()
	return true, err
}

// ways are how a run can break off.
var ways = map[string]failing{"full": {}, "killed": {killed: true}, "full, apart": {apart: true}, "killed, apart": {killed: true, apart: true}}

// A file that is replaced is the old one or the new one after every step that a run can break off at; without an error it is the new one.
func TestFileAtEveryStep(t *testing.T) {
	for way, d := range ways {
		for steps := 0; ; steps++ {
			name := filepath.Join(t.TempDir(), "trip.geojson")
			if err := os.WriteFile(name, []byte("the old trip"), 0o640); err != nil {
				t.Fatal(err)
			}
			d := d
			d.steps = steps
			ended, err := run(func() error {
				return fileOn(&d, name, func(w io.Writer) error { _, err := io.WriteString(w, "the trip that is new"); return err })
			})
			got, _ := os.ReadFile(name)
			if s := string(got); s != "the old trip" && s != "the trip that is new" || ended && err == nil && s != "the trip that is new" {
				t.Fatalf("%s after %d steps: %q, %v", way, steps, s, err)
			}
			if entries, _ := os.ReadDir(filepath.Dir(name)); ended && len(entries) != 1 {
				t.Fatalf("%s after %d steps: %d files are left", way, steps, len(entries))
			}
			if info, _ := os.Stat(name); info.Mode().Perm() != 0o640 && steps > 0 {
				t.Fatalf("%s after %d steps: mode %v", way, steps, info.Mode())
			}
			if ended && err == nil {
				break
			}
		}
	}
}

var sites = [2]map[string]string{
	{"index.html": "old", "web/a.js": "oldest", "mark.txt": "1"},
	{"index.html": "new page", "web/deep/b.js": "b", "web/c.js": "", "mark.txt": "2"},
}

func put(site map[string]string) func(Put) error {
	return func(put Put) error {
		for _, name := range []string{"index.html", "web/a.js", "web/deep/b.js", "web/c.js", "mark.txt"} {
			if s, there := site[name]; there {
				if err := put(name, []byte(s)); err != nil {
					return err
				}
			}
		}
		return nil
	}
}

// is tells whether a folder holds exactly a site.
func is(t *testing.T, dir string, site map[string]string) bool {
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(p string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, _ := filepath.Rel(dir, p)
		b, err := os.ReadFile(p)
		got[filepath.ToSlash(name)] = string(b)
		return err
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	for name, s := range site {
		if g, there := got[name]; !there || g != s {
			return false
		}
	}
	return len(got) == len(site)
}

// A folder is the old one or the new one after every step; where names cannot change places, the next run brings the old one back.
func TestFolderAtEveryStep(t *testing.T) {
	for way, d := range ways {
		for steps := 0; ; steps++ {
			dir := filepath.Join(t.TempDir(), "site")
			if err := Folder(dir, put(sites[0])); err != nil {
				t.Fatal(err)
			}
			d := d
			d.steps = steps
			ended, err := run(func() error { return folderOn(&d, dir, put(sites[1])) })
			if _, err := os.Lstat(dir); d.apart && errors.Is(err, fs.ErrNotExist) {
				if err := restore(system{}, dir); err != nil {
					t.Fatal(err)
				}
			}
			if old, fresh := is(t, dir, sites[0]), is(t, dir, sites[1]); !old && !fresh || ended && err == nil && !fresh {
				t.Fatalf("%s after %d steps: neither the old site nor the new one, %v", way, steps, err)
			}
			if entries, _ := os.ReadDir(filepath.Dir(dir)); ended && len(entries) != 1 {
				t.Fatalf("%s after %d steps: %v are left", way, steps, entries)
			}
			if ended && err == nil {
				break
			}
		}
	}
}

// What a killed run left is removed when it is old enough to be of no run at work.
func TestWhatIsLeft(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "trip.geojson")
	young, old := beside(name, "new"), beside(name, "new")
	for _, p := range []string{young, old} {
		if err := os.WriteFile(p, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	long := time.Now().Add(-2 * abandoned)
	if err := os.Chtimes(old, long, long); err != nil {
		t.Fatal(err)
	}
	if err := File(name, func(w io.Writer) error { return nil }); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(young); err != nil {
		t.Error("what another run writes is gone")
	}
	if _, err := os.Stat(old); err == nil {
		t.Error("what was left is still there")
	}
}

// A link stays a link, and a folder is no file.
func TestLinks(t *testing.T) {
	dir := t.TempDir()
	name, link := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	if err := errors.Join(os.WriteFile(name, nil, 0o644), os.Symlink(name, link)); err != nil {
		t.Skip("no links here: ", err)
	}
	if err := File(link, func(w io.Writer) error { _, err := io.WriteString(w, "x"); return err }); err != nil {
		t.Fatal(err)
	}
	if b, _ := os.ReadFile(name); !bytes.Equal(b, []byte("x")) {
		t.Errorf("the file behind the link holds %q", b)
	}
	if err := File(dir, nil); err == nil || !strings.Contains(err.Error(), "is a folder") {
		t.Errorf("a folder: %v", err)
	}
}
