package draw

import (
	"math"
	"strconv"
)

// A Node is an SVG element. The zero value is an empty group of nothing: it
// prints as "".
type Node struct {
	Tag   string
	Attrs []Attr // in the order they are written
	Text  string // before the kids
	Kids  []Node
}

// An Attr is an attribute of a [Node].
type Attr struct{ Name, Value string }

// El makes a node from a tag and pairs of attribute names and values. A name
// without a value is left out.
func El(tag string, pairs ...string) Node {
	n := Node{Tag: tag}
	for i := 0; i+1 < len(pairs); i += 2 {
		n.Attrs = append(n.Attrs, Attr{pairs[i], pairs[i+1]})
	}
	return n
}

// With returns the node with more kids.
func (n Node) With(kids ...Node) Node {
	n.Kids = append(n.Kids[:len(n.Kids):len(n.Kids)], kids...)
	return n
}

// Say returns the node with its text.
func (n Node) Say(text string) Node {
	n.Text = text
	return n
}

// num writes a coordinate with at most one digit after the point: a tenth of
// a unit is finer than a screen shows.
func num(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	v = math.Round(v*10) / 10
	if v == 0 {
		v = 0 // not −0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// percent writes a share of the width.
func percent(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "0%"
	}
	return strconv.FormatFloat(math.Round(x*1e5)/1e3, 'f', -1, 64) + "%"
}
