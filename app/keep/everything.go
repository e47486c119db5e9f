package keep

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
)

// This file makes one file of everything that is kept, and takes it in again.

// Everything is a tar file of all that the store has, as it has it, and of what else the
// page wants to have in it: also of what this version cannot read. It is given in pieces,
// as a store may be larger than memory. It waits.
func (t *Tab) Everything(more map[string][]byte, give func(piece []byte) error) error {
	keys, err := t.store.Keys()
	if err != nil {
		return err
	}
	file := func(name string, data []byte) error {
		head, err := tarHead(name, len(data))
		for _, piece := range [][]byte{head, data, tarPad(len(data))} {
			if err == nil {
				err = give(piece)
			}
		}
		return err
	}
	for i, k := range append([]string{shelfKey}, keys...) { // which comes first: IsEverything looks for it
		if i > 0 && k == shelfKey {
			continue
		}
		data, ok, err := t.store.Get(k)
		if err == nil && ok {
			err = file(k, data)
		}
		if err != nil {
			return err
		}
	}
	for _, name := range slices.Sorted(maps.Keys(more)) {
		if err := file(name, more[name]); err != nil {
			return err
		}
	}
	return give(tarEnd())
}

// IsEverything tells whether a file looks like one of [Tab.Everything].
func IsEverything(data []byte) bool {
	return len(data) > tarBlock && bytes.HasPrefix(data[tarMagic:], []byte("ustar")) && bytes.HasPrefix(data, []byte(shelfKey+"\x00"))
}

// TakeIn adds the desks of a file of everything to those that are kept. Its main one
// becomes that of a device that has none. It returns the name by which to open that one,
// and what else was in the file. It waits.
func (t *Tab) TakeIn(file []byte) (desk string, more map[string][]byte, err error) {
	files, err := readTar(file)
	if err != nil {
		return "", nil, err
	}
	s, err := readShelf(files[shelfKey])
	if err != nil {
		return "", nil, err
	}
	data := map[string][]byte{}
	for hash := range s.hashes() {
		if b, ok := files[dataKey+hash]; ok && Hash(b, func() {}) == hash {
			data[hash] = b
		}
	}
	err = t.store.Update(shelfKey, func(old []byte) (Change, error) {
		all, err := readShelf(old)
		if err != nil {
			return Change{}, err
		}
		c := Change{Put: map[string][]byte{}}
		for _, name := range slices.Sorted(maps.Keys(s.Desks)) {
			d := all.settled(s.Desks[name], data)
			to := "copy-" + Hash([]byte(fmt.Sprint(name, d.Entries)), func() {})[:12]
			if _, there := all.Desks[Main]; name == Main && !there {
				to = Main
			}
			if name == Main {
				desk = to
			}
			next, one := all.with(to, d, data)
			all = next
			maps.Copy(c.Put, one.Put)
		}
		return c, nil
	})
	for k := range files {
		if k == shelfKey || bytes.HasPrefix([]byte(k), []byte(dataKey)) {
			delete(files, k)
		}
	}
	return desk, files, err
}
