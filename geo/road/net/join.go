package net

import "github.com/paulmach/orb"

// Join puts inputs together, as extracts of neighbouring regions. Nodes at
// the same position are one; a way that several inputs hold under one ID is
// taken from the first, and its turns with it. One input is returned as it is,
// none gives none. Inputs are kept unchanged. Cost linear.
func Join(inputs ...Input) Input {
	if len(inputs) == 1 {
		return inputs[0]
	}
	j := joiner{at: map[orb.Point]int32{}, held: map[int64]bool{}}
	for n, in := range inputs {
		j.add(in)
		if n == 0 {
			j.out.TurnBackM = in.TurnBackM
		}
	}
	return j.out
}

type joiner struct {
	out  Input
	at   map[orb.Point]int32 // the node there
	held map[int64]bool      // ways of inputs before
}

func (j *joiner) add(in Input) {
	to := make([]int32, len(in.Nodes)) // node of in → node of out
	for i, node := range in.Nodes {
		to[i] = j.node(node)
	}
	own := map[int64]bool{}
	for _, w := range in.Ways {
		if !j.held[w.ID] {
			own[w.ID] = true
			j.out.Ways = append(j.out.Ways, renamed(w, to))
		}
	}
	for id := range own {
		j.held[id] = true
	}
	for _, t := range in.Turns {
		fits := int(t.Via) >= 0 && int(t.Via) < len(to)
		if !own[t.From] && !own[t.To] || len(t.Over) == 0 && !fits {
			continue
		}
		if len(t.Over) == 0 {
			t.Via = to[t.Via]
		}
		j.out.Turns = append(j.out.Turns, t)
	}
	j.out.Date = max(j.out.Date, in.Date)
	for why, n := range in.Omitted {
		j.out.Omitted[why] += n
	}
}

// node returns the number of a node; the first one at a position stands for all.
func (j *joiner) node(node Node) int32 {
	i, ok := j.at[node.Point]
	if !ok {
		i = int32(len(j.out.Nodes))
		j.at[node.Point] = i
		j.out.Nodes = append(j.out.Nodes, node)
	}
	return i
}

// renamed is a way with its nodes by new numbers. One that is not there stays so: [Build] says so.
func renamed(w Way, to []int32) Way {
	nodes := make([]int32, len(w.Nodes))
	for i, node := range w.Nodes {
		nodes[i] = node
		if int(node) >= 0 && int(node) < len(to) {
			nodes[i] = to[node]
		}
	}
	w.Nodes = nodes
	return w
}
