package browser

import (
	"errors"
	"fmt"
	"sync"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// ErrBlocked means that another open page holds the store in an older form.
var ErrBlocked = errors.New("the store is held by another open page: close it and reload")

const storeTable = "files"

// A Store keeps bytes under names on this device (IndexedDB). All its calls
// wait. The zero value keeps in memory and forgets when the program ends.
type Store struct {
	mu     sync.Mutex
	memory map[string][]byte
	db     app.Value // nil: memory
}

// OpenStore opens or makes the store of that name. It waits. Where the
// browser forbids site data it returns an error and a store in memory, which
// works as long as the page is open.
func OpenStore(name string) (*Store, error) {
	factory, err := reflectGet(app.Window(), "indexedDB")
	if err == nil && !factory.Truthy() {
		err = errors.New("the browser has no IndexedDB")
	}
	if err != nil {
		return &Store{}, fmt.Errorf("open store %s: %w", name, err)
	}
	q, err := try(func() app.Value { return factory.Call("open", name, 1) })
	if err != nil {
		return &Store{}, fmt.Errorf("open store %s: %w", name, err)
	}
	blocked := make(chan error, 1)
	stopUpgrade := listen(q, "upgradeneeded", nil, func(app.Value) {
		q.Get("result").Call("createObjectStore", storeTable)
	})
	stopBlocked := listen(q, "blocked", nil, func(app.Value) { blocked <- ErrBlocked })
	defer stopUpgrade()
	defer stopBlocked()
	db, err := request(q, blocked)
	if err != nil {
		return &Store{}, fmt.Errorf("open store %s: %w", name, err)
	}
	// Another page that wants a newer form must not wait for this one.
	listen(db, "versionchange", nil, func(app.Value) { db.Call("close") })
	return &Store{db: db}, nil
}

// Get returns what was kept under name; ok is false if nothing was.
func (s *Store) Get(name string) (data []byte, ok bool, err error) {
	if s.db == nil {
		s.mu.Lock()
		defer s.mu.Unlock()
		data, ok = s.memory[name]
		return append([]byte(nil), data...), ok, nil
	}
	v, err := s.do("readonly", func(t app.Value) app.Value { return t.Call("get", name) })
	if err != nil {
		return nil, false, fmt.Errorf("get %s from the store: %w", name, err)
	}
	if !v.Truthy() {
		return nil, false, nil
	}
	data, err = toGo(v)
	return data, err == nil, err
}

// Put keeps data under name in place of what was there. The error matches
// [ErrQuota] if the device is full.
func (s *Store) Put(name string, data []byte) error {
	if s.db == nil {
		s.mu.Lock()
		defer s.mu.Unlock()
		if s.memory == nil {
			s.memory = map[string][]byte{}
		}
		s.memory[name] = append([]byte(nil), data...)
		return nil
	}
	u, err := toJS(data)
	if err != nil {
		return err
	}
	if _, err := s.do("readwrite", func(t app.Value) app.Value { return t.Call("put", u, name) }); err != nil {
		return fmt.Errorf("put %s into the store: %w", name, err)
	}
	return nil
}

// do runs one request in a transaction of its own and waits until the
// transaction is complete: a full disk shows only there.
func (s *Store) do(mode string, call func(table app.Value) app.Value) (app.Value, error) {
	ended := make(chan error, 1)
	var stops []func()
	defer func() {
		for _, stop := range stops {
			stop()
		}
	}()
	var tx app.Value
	q, err := try(func() app.Value {
		tx = s.db.Call("transaction", storeTable, mode)
		stops = append(stops,
			listen(tx, "complete", nil, func(app.Value) { ended <- nil }),
			listen(tx, "abort", nil, func(app.Value) { ended <- failure(tx.Get("error")) }))
		return call(tx.Call("objectStore", storeTable))
	})
	if err != nil {
		return q, err
	}
	v, err := request(q, nil)
	if err != nil {
		return v, err
	}
	return v, <-ended
}

// request waits for an IDBRequest, or for an error from outside.
func request(q app.Value, outside <-chan error) (app.Value, error) {
	done := make(chan error, 1)
	stopOK := listen(q, "success", nil, func(app.Value) { done <- nil })
	stopNo := listen(q, "error", nil, func(app.Value) { done <- failure(q.Get("error")) })
	defer stopOK()
	defer stopNo()
	select {
	case err := <-done:
		if err != nil {
			return app.Undefined(), err
		}
		return q.Get("result"), nil
	case err := <-outside:
		return app.Undefined(), err
	}
}
