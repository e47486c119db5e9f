package keep

import (
	"encoding/hex"
	"hash/fnv"
	"slices"
)

// Parts of a desk. What is in them is for who reads them.
const (
	Trip   = "trip"
	Route  = "route"  // of the trip: the two belong together
	Origin = "origin" // of the route
	Work   = "work"   // half done: texts, a drawing, its steps
	Before = "before" // what a plan from the road can be taken back to
	Map    = "map"
	Fleet  = "fleet"
	Aside  = "aside" // what this version cannot read
)

// An Entry is one file of a desk, without its bytes.
type Entry struct {
	Part string `json:"part"`           // what it is to the desk: trip, route, map…
	Name string `json:"name,omitempty"` // the person's name of it
	Hash string `json:"hash,omitempty"` // of its bytes; "": they are not this device's to keep
	Size int    `json:"size,omitempty"` // bytes
	Lost bool   `json:"lost,omitempty"` // there was no room for the bytes: only the name is kept
}

// A Desk is all that one open page works on.
type Desk struct {
	Revision int     `json:"revision"` // grows with each change
	Writer   string  `json:"writer"`   // the page that made it
	Entries  []Entry `json:"entries"`
}

// An Item is an entry with its bytes, which are nil where the store has them.
type Item struct {
	Entry
	Data []byte
}

// NewItem is an item of these bytes.
func NewItem(part, name string, data []byte) Item {
	return Item{Entry{Part: part, Name: name, Hash: Hash(data, func() {}), Size: len(data)}, data}
}

// Hash names bytes by their content. It calls rest after each 256 kB, so that a
// page can breathe in between.
func Hash(data []byte, rest func()) string {
	const bite = 256 << 10
	h := fnv.New128a()
	for len(data) > bite {
		h.Write(data[:bite])
		data = data[bite:]
		rest()
	}
	h.Write(data)
	return hex.EncodeToString(h.Sum(nil))
}

// Of lists the entries of a part.
func (d Desk) Of(part string) []Entry {
	var out []Entry
	for _, e := range d.Entries {
		if e.Part == part {
			out = append(out, e)
		}
	}
	return out
}

// Same tells whether two desks hold the same.
func (d Desk) Same(other Desk) bool { return slices.Equal(d.Entries, other.Entries) }

// follows tells whether the next desk may take the place of what is there: that is
// what its writer saw, or a desk of its own.
func (next Desk) follows(there, seen Desk) bool {
	if there.Writer == next.Writer {
		return there.Revision < next.Revision
	}
	return there.Writer == seen.Writer && there.Revision == seen.Revision
}

// is tells whether this desk, or a later one of the same page, is there.
func (next Desk) is(there Desk) bool {
	return there.Writer == next.Writer && there.Revision >= next.Revision
}
