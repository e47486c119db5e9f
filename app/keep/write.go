package keep

import (
	"errors"
	"slices"
)

// ErrOvertaken means that another page has changed the desk since this one read it.
var ErrOvertaken = errors.New("another tab has changed it since")

// Save notes what is to be kept from now on, all of it. It returns at once, and
// whether there is something for [Tab.Flush] to write.
func (t *Tab) Save(items []Item) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	items = slices.Clone(items)
	next := Desk{Revision: max(t.seen.Revision, t.next.Revision) + 1, Writer: t.id}
	for n, i := range items {
		if i.Lost {
			delete(t.full, i.Hash) // its owner knows, and may try again
		} else if t.full[i.Hash] {
			items[n].Lost, items[n].Data = true, nil
		}
		next.Entries = append(next.Entries, items[n].Entry)
	}
	if t.frozen || next.Same(t.next) {
		return t.dirty && !t.overtaken
	}
	t.next, t.items, t.dirty = next, items, true
	t.note()
	return !t.overtaken
}

func (t *Tab) note() {
	if n, ok := noteOf(t.desk, t.seen, t.next, t.items); ok {
		n.Aside = t.overtaken
		_ = t.quick.Set(noteKey+t.id, n.text()) // where this fails the store is asked all the same
	}
}

// Flush writes what is noted. What of it could not be kept is returned: maps that there
// is no room for, and what is gone from the store. It waits.
func (t *Tab) Flush() (lost []Entry, err error) {
	for {
		next, items, ok := t.begin()
		if !ok {
			return lost, nil
		}
		written, err := t.write(next, items)
		more, err := t.ended(next, written, err)
		lost = append(lost, more...)
		if err != nil {
			return lost, err
		}
	}
}

// begin takes what is to be written; not ok if nothing is, or somebody writes already.
func (t *Tab) begin() (next Desk, items []Item, ok bool) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.writing || t.overtaken || !t.dirty {
		return Desk{}, nil, false
	}
	t.writing = true
	return t.next, t.items, true
}

// write puts a desk into the store, if nobody else has changed it, and returns it as
// it is there now.
func (t *Tab) write(next Desk, items []Item) (Desk, error) {
	t.mu.Lock()
	name, seen, held := t.desk, t.seen, t.held
	t.mu.Unlock()
	err := t.store.Update(shelfKey, func(old []byte) (Change, error) {
		s, err := readShelf(old)
		if err != nil {
			return Change{}, err
		}
		there := s.Desks[name]
		switch {
		case next.Same(there): // another page wanted the same
			next = there
			return Change{}, errDone
		case !next.follows(there, seen):
			return Change{}, ErrOvertaken
		}
		data, known := map[string][]byte{}, s.hashes()
		for _, i := range items {
			if i.Data != nil && !(known[i.Hash] && held[i.Hash]) {
				data[i.Hash] = i.Data
			}
		}
		next = s.settled(next, data)
		_, c := s.with(name, next, data)
		return c, nil
	})
	if errors.Is(err, errDone) {
		err = nil
	}
	return next, err
}

// ended takes note of what became of writing a desk.
func (t *Tab) ended(wanted, written Desk, err error) (lost []Entry, _ error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.writing = false
	switch {
	case err == nil:
		lost = newlyLost(wanted, written)
		latest := t.next
		t.saw(written)
		if latest.Revision != wanted.Revision { // more was noted meanwhile
			t.next = latest
			break
		}
		t.dirty, t.items = false, nil
		t.quick.Delete(noteKey + t.id)
	case errors.Is(err, ErrFull):
		if lost = t.giveUp(); len(lost) == 0 {
			return nil, t.failed(err)
		}
	case errors.Is(err, ErrOvertaken):
		t.overtaken = true
		t.note()
		return nil, err
	default:
		return nil, t.failed(err)
	}
	return lost, nil
}

// failed leaves the note as it is; the next wish is written again.
func (t *Tab) failed(err error) error {
	t.dirty, t.next = false, Desk{Revision: t.next.Revision}
	return err
}

// newlyLost lists what is lost of a desk that was not to be.
func newlyLost(wanted, written Desk) []Entry {
	var out []Entry
	for i, e := range written.Entries {
		if e.Lost && i < len(wanted.Entries) && !wanted.Entries[i].Lost {
			out = append(out, e)
		}
	}
	return out
}

// giveUp leaves out the maps whose bytes found no room.
func (t *Tab) giveUp() []Entry {
	var out []Entry
	t.items, t.next.Entries = slices.Clone(t.items), slices.Clone(t.next.Entries)
	for n, i := range t.items {
		if i.Part == Map && i.Data != nil && !t.held[i.Hash] && !t.full[i.Hash] {
			t.full[i.Hash] = true
			t.items[n].Data, t.items[n].Lost, t.next.Entries[n].Lost = nil, true, true
			out = append(out, t.next.Entries[n])
		}
	}
	return out
}
