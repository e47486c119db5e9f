package road

import (
	"fmt"
	"slices"
)

// This file turns forbidden turns into further states: who comes to a junction by an edge with forbidden turns is in a state
// of its own, from which only the other arcs lead away. That is exact, and costs one state for each such edge.

// forbidden is what who comes by an edge may not do. All lists hold directions out of the junction.
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

func (b *maker) forbidTurns() {
	b.comes = map[uint32]*forbidden{}
	unfit := 0
	for _, t := range b.in.Turns {
		if t.Via < 0 || int(t.Via) >= len(b.junct) || b.junct[t.Via] == 0 {
			unfit++
			continue
		}
		via := uint32(b.junct[t.Via] - 1)
		in, ok1 := b.endAt(t.From, via)
		out, ok2 := b.endAt(t.To, via)
		out ^= 1
		if !ok1 || !ok2 || !b.mayDrive(in) {
			unfit++
			continue
		}
		f := b.comes[in]
		if f == nil {
			f = &forbidden{}
			b.comes[in] = f
		}
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
	if unfit > 0 {
		b.notes = append(b.notes, fmt.Sprintf("%d of %d turn restrictions do not fit the roads they name and are left out", unfit, len(b.in.Turns)))
	}
}

// turnBackM is the distance after a forbidden turn within which nobody turns back into the road that he came by. Else a sign
// against turning left would be kept by going on and turning round at the next junction. Farther on it is allowed, as it is
// where no turn was forbidden: there no best way turns back. Common practice, no source.
const turnBackM = 500

// forbidTurningBack adds states for all ways on from junctions with forbidden turns, up to turnBackM: in these the road back is
// closed, unless there is no other.
func (b *maker) forbidTurningBack() {
	reach := b.in.TurnBackM
	if reach == 0 {
		reach = turnBackM
	}
	left := map[uint32]uint32{} // direction → centimetres still to go from its end
	var queue []uint32
	for dir := range b.comes {
		queue = append(queue, dir)
	}
	slices.Sort(queue)
	if reach > 0 {
		for _, dir := range queue {
			left[dir] = uint32(min(reach*100, maxCost))
		}
	}
	for i := 0; i < len(queue); i++ {
		dir := queue[i]
		to, f := left[dir], b.comes[dir]
		if to == 0 {
			continue
		}
		onward := 0
		for _, out := range b.outOf(b.headOf(dir)) {
			if out == dir^1 || f.says(out) == Closed {
				continue
			}
			onward++
			cm := b.edges[out>>1].cm
			if cm >= to || left[out] >= to-cm { // too far, or known with as much to go
				continue
			}
			if b.comes[out] == nil {
				b.comes[out] = &forbidden{}
			}
			left[out] = to - cm
			queue = append(queue, out)
		}
		if onward > 0 && !slices.Contains(f.no, dir^1) {
			f.no = append(f.no, dir^1)
		}
	}
	for dir := range b.comes {
		b.order = append(b.order, dir)
	}
	slices.Sort(b.order)
}

// endAt returns the direction that arrives at a junction by the end of a way; ok is false if none or both ends do.
func (b *maker) endAt(way int64, junction uint32) (dir uint32, ok bool) {
	ends, named := b.ends[way]
	if !named || ends[0] < 0 {
		return 0, false
	}
	atStart := b.edges[ends[0]].from == junction
	atEnd := b.edges[ends[1]].to == junction
	switch {
	case atStart && !atEnd:
		return uint32(ends[0])<<1 | 1, true
	case atEnd && !atStart:
		return uint32(ends[1]) << 1, true
	}
	return 0, false
}
