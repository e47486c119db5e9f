package plantest

import "context"

// Polled is a context that ends when it is asked for the n-th time: what is done of a
// search by then is the same on every machine.
type Polled struct {
	context.Context
	Asked int // how often it was asked
	n     int
}

// Polls is a context that can be asked n−1 times.
func Polls(n int) *Polled { return &Polled{Context: context.Background(), n: n} }

func (c *Polled) Err() error {
	if c.Asked++; c.Asked >= c.n {
		return context.Canceled
	}
	return nil
}
