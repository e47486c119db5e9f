package keep

import (
	"archive/tar"
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the test file of a version that has none; those that are there stay")

// kept is what a device holds, as a file of testdata/versions.
type kept struct {
	Store map[string]string `json:"store"` // bytes as text
	Notes map[string]string `json:"notes,omitempty"`
}

func deviceOf(t *testing.T, file string) *device {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var k kept
	if err := json.Unmarshal(b, &k); err != nil {
		t.Fatal(err)
	}
	d := newDevice()
	d.data = map[string][]byte{}
	for key, text := range k.Store {
		d.data[key] = []byte(text)
	}
	maps.Copy(d.notes, k.Notes)
	return d
}

// TestVersions: what each version kept is read, and becomes today's. A version has its
// file from the day on which it is the newest.
func TestVersions(t *testing.T) {
	now := "testdata/versions/" + Format + ".json"
	if _, err := os.Stat(now); err != nil && *update {
		d := newDevice()
		tab := d.open(t, "a")
		tab.Save(version(1, "andorra"))
		if _, err := tab.Flush(); err != nil {
			t.Fatal(err)
		}
		tab.Save(version(2, "andorra"))
		k := kept{Store: map[string]string{}, Notes: d.notes}
		for key, b := range d.data {
			k.Store[key] = string(b)
		}
		b, err := json.MarshalIndent(k, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(now, append(b, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	files, err := filepath.Glob("testdata/versions/*.json")
	if err != nil || !slices.Contains(files, now) || len(files) < 2 {
		t.Fatalf("%q (%v): the newest version has no file; make it with -update", files, err)
	}
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			d := deviceOf(t, f)
			tab := d.open(t, "b")
			_, desk := tab.Desk()
			if n := read(t, tab, desk); n != 2 || len(desk.Of(Map)) != 1 || desk.Of(Map)[0].Lost || desk.Of(Map)[0].Name != "andorra" {
				t.Errorf("read as %d: %+v", n, desk.Entries)
			}
			tidy(t, d)
			for key := range d.data {
				if key != shelfKey && !strings.HasPrefix(key, dataKey) {
					t.Errorf("%s is left", key)
				}
			}
		})
	}
}

// A map that the first form spoke of and did not have is missing; none stands in for it.
func TestOldMissing(t *testing.T) {
	d := deviceOf(t, "testdata/versions/0.json")
	d.data["places/1"] = d.data["places/0"]
	delete(d.data, "places/0")
	tab := d.open(t, "b")
	_, desk := tab.Desk()
	if m := desk.Of(Map); len(m) != 1 || !m[0].Lost || m[0].Name != "andorra" {
		t.Errorf("maps %+v", m)
	}
}

// TestNewer: an index of a newer version, or one that is damaged, is left as it is until
// a person says so, and then set aside with all that it speaks of.
func TestNewer(t *testing.T) {
	for text, want := range map[string]error{`{"format": "ullage-shelf-2", "anything": [1, 2]}`: ErrNewer, `{"format`: ErrDamaged} {
		d := newDevice()
		d.data = map[string][]byte{shelfKey: []byte(text), dataKey + "x": []byte("bytes")}
		d.notes[noteKey+"z"] = `{"format": "ullage-note-2"}`
		tab, err := Open(d, notes{d}, "a", Main)
		if !errors.Is(err, want) {
			t.Fatalf("%s: %v", text, err)
		}
		if tab.Save(version(1)) {
			t.Error("something is to be written")
		}
		if string(d.data[shelfKey]) != text || len(d.notes) != 1 {
			t.Error("it was changed")
		}
		if err := tab.SetAside(); err != nil {
			t.Fatal(err)
		}
		tab.Save(version(1))
		if _, err := tab.Flush(); err != nil {
			t.Fatal(err)
		}
		all := collect(t, tab, nil)
		files, err := readTar(all)
		if err != nil || string(files[asideKey+Hash([]byte(text), func() {})]) != text || string(files[dataKey+"x"]) != "bytes" {
			t.Errorf("%v: bytes were thrown away: %q", err, files)
		}
		if again := d.open(t, "b"); true {
			_, desk := again.Desk()
			if read(t, again, desk) != 1 {
				t.Error("the fresh desk is not kept")
			}
		}
	}
}

// TestDamaged: bytes that are not what they were are said to be damaged, and are
// written again when they are opened again.
func TestDamaged(t *testing.T) {
	d := newDevice()
	tab := d.open(t, "a")
	items := version(1, "andorra", "malta")
	tab.Save(items)
	if _, err := tab.Flush(); err != nil {
		t.Fatal(err)
	}
	d.data[dataKey+items[2].Hash] = []byte("malta, and not andorra")
	delete(d.data, dataKey+items[3].Hash)
	tab = d.open(t, "b")
	_, desk := tab.Desk()
	for i, want := range []error{ErrDamaged, ErrMissing} {
		if b, err := tab.Data(desk.Of(Map)[i], func() {}); !errors.Is(err, want) || b != nil {
			t.Errorf("map %d: %q, %v, want %v", i, b, err, want)
		}
	}
	tab.Save(append(version(2), items[2:]...))
	if _, err := tab.Flush(); err != nil {
		t.Fatal(err)
	}
	tidy(t, d)
}

// TestTakenOver: a page that another has overtaken writes nothing more, and goes on
// with a copy of its own.
func TestTakenOver(t *testing.T) {
	d := newDevice()
	a, b := d.open(t, "a"), d.open(t, "b")
	a.Save(version(1, "andorra"))
	if !b.Heard(noteKey+"a", d.notes[noteKey+"a"]) {
		t.Error("nobody told the other page")
	}
	if a.Heard(noteKey+"a", d.notes[noteKey+"a"]) || b.Heard("marks", "{}") {
		t.Error("a page was told of what is not its business")
	}
	if _, err := a.Flush(); err != nil {
		t.Fatal(err)
	}
	if b.Save(version(2, "malta")) {
		t.Error("the page that was overtaken writes")
	}
	if a.Heard(noteKey+"b", d.notes[noteKey+"b"]) {
		t.Error("a page that is overtaken takes the desk")
	}
	name := b.Fork(version(2, "malta"))
	if _, err := b.Flush(); err != nil {
		t.Fatal(err)
	}
	for desk, want := range map[string]int{Main: 1, name: 2} {
		tab, err := Open(d, notes{d}, "c"+desk, desk)
		if err != nil {
			t.Fatal(err)
		}
		if got, is := tab.Desk(); got != desk || read(t, tab, is) != want {
			t.Errorf("desk %q has %+v", got, is)
		}
	}
	if err := a.Remove(name); err != nil {
		t.Fatal(err)
	}
	tidy(t, d)
	if names, _, err := a.Desks(); err != nil || !slices.Equal(names, []string{Main}) {
		t.Errorf("desks %q, %v", names, err)
	}
}

// TestMeanwhile: what is wanted while something is written is written next.
func TestMeanwhile(t *testing.T) {
	d := newDevice()
	tab := d.open(t, "a")
	tab.Save(version(1))
	d.during = func() { tab.Save(version(2)) }
	if _, err := tab.Flush(); err != nil {
		t.Fatal(err)
	}
	if _, desk := tab.Desk(); read(t, tab, desk) != 2 || len(d.notes) != 0 {
		t.Errorf("there is %+v, noted %v", desk, d.notes)
	}
}

// TestGone: a copy says which map it does not have, as another page took it away.
func TestGone(t *testing.T) {
	d := newDevice()
	a := d.open(t, "a")
	items := version(1, "andorra")
	a.Save(items)
	if _, err := a.Flush(); err != nil {
		t.Fatal(err)
	}
	b := d.open(t, "b")
	b.Save(version(2, "malta"))
	if _, err := b.Flush(); err != nil {
		t.Fatal(err)
	}
	items[2].Data = nil
	a.Fork(items)
	lost, err := a.Flush()
	if _, desk := a.Desk(); err != nil || len(lost) != 1 || lost[0].Name != "andorra" || !desk.Of(Map)[0].Lost || read(t, a, desk) != 1 {
		t.Errorf("lost %v, %v; the copy is %+v", lost, err, desk)
	}
	tidy(t, d)
}

func collect(t *testing.T, tab *Tab, more map[string][]byte) []byte {
	t.Helper()
	var all []byte
	err := tab.Everything(more, func(b []byte) error {
		all = append(all, b...)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestEverything: any archiver opens the file, and another device takes it in: as its
// own desk where it has none, else beside it.
func TestEverything(t *testing.T) {
	d := newDevice()
	tab := d.open(t, "a")
	tab.Save(version(7, "andorra", "malta"))
	if _, err := tab.Flush(); err != nil {
		t.Fatal(err)
	}
	all := collect(t, tab, map[string][]byte{"marks": []byte(`{"ticks":["a"]}`)})
	if !IsEverything(all) || IsEverything([]byte("shelf\x00")) || IsEverything(make([]byte, 9999)) {
		t.Error("the file is not known again")
	}
	files := 0
	for r := tar.NewReader(bytes.NewReader(all)); ; files++ {
		h, err := r.Next()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if b, err := io.ReadAll(r); err != nil || h.Name != "marks" && !bytes.Equal(b, d.data[h.Name]) {
			t.Errorf("%s: %q, %v", h.Name, b, err)
		}
	}
	if files != len(d.data)+1 {
		t.Errorf("%d files", files)
	}
	for _, own := range []bool{false, true} {
		to := newDevice()
		other := to.open(t, "x")
		if own {
			other.Save(version(3, "gibraltar"))
			if _, err := other.Flush(); err != nil {
				t.Fatal(err)
			}
		}
		desk, more, err := other.TakeIn(slices.Clone(all))
		if err != nil || string(more["marks"]) != `{"ticks":["a"]}` || len(more) != 1 || (desk == Main) == own {
			t.Fatalf("%q, %q, %v", desk, more, err)
		}
		tidy(t, to)
		opened, err := Open(to, notes{to}, "y", desk)
		if err != nil {
			t.Fatal(err)
		}
		if _, d := opened.Desk(); read(t, opened, d) != 7 || len(d.Of(Map)) != 2 {
			t.Errorf("taken in: %+v", d)
		}
		if own {
			if main := to.shelf(t).Desks[Main]; read(t, opened, main) != 3 {
				t.Error("what was there is gone")
			}
		}
	}
}

// FuzzTakeIn: a broken file is refused or taken in whole; it never breaks what is there.
func FuzzTakeIn(f *testing.F) {
	d := newDevice()
	tab, err := Open(d, notes{d}, "a", Main)
	if err != nil {
		f.Fatal(err)
	}
	tab.Save(version(1, "andorra"))
	if _, err := tab.Flush(); err != nil {
		f.Fatal(err)
	}
	var all []byte
	_ = tab.Everything(nil, func(b []byte) error {
		all = append(all, b...)
		return nil
	})
	f.Add(all)
	f.Add(all[:700])
	f.Fuzz(func(t *testing.T, file []byte) {
		d := newDevice()
		tab := d.open(t, "a")
		tab.Save(version(1, "andorra"))
		if _, err := tab.Flush(); err != nil {
			t.Fatal(err)
		}
		if _, _, err := tab.TakeIn(file); err != nil {
			return
		}
		again := d.open(t, "b")
		if _, desk := again.Desk(); read(t, again, desk) != 1 {
			t.Error("what was there is gone")
		}
	})
}
