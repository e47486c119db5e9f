package bound

// A store gives out room for values, and takes it all back at once. The tables
// of a long trip are some ten megabytes in a thousand parts, and a dozen times
// as many are made to choose from. The zero value is empty.
type store[T any] struct {
	blocks [][]T
	block  int // from which is given now
	given  int // of it
}

// take gives room for n values, whatever is in it.
func (s *store[T]) take(n int) []T {
	for s.block < len(s.blocks) && len(s.blocks[s.block])-s.given < n {
		s.block, s.given = s.block+1, 0
	}
	if s.block == len(s.blocks) {
		s.blocks = append(s.blocks, make([]T, max(n, 256<<min(len(s.blocks), 7))))
	}
	s.given += n
	return s.blocks[s.block][s.given-n : s.given : s.given]
}

// keep gives a copy of values.
func (s *store[T]) keep(values []T) []T {
	to := s.take(len(values))
	copy(to, values)
	return to
}

// reset takes all back: what was given is no more to be used.
func (s *store[T]) reset() { s.block, s.given = 0, 0 }

// scratch is n numbers to write to before the next call.
func scratch(keep *[]float64, n int) []float64 {
	if cap(*keep) < n {
		*keep = make([]float64, n)
	}
	return (*keep)[:n]
}
