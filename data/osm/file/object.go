package file

import "github.com/paulmach/orb"

// Tags are the keys and values of an object.
type Tags map[string]string

// A Node is a point of the data.
type Node struct {
	ID    int64
	Point orb.Point
	Tags  Tags // nil if the node was asked for by number only and has none of the wanted tags
}

// A Way is a line or ring through nodes.
type Way struct {
	ID     int64
	Tags   Tags
	Refs   []int64        // node numbers, in order
	Points orb.LineString // of the nodes, where the file gives them with the way; else nil
	Center *orb.Point     // where the file gives one ("out center"); else nil
}

// A Relation groups objects.
type Relation struct {
	ID      int64
	Tags    Tags
	Members []Member
	Center  *orb.Point
}

// A Member is one object of a relation and the part that it plays there.
type Member struct {
	Type byte // 'n', 'w' or 'r'
	ID   int64
	Role string
}

// onEarth reports whether a point lies on the earth.
func onEarth(p orb.Point) bool {
	return p[0] >= -180 && p[0] <= 180 && p[1] >= -90 && p[1] <= 90
}
