package road

import "ullage/geo/road/net"

// Around returns steps that follow each other with the roads that the router's vehicle may not use gone round: each such piece
// gives way to the best way from where the steps can be left to where they can be joined again, without turning back on them:
// only at the very start and end any direction will do.
// gone are the pieces that gave way. All else stays. Where no such way is known, as at the ends, the piece stays too: see
// [Router.Avoided]. No steps give none. Cost about 0.1 ms for each road between a piece and where it is left or joined.
func (q *Query) Around(steps []net.Step) (way, gone []net.Step) {
	for i := 0; i < len(steps); i++ {
		if !q.isClosed(steps[i]) {
			way = append(way, steps[i])
			continue
		}
		round, ok := q.around(way, steps[i:])
		if !ok {
			way = append(way, steps[i])
			continue
		}
		joined := i + round.joined
		for _, s := range steps[i:joined] {
			if q.isClosed(s) {
				gone = append(gone, s)
			}
		}
		way, i = append(way[:round.left], round.steps...), joined
	}
	return way, gone
}

func (q *Query) isClosed(s net.Step) bool { return q.r.cost[s.Dir] == noWay }

// A bypass is a way round: it replaces what was driven from step left on, and the rest up to and with step joined.
type bypass struct {
	left, joined int
	steps        []net.Step
}

// around finds the way round the closed steps with which the rest begins, from the last of driven that can be left to the first
// of the rest that can be joined. At the very start and end any direction will do.
func (q *Query) around(driven, rest []net.Step) (b bypass, ok bool) {
	if !q.mayGoRound(driven, rest) {
		return b, false
	}
	leave, join := len(driven)-1, 0
	for {
		for join < len(rest) && q.isClosed(rest[join]) {
			join++
		}
		if leave >= 0 && q.isClosed(driven[leave]) {
			return b, false
		}
		start, end := driven[max(leave, 0)], rest[min(join, len(rest)-1)]
		from, to := middle(start), middle(end)
		if leave < 0 {
			from = Spot{OK: true, Edge: start.Edge(), Cm: start.FromCm}
		}
		if join == len(rest) {
			to = Spot{OK: true, Edge: end.Edge(), Cm: end.ToCm}
		}
		round, err := q.leg(from, to, nil)
		if err != nil {
			return b, false
		}
		// Who sets out against the way that he came, or arrives against the one that he goes on, would turn on the road.
		switch first, last := round[0], round[len(round)-1]; {
		case leave >= 0 && first.Dir != start.Dir:
			leave--
		case join < len(rest) && last.Dir != end.Dir:
			join++
		default:
			return joinedUp(driven, rest, leave, join, round), true
		}
	}
}

// mayGoRound says that the way begins and ends on open roads, and is not closed from its beginning on.
func (q *Query) mayGoRound(driven, rest []net.Step) bool {
	return len(driven) > 0 && !q.isClosed(driven[0]) && !q.isClosed(rest[len(rest)-1])
}

// joinedUp completes a way round: it begins where the step that it leaves does, and ends where the one that it joins does.
func joinedUp(driven, rest []net.Step, leave, join int, round []net.Step) bypass {
	if leave >= 0 {
		round[0].FromCm = driven[leave].FromCm
	}
	if join < len(rest) {
		round[len(round)-1].ToCm = rest[join].ToCm
	}
	return bypass{max(leave, 0), min(join, len(rest)-1), round}
}

// middle is the spot half way along a step.
func middle(s net.Step) Spot { return Spot{OK: true, Edge: s.Edge(), Cm: (s.FromCm + s.ToCm) / 2} }
