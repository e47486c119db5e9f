package keep

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"
)

// A device is a store and a quick store that outlast the pages. A page may be cut off
// before or after anything it does to them; the device may be full.
type device struct {
	Memory
	notes map[string]string
	left  int  // things that are still done; then the page is gone
	after bool // the last thing is done before it goes
	room  int  // bytes; 0: enough

	during func() // once, while something is written
}

// cut is what a page that is gone panics with.
type cut struct{}

// step does one thing, or cuts the page off.
func (d *device) step(do func()) {
	if d.left--; d.left < 0 {
		if d.after && d.left == -1 {
			do()
		}
		panic(cut{})
	}
	do()
}

func (d *device) Get(key string) (b []byte, ok bool, err error) {
	d.step(func() { b, ok, err = d.Memory.Get(key) })
	return b, ok, err
}

func (d *device) Update(key string, change func([]byte) (Change, error)) (err error) {
	if do := d.during; do != nil {
		d.during = nil
		do()
	}
	d.step(func() {
		err = d.Memory.Update(key, func(old []byte) (Change, error) {
			c, err := change(old)
			used := 0
			for k, b := range d.data {
				if _, again := c.Put[k]; !again && !slices.Contains(c.Delete, k) {
					used += len(b)
				}
			}
			for _, b := range c.Put {
				used += len(b)
			}
			if err == nil && d.room > 0 && used > d.room {
				err = ErrFull
			}
			return c, err
		})
	})
	return err
}

type notes struct{ *device }

func (n notes) Keys() []string { return slices.Sorted(maps.Keys(n.notes)) }
func (n notes) Get(key string) (string, bool) {
	text, ok := n.notes[key]
	return text, ok
}
func (n notes) Set(key, text string) error {
	n.step(func() { n.notes[key] = text })
	return nil
}
func (n notes) Delete(key string) { n.step(func() { delete(n.notes, key) }) }

func newDevice() *device { return &device{notes: map[string]string{}, left: 1 << 30} }

// alive runs what a page does, and tells whether it came to its end.
func alive(do func()) (ended bool) {
	defer func() {
		if r := recover(); r != nil {
			if _, is := r.(cut); !is {
				panic(r)
			}
		}
	}()
	do()
	return true
}

func (d *device) open(t *testing.T, id string) *Tab {
	t.Helper()
	tab, err := Open(d, notes{d}, id, Main)
	if err != nil {
		t.Fatal(err)
	}
	return tab
}

// version n is a desk whose files all say n.
func version(n int, maps ...string) []Item {
	out := []Item{
		NewItem(Trip, "", []byte(fmt.Sprint("trip ", n))),
		NewItem(Route, "", []byte(fmt.Sprint("route ", n))),
	}
	for _, m := range maps {
		out = append(out, NewItem(Map, m, bytes.Repeat([]byte(m), 20)))
	}
	return out
}

// read is the number that all files of a desk say; it fails the test if they do not
// agree, or a map is not what its name says.
func read(t *testing.T, tab *Tab, d Desk) int {
	t.Helper()
	n, seen := 0, 0
	for _, e := range d.Entries {
		b, err := tab.Data(e, func() {})
		if err != nil {
			if e.Part == Map && e.Lost {
				continue
			}
			t.Fatalf("%+v: %v", e, err)
		}
		if e.Part == Map {
			if !bytes.HasPrefix(b, []byte(e.Name)) {
				t.Fatalf("the map %s says %.10s", e.Name, b)
			}
			continue
		}
		var m int
		if _, err := fmt.Sscanf(string(b), e.Part+" %d", &m); err != nil {
			t.Fatalf("%s says %q", e.Part, b)
		}
		if seen++; seen > 1 && m != n {
			t.Fatalf("a %s of %d among those of %d", e.Part, m, n)
		}
		n = m
	}
	return n
}

// TestCut: a page that is cut off before or after any write leaves what was or what
// is to be, never a mixture; what it had noted is there.
func TestCut(t *testing.T) {
	for left := 0; left < 60; left++ {
		for _, after := range []bool{false, true} {
			d := newDevice()
			tab := d.open(t, "a")
			d.left, d.after = left, after
			wished, noted := 0, 0
			ended := alive(func() {
				for n, maps := range [][]string{{"gibraltar"}, {"gibraltar"}, {"andorra"}, {"andorra", "malta"}, {"malta"}, nil, {"andorra"}} {
					wished = n + 1
					tab.Save(version(n+1, maps...))
					noted = n + 1
					if n%3 != 1 { // sometimes more is wished before it is written
						if _, err := tab.Flush(); err != nil {
							t.Fatal(err)
						}
					}
				}
			})
			d.left = 1 << 30
			again := d.open(t, "b")
			_, desk := again.Desk()
			if got := read(t, again, desk); got != wished && got != noted {
				t.Errorf("cut at %d: %d is there, noted was %d", left, got, noted)
			}
			if len(d.notes) > 0 {
				t.Errorf("cut at %d: notes are left: %v", left, d.notes)
			}
			tidy(t, d)
			if ended {
				return
			}
		}
	}
	t.Error("the page was cut off each time: there are more writes than this test knows")
}

