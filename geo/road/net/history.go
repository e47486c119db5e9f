package net

import "slices"

// forbidden is what may not be done. All lists hold directions out of a junction.
type forbidden struct{ no, noHeavy, only, onlyHeavy []uint32 }

// says: Open, Closed, or Guests for light vehicles only.
func (f *forbidden) says(out uint32) Access {
	switch {
	case slices.Contains(f.no, out), len(f.only) > 0 && !slices.Contains(f.only, out):
		return Closed
	case slices.Contains(f.noHeavy, out), len(f.onlyHeavy) > 0 && !slices.Contains(f.onlyHeavy, out):
		return Guests
	}
	return Open
}

// add forbids a direction as a turn says, or if that is for only all others.
func (f *forbidden) add(out uint32, t *Turn) {
	switch {
	case t.Only && t.Heavy:
		f.onlyHeavy = append(f.onlyHeavy, out)
	case t.Only:
		f.only = append(f.only, out)
	case t.Heavy:
		f.noHeavy = append(f.noHeavy, out)
	default:
		f.no = append(f.no, out)
	}
}

func (f *forbidden) anything() bool {
	return len(f.no)+len(f.noHeavy)+len(f.only)+len(f.onlyHeavy) > 0
}

// A history is how somebody came to a junction, as far as that matters there or later: the last directions driven, most often
// one. Together they are the automaton of A. Aho, M. Corasick, "Efficient String Matching", Comm. ACM 18, 1975.
type history struct {
	forbidden
	in      uint32     // the last direction
	stay    bool       // nobody turns back where another road leads on
	longer  []*history // with one direction more
	shorter *history   // the longest of the others that end alike; nil: none
	number  uint32     // place in [maker.histories]
}

// next returns the history with one direction more; nil if there is none.
func (h *history) next(dir uint32) *history {
	for _, x := range h.longer {
		if x.in == dir {
			return x
		}
	}
	return nil
}

func (h *history) then(dir uint32) *history {
	x := h.next(dir)
	if x == nil {
		x = &history{in: dir}
		h.longer = append(h.longer, x)
	}
	return x
}

// says is what holds of a direction after a history: what the history forbids, and what all shorter ones do.
func (h *history) says(out uint32) (a Access) {
	for x := h; x != nil; x = x.shorter {
		a = max(a, x.forbidden.says(out))
	}
	return a
}
