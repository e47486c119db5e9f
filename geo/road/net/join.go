package net

import "github.com/paulmach/orb"

// Join puts inputs together, as extracts of neighbouring regions. Nodes at
// the same position are one; a way that several inputs hold under one ID is
// taken from the first, and its turns with it. One input is returned as it is.
func Join(inputs ...Input) Input {
	if len(inputs) == 1 {
		return inputs[0]
	}
	var out Input
	at := map[orb.Point]int32{}
	held := map[int64]bool{}
	for n, in := range inputs {
		to := make([]int32, len(in.Nodes))
		for i, node := range in.Nodes {
			j, ok := at[node.Point]
			if !ok {
				j = int32(len(out.Nodes))
				at[node.Point] = j
				out.Nodes = append(out.Nodes, node)
			}
			to[i] = j
		}
		own := map[int64]bool{}
		for _, w := range in.Ways {
			if held[w.ID] {
				continue
			}
			own[w.ID] = true
			nodes := make([]int32, len(w.Nodes))
			for i, node := range w.Nodes {
				nodes[i] = node
				if int(node) >= 0 && int(node) < len(to) {
					nodes[i] = to[node]
				}
			}
			w.Nodes = nodes
			out.Ways = append(out.Ways, w)
		}
		for id := range own {
			held[id] = true
		}
		for _, t := range in.Turns {
			if !own[t.From] && !own[t.To] {
				continue
			}
			switch {
			case len(t.Over) > 0:
				out.Turns = append(out.Turns, t)
			case int(t.Via) >= 0 && int(t.Via) < len(to):
				t.Via = to[t.Via]
				out.Turns = append(out.Turns, t)
			}
		}
		if n == 0 {
			out.TurnBackM = in.TurnBackM
		}
		out.Date = max(out.Date, in.Date)
		out.Notes = append(out.Notes, in.Notes...)
	}
	return out
}
