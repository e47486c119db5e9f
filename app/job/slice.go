package job

import (
	"context"
	"time"
)

// Slice is how long the planner works before it lets other things happen on
// its thread: a newer request is heard after this time at most.
const Slice = 30 * time.Millisecond

// sliced is a context that rests for a moment whenever it is asked how things
// stand and a slice is over. A browser's worker has one thread and hears no
// message while Go computes; only sleeping lets it (runtime.Gosched does
// not). Long work asks its context every few milliseconds anyway, so the
// solver need not know.
//
// It is for one goroutine.
type sliced struct {
	context.Context
	began time.Time
}

func inSlices(ctx context.Context) *sliced { return &sliced{ctx, time.Now()} }

func (s *sliced) rest() {
	if time.Since(s.began) >= Slice {
		time.Sleep(time.Millisecond)
		s.began = time.Now()
	}
}

// Err rests if it is time, and then says whether the work is still wanted.
func (s *sliced) Err() error {
	s.rest()
	return s.Context.Err()
}

// Done rests if it is time.
func (s *sliced) Done() <-chan struct{} {
	s.rest()
	return s.Context.Done()
}
