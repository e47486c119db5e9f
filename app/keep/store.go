package keep

import "errors"

// ErrFull means that the device has no room for what was to be kept.
var ErrFull = errors.New("there is no room left on this device for it")

// A Store keeps bytes under keys. Its calls may wait.
type Store interface {
	// Get returns what is under a key; ok is false where nothing is.
	Get(key string) (data []byte, ok bool, err error)
	// Update does what change makes of what is under a key: all of it or, after any
	// error, nothing. Nobody else reads or writes in between. change must not wait.
	Update(key string, change func(old []byte) (Change, error)) error
	// Keys lists what there is.
	Keys() ([]string, error)
}

// A Change is what is put and deleted at once.
type Change struct {
	Put    map[string][]byte
	Delete []string
}

// A Quick keeps short texts and is done when it returns: a page may be put away
// before a [Store] has written. Other pages see at once what it holds.
type Quick interface {
	Keys() []string
	Get(key string) (text string, ok bool)
	Set(key, text string) error
	Delete(key string)
}
