package road

import (
	"ullage/geo/road/net"
)

// Around returns steps that follow each other with the roads that the router's vehicle may not use gone round: each such piece
// gives way to the best way from where the steps can be left to where they can be joined again, without turning back on them: only at the
// very start and end any direction will do.
// gone are the pieces that gave way. All else stays. Where no such way is known, as at the ends, the piece stays too: see
// [Router.Avoided]. Cost about 0.1 ms for each road between a piece and where it is left or joined.
func (q *Query) Around(steps []net.Step) (way, gone []net.Step) {
	for i := 0; i < len(steps); i++ {
		if q.r.cost[steps[i].Dir] != noWay {
			way = append(way, steps[i])
			continue
		}
		kept, joined := len(way), i
		round, ok := q.around(way, steps, &kept, &joined)
		if !ok {
			way = append(way, steps[i])
			continue
		}
		for _, s := range steps[i:joined] {
			if q.r.cost[s.Dir] == noWay {
				gone = append(gone, s)
			}
		}
		way, i = append(way[:kept], round...), joined
	}
	return way, gone
}

// around finds the way round the closed steps from *joined on, from the last of driven that can be left to the first of steps
// that can be joined. It replaces both of these and what is between. At the very start and end any direction will do.
func (q *Query) around(driven, steps []net.Step, kept, joined *int) (round []net.Step, ok bool) {
	if len(driven) == 0 || q.r.cost[steps[len(steps)-1].Dir] == noWay || q.r.cost[driven[0].Dir] == noWay {
		return nil, false
	}
	leave, join := *kept-1, *joined
	for {
		for join < len(steps) && q.r.cost[steps[join].Dir] == noWay {
			join++
		}
		if leave >= 0 && q.r.cost[driven[leave].Dir] == noWay {
			return nil, false
		}
		start, end := driven[0], steps[len(steps)-1]
		from, to := Spot{OK: true, Edge: start.Edge(), Cm: start.FromCm}, Spot{OK: true, Edge: end.Edge(), Cm: end.ToCm}
		if leave >= 0 {
			start = driven[leave]
			from = middle(start)
		}
		if join < len(steps) {
			end = steps[join]
			to = middle(end)
		}
		round, err := q.leg(from, to, nil)
		if err != nil {
			return nil, false
		}
		// Who sets out against the way that he came, or arrives against the one that he goes on, would turn on the road.
		first, last := &round[0], &round[len(round)-1]
		switch {
		case leave >= 0 && first.Dir != start.Dir:
			leave--
		case join < len(steps) && last.Dir != end.Dir:
			join++
		default:
			if leave >= 0 {
				first.FromCm = start.FromCm
			}
			if join < len(steps) {
				last.ToCm = end.ToCm
			}
			*kept, *joined = max(leave, 0), min(join, len(steps)-1)
			return round, true
		}
	}
}

// middle is the spot half way along a step.
func middle(s net.Step) Spot { return Spot{OK: true, Edge: s.Edge(), Cm: (s.FromCm + s.ToCm) / 2} }
