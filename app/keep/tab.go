package keep

import (
	"errors"
	"fmt"
	"sync"
)

// ErrMissing means that the store does not have what the index speaks of.
var ErrMissing = errors.New("it is no longer kept on this device")

// A Tab is one open page and the desk that it works on.
type Tab struct {
	store Store
	quick Quick
	id    string

	mu        sync.Mutex
	desk      string
	seen      Desk            // as the store has it
	held      map[string]bool // hashes of it whose bytes are there, as far as known
	full      map[string]bool // hashes that there was no room for
	next      Desk            // as it is to be
	items     []Item          // of next
	dirty     bool            // next is not in the store yet
	writing   bool
	frozen    bool // nothing is written: the index is not for this version
	overtaken bool // another page writes now
}

// Open begins the work of a page on a desk, after giving the store what other pages had
// left noted. id tells this page from all others. After [ErrNewer] or [ErrDamaged] the
// tab keeps nothing until [Tab.SetAside]. It waits.
func Open(store Store, quick Quick, id, desk string) (*Tab, error) {
	t := &Tab{store: store, quick: quick, id: id, desk: desk, held: map[string]bool{}, full: map[string]bool{}}
	err := upgrade(store, id)
	if err == nil {
		err = adopt(store, quick)
	}
	var s Shelf
	if err == nil {
		s, err = t.shelf()
	}
	if err != nil {
		t.frozen = true
		return t, fmt.Errorf("open what is kept: %w", err)
	}
	if _, there := s.Desks[desk]; !there {
		t.desk = Main
	}
	t.saw(s.Desks[t.desk])
	return t, nil
}

func (t *Tab) shelf() (Shelf, error) {
	b, _, err := t.store.Get(shelfKey)
	if err != nil {
		return Shelf{}, err
	}
	return readShelf(b)
}

// saw takes a desk for what the store has.
func (t *Tab) saw(d Desk) {
	t.seen, t.next, t.held = d, d, map[string]bool{}
	for _, e := range d.Entries {
		t.held[e.Hash] = !e.Lost
	}
}

// Desk is what the page works on, as the store had it last.
func (t *Tab) Desk() (name string, d Desk) {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.desk, t.seen
}

// Data are the bytes of an entry, checked. It waits, and calls rest now and then.
func (t *Tab) Data(e Entry, rest func()) ([]byte, error) {
	b, err := t.data(e, rest)
	if err != nil {
		t.mu.Lock()
		delete(t.held, e.Hash)
		t.mu.Unlock()
	}
	return b, err
}

func (t *Tab) data(e Entry, rest func()) ([]byte, error) {
	if e.Lost {
		return nil, ErrMissing
	}
	b, ok, err := t.store.Get(dataKey + e.Hash)
	switch {
	case err != nil:
		return nil, err
	case !ok:
		return nil, ErrMissing
	case Hash(b, rest) != e.Hash:
		return nil, ErrDamaged
	}
	return b, nil
}
