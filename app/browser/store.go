package browser

import (
	"errors"
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/keep"
)

// ErrBlocked means that another open page holds the store in an older form.
var ErrBlocked = errors.New("the store is held by another open page: close it and reload")

const storeTable = "files"

// A Store is the [keep.Store] of this device (IndexedDB). All its calls wait.
type Store struct{ db app.Value }

// OpenStore opens or makes the store of that name. It waits. Where the browser forbids
// site data it returns an error.
func OpenStore(name string) (*Store, error) {
	factory, err := reflectGet(app.Window(), "indexedDB")
	if err == nil && !factory.Truthy() {
		err = errors.New("the browser has no IndexedDB")
	}
	if err != nil {
		return nil, fmt.Errorf("open store %s: %w", name, err)
	}
	q, err := try(func() app.Value { return factory.Call("open", name, 1) })
	if err != nil {
		return nil, fmt.Errorf("open store %s: %w", name, err)
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
		return nil, fmt.Errorf("open store %s: %w", name, err)
	}
	// Another page that wants a newer form must not wait for this one.
	listen(db, "versionchange", nil, func(app.Value) { db.Call("close") })
	return &Store{db}, nil
}

// Get returns what is kept under a key; ok is false if nothing is.
func (s *Store) Get(key string) (data []byte, ok bool, err error) {
	v, err := s.read(func(t app.Value) app.Value { return t.Call("get", key) })
	if err != nil || !v.Truthy() {
		return nil, false, err
	}
	data, err = toGo(v)
	return data, err == nil, err
}

// Keys lists what there is.
func (s *Store) Keys() ([]string, error) {
	v, err := s.read(func(t app.Value) app.Value { return t.Call("getAllKeys") })
	if err != nil {
		return nil, err
	}
	var keys []string
	for i := range v.Length() {
		keys = append(keys, v.Index(i).String())
	}
	return keys, nil
}

// Update does what change makes of what is under a key, in one transaction. The error
// matches [keep.ErrFull] if the device is full.
func (s *Store) Update(key string, change func(old []byte) (keep.Change, error)) error {
	var refused error
	_, err := s.do("readwrite", func(tx, table app.Value) app.Value {
		q := table.Call("get", key)
		// What is asked in the task of the answer is of the same transaction.
		q.Call("addEventListener", "success", once(func() {
			if refused = s.change(q, table, change); refused != nil {
				tx.Call("abort")
			}
		}))
		return q
	})
	switch {
	case refused != nil:
		return refused
	case errors.Is(err, ErrQuota):
		return fmt.Errorf("%w: %w", keep.ErrFull, err)
	}
	return err
}

// change asks for what is to be made of a key's bytes.
func (s *Store) change(q, table app.Value, change func([]byte) (keep.Change, error)) error {
	var old []byte
	if v := q.Get("result"); v.Truthy() {
		var err error
		if old, err = toGo(v); err != nil {
			return err
		}
	}
	c, err := change(old)
	if err != nil {
		return err
	}
	_, err = try(func() app.Value {
		for key, data := range c.Put {
			u, err := toJS(data)
			if err != nil {
				panic(err)
			}
			table.Call("put", u, key)
		}
		for _, key := range c.Delete {
			table.Call("delete", key)
		}
		return nil
	})
	return err
}

// read runs one request that changes nothing.
func (s *Store) read(call func(table app.Value) app.Value) (app.Value, error) {
	return s.do("readonly", func(_, table app.Value) app.Value { return call(table) })
}

// do begins a transaction with one request and waits until it is complete: a full
// disk shows only there.
func (s *Store) do(mode string, call func(tx, table app.Value) app.Value) (app.Value, error) {
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
		return call(tx, tx.Call("objectStore", storeTable))
	})
	if err == nil {
		err = <-ended
	}
	if err != nil {
		return app.Undefined(), fmt.Errorf("the store: %w", err)
	}
	return q.Get("result"), nil
}

// once is a callback that lives until it is called.
func once(f func()) app.Func {
	var fn app.Func
	fn = app.FuncOf(func(app.Value, []app.Value) any {
		defer guard("once")
		defer fn.Release()
		f()
		return nil
	})
	return fn
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
