package keep

import (
	"maps"
	"slices"
	"strings"
)

// This file is about other pages that are open, and about other desks.

// Heard takes what a quick store says of another page: that text is now under key. It
// tells whether that page has changed the desk of this one; nothing is written any more
// then, until [Tab.Fork] or a new [Open].
func (t *Tab) Heard(key, text string) bool {
	if !strings.HasPrefix(key, noteKey) {
		return false
	}
	n, ok := readNote(text)
	t.mu.Lock()
	defer t.mu.Unlock()
	if !ok || n.Aside || n.Desk != t.desk || n.Next.Writer == t.id || n.Next.Same(t.next) {
		return false
	}
	t.overtaken = true
	return true
}

// Fork goes on with a desk of this page's own, which holds what this page has now. It
// returns the desk's name, to open it again by.
func (t *Tab) Fork(items []Item) string {
	t.mu.Lock()
	t.desk, t.overtaken = copyOf(t.id), false
	t.seen.Revision, t.seen.Writer = 0, ""
	t.next = Desk{Revision: t.next.Revision}
	name := t.desk
	t.mu.Unlock()
	t.Save(items)
	return name
}

// SetAside puts an index that this version cannot read out of the way, as it is, and
// with all that it speaks of; the tab keeps things from then on. It waits.
func (t *Tab) SetAside() error {
	err := t.store.Update(shelfKey, func(old []byte) (Change, error) {
		if _, err := readShelf(old); err == nil {
			return Change{}, nil
		}
		s, _ := readShelf(nil)
		return Change{Put: map[string][]byte{asideKey + Hash(old, func() {}): old, shelfKey: s.bytes()}}, nil
	})
	if err != nil {
		return err
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.frozen = false
	return nil
}

const asideKey = "aside/" // and a hash

// Desks lists the desks that are kept, by name. It waits.
func (t *Tab) Desks() (names []string, desks map[string]Desk, err error) {
	s, err := t.shelf()
	return slices.Sorted(maps.Keys(s.Desks)), s.Desks, err
}

// Remove takes a desk away with what no other has. It waits.
func (t *Tab) Remove(name string) error {
	return t.store.Update(shelfKey, func(old []byte) (Change, error) {
		s, err := readShelf(old)
		if err != nil {
			return Change{}, err
		}
		_, c := s.with(name, Desk{}, nil)
		return c, nil
	})
}