// tidy: the store has the bytes that the index speaks of, and no others.
func tidy(t *testing.T, d *device) {
	t.Helper()
	s, err := readShelf(d.data[shelfKey])
	if err != nil {
		t.Fatal(err)
	}
	for k := range d.data {
		if hash, is := bytes.CutPrefix([]byte(k), []byte(dataKey)); is && !s.hashes()[string(hash)] {
			t.Errorf("%s is left and no desk has it", k)
		}
	}
	for hash := range s.hashes() {
		if b, there := d.data[dataKey+hash]; !there || Hash(b, func() {}) != hash {
			t.Errorf("the bytes of %s are missing or others", hash)
		}
	}
}

// TestFull: where there is no room for a map, all else is kept, and that it is missing;
// the map from before does not stand in for it.
func TestFull(t *testing.T) {
	d := newDevice()
	tab := d.open(t, "a")
	tab.Save(version(1, "gib"))
	if lost, err := tab.Flush(); err != nil || len(lost) > 0 {
		t.Fatal(lost, err)
	}
	d.room = 1500
	items := version(2, "a map that takes far more room than there is on this device")
	tab.Save(items)
	lost, err := tab.Flush()
	if err != nil || len(lost) != 1 || lost[0].Name != items[2].Name {
		t.Fatalf("lost %v, %v", lost, err)
	}
	again := d.open(t, "b")
	_, desk := again.Desk()
	maps := desk.Of(Map)
	if read(t, again, desk) != 2 || len(maps) != 1 || !maps[0].Lost || maps[0].Name != items[2].Name {
		t.Errorf("kept are %+v", desk.Entries)
	}
	tidy(t, d)

	d.room = 0 // there is room again, and the map is opened once more
	items[2].Lost, items[2].Data = true, nil
	again.Save(items)
	again.Save(version(2, items[2].Name))
	if lost, err := again.Flush(); err != nil || len(lost) > 0 {
		t.Fatal(lost, err)
	}
	if _, desk := again.Desk(); desk.Of(Map)[0].Lost {
		t.Error("a map that there is room for now is not kept")
	}

	d.room = 1
	again.Save(version(3))
	if _, err := again.Flush(); !errors.Is(err, ErrFull) {
		t.Errorf("with no room at all: %v", err)
	}
	if c := d.open(t, "c"); true {
		_, desk := c.Desk()
		if n := read(t, c, desk); n != 2 {
			t.Errorf("%d is there", n)
		}
	}
}

// TestTabs: pages side by side, some of them cut off. What each wanted last is kept: on
// the desk, or was there when another page wrote after having seen it, or on a copy.
func TestTabs(t *testing.T) {
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 13))
		d := newDevice()
		tabs := map[string]*Tab{}
		last := map[string]int{} // version that a page noted last
		half := map[string]int{} // one that it may have noted as it was cut off
		was := map[int]bool{}    // versions that were on the desk
		n, opened := 0, 0
		for range 30 {
			id := string(rune('a' + r.IntN(2)))
			if tabs[id] == nil { // a page opens, under a name that no other had
				opened++
				tabs[id] = d.open(t, fmt.Sprint(id, opened))
			}
			tab := tabs[id]
			d.left, d.after = 1<<30, r.IntN(2) == 0
			if r.IntN(4) == 0 {
				d.left = r.IntN(3)
			}
			ended := alive(func() {
				switch r.IntN(5) {
				case 0, 1:
					n++
					half[tab.id] = n
					tab.Save(version(n, []string{"andorra", "malta"}[r.IntN(2)]))
					last[tab.id] = n
				case 2, 3:
					if _, err := tab.Flush(); err != nil && !errors.Is(err, ErrOvertaken) {
						t.Fatal(err)
					}
				case 4:
					for key, text := range d.notes {
						tab.Heard(key, text)
					}
				}
			})
			d.left = 1 << 30
			if !ended {
				delete(tabs, id)
			}
			see := d.shelf(t).Desks[Main]
			was[read(t, &Tab{store: d}, see)] = true
		}
		end := d.open(t, "end")
		tidy(t, d)
		kept := map[int]bool{}
		for _, desk := range d.shelf(t).Desks {
			kept[read(t, end, desk)] = true
		}
		for id, n := range last {
			if h := half[id]; !kept[n] && !was[n] && !kept[h] && !was[h] {
				t.Fatalf("seed %d: what %s wanted, %d, is nowhere: %v", seed, id, n, kept)
			}
		}
	}
}

func (d *device) shelf(t *testing.T) Shelf {
	t.Helper()
	s, err := readShelf(d.data[shelfKey])
	if err != nil {
		t.Fatal(err)
	}
	return s
}
