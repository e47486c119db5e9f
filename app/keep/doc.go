// Package keep is what a device keeps of the page for the next visit: which files there
// are, under which names, and their bytes, without a word on what is in them.
//
// What comes in are [Item]s: all that one open page works on, each time anew. What goes
// out on the next visit is the same, or what it was before: never a mixture of the two.
// Where bytes are missing or are not what they were, that is an error, and nothing else
// stands in for them. It knows no browser: a [Store] and a [Quick] do the writing.
//
// Decisions. One index speaks of everything, and one transaction writes it together with
// the bytes that it speaks of: two writes were once done in the wrong order on a full
// device, and a map came back under another's name. Bytes lie under the hash of their
// content and are checked when read; price: some 10 ms for each megabyte. What no desk
// has any more is deleted by the same transaction. A page that is put away may not get to
// write, so each change is first noted in the quick store, in the task in which it
// happens; the next page finishes it. Pages do not lock each other out, for a lock of a
// page that hangs would hang all: each change says whose place it takes, and the
// transaction refuses it if somebody else was there. What is refused is kept as a copy.
// Index, bytes and notes of a newer version are left as they are.
//
//	tab, err := keep.Open(store, quick, id, keep.Main)
//	if tab.Save(items) { … lost, err := tab.Flush() … }
//
// Read desk.go first, then cut_test.go, which says what is promised.
//
// Files, each using only those above it:
//
//   - store.go: what is asked of a device
//   - desk.go: what a page works on
//   - shelf.go: the index of all desks
//   - old.go: what older versions kept
//   - note.go: what the store does not have yet
//   - tab.go: one open page
//   - write.go: what it wants kept
//   - others.go: other pages and desks
//   - tar.go: a file of files
//   - everything.go: all that is kept in one file
package keep
