package net

// meets says that who drives steps does what may be forbidden, and after how many of them.
func (n *Network) meets(d *doubt, steps []Step) (after int, ok bool) {
	for i, dir := range d.dirs {
		switch {
		case i == len(steps):
			return 0, false
		case steps[i].Dir != dir:
			return i, d.only && i > 0
		case i < len(d.dirs)-1 && steps[i].ToCm != n.EndCm(dir):
			return 0, false // ends, or turns at a via point
		}
	}
	return len(d.dirs) - 1, !d.only
}

// A TurnAtTimes is a turn that steps take and that is forbidden at times.
type TurnAtTimes struct {
	Step int    // the one that begins with the turn
	At   string // when it is forbidden, as tagged
}

// TurnsAtTimes lists the turns of steps that follow each other that are forbidden at times to a vehicle, by where the forbidden
// way begins. Cost linear in the steps.
func (n *Network) TurnsAtTimes(steps []Step, v *Vehicle) (list []TurnAtTimes) {
	begin := map[uint32][]int{} // direction → the doubts that begin with it
	for i, d := range n.doubts {
		if !d.heavy || v.MassT > HeavyT {
			begin[d.dirs[0]] = append(begin[d.dirs[0]], i)
		}
	}
	for i, s := range steps {
		for _, k := range begin[s.Dir] {
			if after, ok := n.meets(&n.doubts[k], steps[i:]); ok {
				list = append(list, TurnAtTimes{i + after, n.doubts[k].text})
			}
		}
	}
	return list
}
