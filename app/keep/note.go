package keep

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
)

// This file is about notes: what a page wants kept and the store may not have yet.
// A page writes one in the task of the change, and takes it away when the store has
// it. The next page to open finds those that are left.

const (
	noteKey    = "note/" // and the writer
	noteFormat = "ullage-note-1"
	mostNoted  = 1 << 20 // bytes of data: a quick store has some 5 MB in all
)

type note struct {
	Format string            `json:"format"`
	Desk   string            `json:"desk"`
	Seen   Desk              `json:"seen"` // without entries: whose place it takes
	Next   Desk              `json:"next"`
	Data   map[string][]byte `json:"data,omitempty"` // by hash
	Aside  bool              `json:"aside,omitempty"`
}

func (n note) text() string {
	b, err := json.Marshal(n)
	if err != nil {
		panic("keep: a note is plain data: " + err.Error())
	}
	return string(b)
}

func readNote(text string) (n note, ok bool) {
	err := json.Unmarshal([]byte(text), &n)
	return n, err == nil && n.Format == noteFormat
}

// noteOf notes a desk with all its bytes: another page may be about to delete them.
// Of what is too large only what is seen to be there is spoken of; a map that is not is
// then the one from before. ok is false if the desk makes no sense so.
func noteOf(name string, seen, next Desk, items []Item) (n note, ok bool) {
	n = note{Format: noteFormat, Desk: name, Seen: Desk{Revision: seen.Revision, Writer: seen.Writer}, Next: next, Data: map[string][]byte{}}
	large := map[string]bool{}
	size := 0
	for _, i := range items {
		switch {
		case i.Data == nil:
		case size+i.Size <= mostNoted:
			size += i.Size
			n.Data[i.Hash] = i.Data
		case !slices.Contains(seen.Entries, i.Entry):
			large[i.Part] = true
		}
	}
	n.Next.Entries = nil
	for _, e := range next.Entries {
		if !large[e.Part] {
			n.Next.Entries = append(n.Next.Entries, e)
		}
	}
	for _, part := range []string{Map, Fleet} {
		if large[part] {
			n.Next.Entries = append(n.Next.Entries, seen.Of(part)...)
			delete(large, part)
		}
	}
	return n, len(large) == 0
}

// errDone ends a change that nothing is left to do of.
var errDone = errors.New("keep: done already")

// adopt gives the store what pages that are gone had noted. What another page has
// overtaken since becomes a desk of its own: nothing is lost, nothing is mixed.
func adopt(store Store, quick Quick) error {
	for _, key := range quick.Keys() {
		if !strings.HasPrefix(key, noteKey) {
			continue
		}
		text, _ := quick.Get(key)
		n, ok := readNote(text)
		for hash, b := range n.Data {
			ok = ok && Hash(b, func() {}) == hash
		}
		if ok {
			err := store.Update(shelfKey, n.change)
			if errors.Is(err, ErrFull) {
				continue // it stays a note
			}
			if err != nil && !errors.Is(err, errDone) {
				return err
			}
		}
		if n.Format == noteFormat || !ok && n.Format == "" { // that of a newer version is for it
			quick.Delete(key)
		}
	}
	return nil
}

// change is what a note makes of the index.
func (n note) change(old []byte) (Change, error) {
	s, err := readShelf(old)
	if err != nil {
		return Change{}, err
	}
	name, there := n.Desk, s.Desks[n.Desk]
	switch {
	case n.Next.is(there), n.Next.Same(there):
		return Change{}, errDone
	case !n.Next.follows(there, n.Seen):
		name = copyOf(n.Next.Writer)
	}
	_, c := s.with(name, s.settled(n.Next, n.Data), n.Data)
	return c, nil
}

// copyOf is the name of the desk that a page goes on with when another has its own.
func copyOf(writer string) string { return "copy-" + writer }

// settled is a desk that says which of its bytes are nowhere.
func (s Shelf) settled(d Desk, data map[string][]byte) Desk {
	there := s.hashes()
	d.Entries = slices.Clone(d.Entries)
	for i, e := range d.Entries {
		if e.Hash != "" && !there[e.Hash] && data[e.Hash] == nil {
			d.Entries[i].Lost = true
		}
	}
	return d
}
