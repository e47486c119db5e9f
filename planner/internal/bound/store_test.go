package bound

import "testing"

// TestStore: what is given does not overlap until all is taken back, and then
// the same room is given again.
func TestStore(t *testing.T) {
	var s store[int]
	sizes := []int{0, 1, 255, 256, 3, 1000, 40_000, 2}
	fill := func() (first *int) {
		var given [][]int
		for k, n := range sizes {
			x := s.take(n)
			if len(x) != n || cap(x) != n {
				t.Fatalf("room for %d with capacity %d given, want %d", len(x), cap(x), n)
			}
			for i := range x {
				x[i] = k
			}
			given = append(given, x)
		}
		for k, x := range given {
			for i := range x {
				if x[i] != k {
					t.Fatalf("value %d of part %d is %d", i, k, x[i])
				}
			}
		}
		return &given[1][0]
	}
	first := fill()
	blocks := len(s.blocks)
	s.reset()
	if again := fill(); again != first || len(s.blocks) != blocks {
		t.Errorf("%d blocks after a second use, %d before; the same room: %v", len(s.blocks), blocks, again == first)
	}
	if x := []int{7, 8}; s.keep(x)[1] != 8 || &s.keep(x)[0] == &x[0] {
		t.Error("what is kept is not a copy")
	}
}
