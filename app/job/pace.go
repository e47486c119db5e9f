package job

import (
	"context"
	"time"
)

// Slice is how long the planner works before it lets other things happen on
// its thread: a newer request is heard after this time at most.
const Slice = 30 * time.Millisecond

// A pace is the context of long work. A browser's worker has one thread and hears
// no message while Go computes; only sleeping lets it (runtime.Gosched does not).
// Long work asks its context every few milliseconds anyway: when a slice is over,
// the question is answered after a moment's rest. What it says is what the context
// in it says, by Err as by Done: who leaves early cancels that.
//
// It is for one goroutine.
type pace struct {
	context.Context
	stop  context.CancelFunc
	began time.Time   // the slice
	busy  func() bool // somebody else goes first
	leave func() bool // what is left of the work waits for nobody
}

// paced works within a context; nobody goes first, and it is done to its end.
func paced(ctx context.Context, stop context.CancelFunc) *pace {
	never := func() bool { return false }
	return &pace{Context: ctx, stop: stop, began: time.Now(), busy: never, leave: never}
}

// Err rests if it is time, and then says whether the work is still wanted.
func (p *pace) Err() error {
	if time.Since(p.began) >= Slice {
		time.Sleep(time.Millisecond)
		p.began = time.Now()
	}
	for p.Context.Err() == nil && p.busy() {
		time.Sleep(10 * time.Millisecond)
	}
	if p.leave() {
		p.stop()
	}
	return p.Context.Err()
}

// every passes progress on in steps of n bytes, and the end.
func every(n int64, f func(done, total int64)) func(done, total int64) {
	var last int64
	return func(done, total int64) {
		if done-last >= n || done == total && done > last {
			last = done
			f(done, total)
		}
	}
}
