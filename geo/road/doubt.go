package road

// A doubt is a turn that is forbidden at times: the directions driven, or with only those of which none may be left out.
type doubt struct {
	dirs        []uint32
	only, heavy bool
	text        string
}

// meets says that who drives steps does what may be forbidden, and after how many of them.
func (n *Network) meets(d *doubt, steps []Step) (after int, ok bool) {
	for i, dir := range d.dirs {
		switch {
		case i == len(steps):
			return 0, false
		case steps[i].Dir != dir:
			return i, d.only && i > 0
		case i < len(d.dirs)-1 && steps[i].ToCm != n.endCm(dir):
			return 0, false // ends, or turns at a via point
		}
	}
	return len(d.dirs) - 1, !d.only
}

// doubtNotes lists the turns of a path that are forbidden at times.
func (r *Router) doubtNotes(p Path) (list []Note) {
	n := r.Net
	begin := map[uint32][]int{} // direction → the doubts that begin with it
	for i, d := range n.doubts {
		if !d.heavy || r.Vehicle.MassT > HeavyT {
			begin[d.dirs[0]] = append(begin[d.dirs[0]], i)
		}
	}
	along := uint64(0)
	for i, s := range p.Steps {
		along += uint64(s.cm())
		for _, k := range begin[s.Dir] {
			d := &n.doubts[k]
			after, ok := n.meets(d, p.Steps[i:])
			if !ok {
				continue
			}
			m := float64(along) / 100
			for _, x := range p.Steps[i+1 : i+after] {
				m += float64(x.cm()) / 100
			}
			x := p.Steps[i+after]
			list = append(list, Note{Kind: UnknownLimit, AlongM: m, Point: n.stepPoints(x)[0], Road: n.Road(x.Edge()).Name,
				Text: "turn forbidden at times: " + d.text})
		}
	}
	return list
}
