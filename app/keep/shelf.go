package keep

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
)

// This file is the one index of the store: which desks there are, and what is on
// each. It is written together with what it speaks of.

// Format is that of the index. An older one is brought to it, see old.go; a newer
// one is left alone.
const Format = "ullage-shelf-1"

// ErrNewer means that a newer version of this program wrote the index.
var ErrNewer = errors.New("it was kept by a newer version of this page")

// ErrDamaged means that what is kept is not what was kept.
var ErrDamaged = errors.New("what was kept is damaged")

const (
	shelfKey = "shelf"
	dataKey  = "data/" // and the hash
)

// Main is the desk that a page opens unless it was told otherwise.
const Main = ""

// A Shelf is the index.
type Shelf struct {
	Format string          `json:"format"`
	Desks  map[string]Desk `json:"desks"`
}

// readShelf reads an index; nothing is an empty one.
func readShelf(data []byte) (Shelf, error) {
	s := Shelf{Format: Format, Desks: map[string]Desk{}}
	if len(data) == 0 {
		return s, nil
	}
	var head struct {
		Format string `json:"format"`
	}
	if err := json.Unmarshal(data, &head); err != nil {
		return s, fmt.Errorf("%w: the index: %w", ErrDamaged, err)
	}
	if head.Format != Format {
		return s, fmt.Errorf("%w (%s)", ErrNewer, head.Format)
	}
	if err := json.Unmarshal(data, &s); err != nil {
		return s, fmt.Errorf("%w: the index: %w", ErrDamaged, err)
	}
	return s, nil
}

func (s Shelf) bytes() []byte {
	b, err := json.Marshal(s)
	if err != nil {
		panic("keep: an index is plain data: " + err.Error())
	}
	return b
}

// hashes are those of all desks that the store is to have bytes of.
func (s Shelf) hashes() map[string]bool {
	out := map[string]bool{}
	for _, d := range s.Desks {
		for _, e := range d.Entries {
			if e.Hash != "" && !e.Lost {
				out[e.Hash] = true
			}
		}
	}
	return out
}

// with is the shelf with another desk in its place, and the change that makes it so:
// bytes that no desk has any more go with it. An empty desk is none.
func (s Shelf) with(name string, d Desk, data map[string][]byte) (Shelf, Change) {
	before := s.hashes()
	next := Shelf{Format: Format, Desks: maps.Clone(s.Desks)}
	if next.Desks[name] = d; len(d.Entries) == 0 {
		delete(next.Desks, name)
	}
	after := next.hashes()
	c := Change{Put: map[string][]byte{shelfKey: next.bytes()}}
	for hash, b := range data {
		if after[hash] {
			c.Put[dataKey+hash] = b
		}
	}
	for _, hash := range slices.Sorted(maps.Keys(before)) {
		if !after[hash] {
			c.Delete = append(c.Delete, dataKey+hash)
		}
	}
	return next, c
}
