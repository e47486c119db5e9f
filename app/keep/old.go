package keep

import (
	"encoding/json"
	"fmt"
	"strings"
)

// This file brings what older versions of the page kept to today's form. Each has a
// file in testdata/versions.

// Keys of the first form, which had no index: a list of the maps, and each under a key
// of its own. Nothing said which bytes went with which name.
const (
	oldTrip   = "trip"
	oldOrigin = "origin"
	oldMaps   = "places"
	oldMap    = "places/" // and a number
)

// oldEntry is a map in that list; Key "" is the site's own.
type oldEntry struct {
	Name string `json:"name"`
	Key  string `json:"key"`
}

// upgrade brings the store to today's form, in one change.
func upgrade(store Store, id string) error {
	if _, there, err := store.Get(shelfKey); err != nil || there {
		return err
	}
	keys, err := store.Keys()
	if err != nil {
		return err
	}
	var old []string
	for _, k := range keys {
		if k == oldTrip || k == oldOrigin || k == oldMaps || strings.HasPrefix(k, oldMap) {
			old = append(old, k)
		}
	}
	if len(old) == 0 {
		return nil
	}
	items, err := oldItems(store)
	if err != nil {
		return err
	}
	data := map[string][]byte{}
	desk := Desk{Revision: 1, Writer: id}
	for _, i := range items {
		desk.Entries = append(desk.Entries, i.Entry)
		if i.Data != nil {
			data[i.Hash] = i.Data
		}
	}
	return store.Update(shelfKey, func(there []byte) (Change, error) {
		if there != nil {
			return Change{}, nil // another page was faster
		}
		s, err := readShelf(nil)
		_, c := s.with(Main, desk, data)
		c.Delete = append(c.Delete, old...)
		return c, err
	})
}

// oldItems are the desk of the first form.
func oldItems(store Store) ([]Item, error) {
	var out []Item
	for _, part := range []string{oldTrip, oldOrigin} {
		if b, ok, err := store.Get(part); err != nil {
			return nil, err
		} else if ok {
			out = append(out, NewItem(part, "", b))
		}
	}
	list, ok, err := store.Get(oldMaps)
	if err != nil || !ok {
		return out, err
	}
	var maps []oldEntry
	if err := json.Unmarshal(list, &maps); err != nil {
		return nil, fmt.Errorf("%w: the list of maps: %w", ErrDamaged, err)
	}
	for _, m := range maps {
		item := Item{Entry: Entry{Part: Map, Name: m.Name}}
		if m.Key != "" {
			b, ok, err := store.Get(m.Key)
			if err != nil {
				return nil, err
			}
			if item = NewItem(Map, m.Name, b); !ok {
				item = Item{Entry: Entry{Part: Map, Name: m.Name, Lost: true}}
			}
		}
		out = append(out, item)
	}
	return out, nil
}
