package net

import (
	"slices"
)

// This file turns forbidden turns into further states: who comes to a junction by an edge with forbidden turns is in a state
// of its own, from which only the other arcs lead away. Where a turn is forbidden over ways between, so is who comes along
// them. That is exact, and costs one state for each such edge.

// forbidTurns makes the histories after which turns are forbidden. Only binds from its first way on: who has turned into the
// first way between must take all of them, as the sign stands before the first junction.
func (b *maker) forbidTurns() {
	b.comes = map[uint32]*history{}
	for _, t := range b.in.Turns {
		dirs, ok := b.turnOver(t)
		if len(t.Over) == 0 {
			dirs, ok = b.turnAt(t)
		}
		if !ok || slices.ContainsFunc(dirs[:len(dirs)-1], func(d uint32) bool { return !b.mayDrive(d) }) {
			b.omitted[UnfittingTurns]++
			continue
		}
		if t.At != "" {
			b.doubts = append(b.doubts, doubt{dirs, t.Only, t.Heavy, t.At})
			continue
		}
		h := b.cameBy(dirs[0])
		for i, next := range dirs[1:] {
			if last := i == len(dirs)-2; t.Only || last {
				h.add(next, &t)
				if last {
					break
				}
			}
			h = h.then(next)
		}
	}
}

// turnAt returns the directions into and out of a junction that a turn names.
func (b *maker) turnAt(t Turn) (dirs []uint32, ok bool) {
	if t.Via < 0 || int(t.Via) >= len(b.junct) || b.junct[t.Via] == 0 {
		return nil, false
	}
	via := uint32(b.junct[t.Via] - 1)
	in, ok1 := b.endAt(t.From, via)
	out, ok2 := b.endAt(t.To, via)
	return []uint32{in, out ^ 1}, ok1 && ok2
}

// turnOver returns the directions from the end of one way over others into the last. ok is false if they do not meet end to
// end in one and only one way.
func (b *maker) turnOver(t Turn) (dirs []uint32, ok bool) {
	ends := b.ends[t.From]
	if len(t.Over) == 0 || len(b.edges) == 0 || ends[0] < 0 {
		return nil, false
	}
	for _, in := range []uint32{uint32(ends[0])<<1 | 1, uint32(ends[1]) << 1} {
		list := []uint32{in}
		for _, way := range t.Over {
			if list != nil {
				list = b.along(list, way)
			}
		}
		if list == nil {
			continue
		}
		last, fits := b.endAt(t.To, b.headOf(list[len(list)-1]))
		if !fits {
			continue
		}
		if ok {
			return nil, false // by both ends
		}
		dirs, ok = append(list, last^1), true
	}
	return dirs, ok
}

// along appends the directions over a whole way from where the list leads; nil if the way does not begin or end there.
func (b *maker) along(list []uint32, way int64) []uint32 {
	ends, named := b.ends[way]
	if !named || ends[0] < 0 {
		return nil
	}
	at := b.headOf(list[len(list)-1])
	first, last := b.edges[ends[0]], b.edges[ends[1]]
	ahead := first.from == at
	if ahead == (last.to == at) {
		return nil
	}
	for i := ends[0]; i <= ends[1]; i++ {
		dir := uint32(i) << 1
		if !ahead {
			dir = uint32(ends[0]+ends[1]-i)<<1 | 1
		}
		if b.headOf(dir^1) != at {
			return nil // in pieces
		}
		list, at = append(list, dir), b.headOf(dir)
	}
	return list
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

// cameBy returns the history of one direction, made if it is not there.
func (b *maker) cameBy(dir uint32) *history {
	if b.comes[dir] == nil {
		b.comes[dir] = &history{in: dir}
	}
	return b.comes[dir]
}
