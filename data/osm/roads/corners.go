package roads

import (
	"github.com/paulmach/orb"

	"ullage/data/osm/file"
	"ullage/geo"
	"ullage/geo/road/net"
)

// corners are the nodes that roads go through: the i-th is [net.Input.Nodes] i.
type corners struct {
	ids   file.IDs
	known []bool // whether the file holds where it is
}

// at returns the place of a node whose position is known, or -1.
func (c *corners) at(id int64) int {
	if i := c.ids.Index(id); i >= 0 && c.known[i] {
		return i
	}
	return -1
}

// lengthM is the length of a line through nodes.
func lengthM(in *net.Input, nodes []int32) (m float64) {
	at := func(i int) orb.Point { return in.Nodes[nodes[i]].Point }
	for i := 1; i < len(nodes); i++ {
		m += geo.DistanceM(at(i-1), at(i))
	}
	return m
}
