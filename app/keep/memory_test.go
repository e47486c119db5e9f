package keep

import (
	"maps"
	"slices"
	"sync"
)

// Memory is a store that forgets when the program ends. The zero value is empty.
type Memory struct {
	mu   sync.Mutex
	data map[string][]byte
}

// Get returns what is under a key.
func (m *Memory) Get(key string) ([]byte, bool, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	b, ok := m.data[key]
	return slices.Clone(b), ok, nil
}

// Update does what change makes of what is under a key.
func (m *Memory) Update(key string, change func(old []byte) (Change, error)) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	c, err := change(m.data[key])
	if err != nil {
		return err
	}
	if m.data == nil {
		m.data = map[string][]byte{}
	}
	for k, b := range c.Put {
		m.data[k] = slices.Clone(b)
	}
	for _, k := range c.Delete {
		delete(m.data, k)
	}
	return nil
}

// Keys lists what there is, sorted.
func (m *Memory) Keys() ([]string, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	return slices.Sorted(maps.Keys(m.data)), nil
}
