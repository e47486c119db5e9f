package page

import "sync"

// inOrder returns a function that runs what it is given through after, always
// in the order given: timers that end together wake in any order, and an
// answer must not be overtaken by the next one.
func inOrder(after func(func())) func(func()) {
	var mu sync.Mutex
	var queue []func()
	return func(f func()) {
		mu.Lock()
		queue = append(queue, f)
		mu.Unlock()
		after(func() {
			mu.Lock()
			next := queue[0]
			queue = queue[1:]
			mu.Unlock()
			next()
		})
	}
}
