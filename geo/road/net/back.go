package net

import "slices"

// histories lists all, short ones first, and finds for each the longest shorter one.
func (b *maker) histories() (list []*history) {
	var dirs []uint32
	for dir := range b.comes {
		dirs = append(dirs, dir)
	}
	slices.Sort(dirs)
	for _, dir := range dirs {
		list = append(list, b.comes[dir])
	}
	for i := 0; i < len(list); i++ {
		h := list[i]
		h.number = uint32(i)
		for _, x := range h.longer {
			x.shorter = b.comes[x.in]
			for s := h.shorter; s != nil; s = s.shorter {
				if found := s.next(x.in); found != nil {
					x.shorter = found
					break
				}
			}
			list = append(list, x)
		}
	}
	return list
}

// ways lists the directions that are open after a history; the one back only where no other is.
func (b *maker) ways(h *history) (list []uint32) {
	back, others := false, false
	for _, dir := range b.leaving.Of(b.headOf(h.in)) {
		switch open := h.says(dir) != Closed; {
		case dir == h.in^1:
			back = open
		default:
			others = true
			if open {
				list = append(list, dir)
			}
		}
	}
	if back && others && list == nil {
		list = append(list, h.in^1)
	}
	return list
}

// bans lists the directions that are forbidden after a history; with heavyOnly those forbidden to heavy vehicles.
func (b *maker) bans(h *history) (bans []uint32) {
	last := b.comes[h.in]
	stay := last != nil && last.stay && slices.ContainsFunc(b.ways(h), func(dir uint32) bool { return dir != h.in^1 })
	for _, dir := range b.leaving.Of(b.headOf(h.in)) {
		switch a := h.says(dir); {
		case a == Closed, stay && dir == h.in^1:
			bans = append(bans, dir)
		case a == Guests:
			bans = append(bans, dir|heavyOnly)
		}
	}
	return bans
}

// turnBackM is the distance after a forbidden turn within which nobody turns back into the road that he came by. Else a sign
// against turning left would be kept by going on and turning round at the next junction. Farther on it is allowed, as it is
// where no turn was forbidden: there no best way turns back. Common practice, no source.
const turnBackM = 500

// forbidTurningBack adds histories for all ways on from junctions with forbidden turns, up to turnBackM: after these the road
// back is closed, unless there is no other. So it is on ways over which a turn is forbidden.
func (b *maker) forbidTurningBack() {
	reach := b.in.TurnBackM
	if reach == 0 {
		reach = turnBackM
	}
	if reach < 0 {
		return
	}
	left := map[uint32]uint32{} // direction → centimetres still to go from its end
	ending := map[uint32][]*history{}
	var queue []uint32
	list := b.histories()
	ahead := make([]bool, len(list)) // something is forbidden after it or after a longer one
	for i, h := range slices.Backward(list) {
		ahead[i] = h.anything() || slices.ContainsFunc(h.longer, func(x *history) bool { return ahead[x.number] })
	}
	for i, h := range list {
		ending[h.in] = append(ending[h.in], h)
		if ahead[i] && left[h.in] == 0 {
			left[h.in] = uint32(min(reach*100, MaxCost))
			queue = append(queue, h.in)
		}
	}
	slices.Sort(queue)
	for i := 0; i < len(queue); i++ {
		in := queue[i]
		if b.comes[in] == nil {
			ending[in] = append(ending[in], b.cameBy(in))
		}
		b.comes[in].stay = true
		to := left[in]
		for _, h := range ending[in] {
			for _, out := range b.ways(h) {
				cm := b.edges[out>>1].cm
				if cm >= to || left[out] >= to-cm { // too far, or known with as much to go
					continue
				}
				left[out] = to - cm
				queue = append(queue, out)
			}
		}
	}
}
