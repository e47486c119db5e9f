package osm

import (
	"slices"

	"github.com/paulmach/orb"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// This file finds where a vehicle drives in to a site that is drawn as an area: gates and entrances among the nodes of its
// outline, and what a site relation names as its entrance.

// gateTags are tags of a node by which a vehicle may drive in. Sources: Key:barrier; Key:entrance, "into a building or
// enclosed area"; its other values are for people on foot, ways out or deliveries.
func gateTags() (w file.Want) {
	for _, value := range []string{"yes", "main", "garage"} {
		w = append(w, file.Tag{Key: "entrance", Value: value})
	}
	for _, value := range []string{"entrance", "toll_booth"} {
		w = append(w, file.Tag{Key: "barrier", Value: value})
	}
	for _, b := range tag.Barriers {
		if b.Gate {
			w = append(w, file.Tag{Key: "barrier", Value: b.Value})
		}
	}
	return w
}

// isEntrance reports whether a member of a site relation is where one goes in. Source: Relations/Proposed/Site.
func isEntrance(m file.Member) bool { return m.Type == 'n' && m.Role == "entrance" }

// gates are the nodes by which a vehicle may drive in.
type gates struct {
	want file.Want
	at   map[int64]orb.Point
	door map[int64]bool // only an entrance: on a building's outline it is a door
}

func newGates() *gates {
	return &gates{want: gateTags(), at: map[int64]orb.Point{}, door: map[int64]bool{}}
}

// look takes in a node. A node may come again without its tags.
func (g *gates) look(n file.Node) {
	if g.want.Matches(n.Tags) && tag.Access(n.Tags, net.Service)[0] != net.Closed {
		g.at[n.ID], g.door[n.ID] = n.Point, n.Tags["barrier"] == ""
	}
}

// mostGates of one site are kept: own choice, far more than any has. Each costs a look for its road.
const mostGates = 32

// among returns the gates among nodes of an object with the tags, each once, in order of their numbers, up to mostGates.
func (g *gates) among(refs []int64, tags file.Tags) (list []orb.Point) {
	if len(g.at) == 0 {
		return nil
	}
	building := tags["building"] != "" && tags["building"] != "no"
	refs = slices.Clone(refs)
	slices.Sort(refs)
	for _, id := range slices.Compact(refs) {
		if at, ok := g.at[id]; ok && !(building && g.door[id]) && len(list) < mostGates {
			list = append(list, at)
		}
	}
	return list
}
