package roads

import (
	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/data/plain"
	"ullage/geo/road/net"
)

// gateOf reads a barrier on a node; nil if nothing is in the way.
func gateOf(t file.Tags) *net.Road {
	b, ok := tag.BarrierOf(t)
	if !ok {
		return nil
	}
	r := net.Road{Class: net.Service, Access: [2]net.Access{b.Access, b.Access}, Name: plain.Text(t["name"])}
	if tag.First(t, tag.AccessKeys...) != "" {
		r.Access = tag.Access(t, net.Service)
	} else if b.Gate {
		r.Flags |= net.Gated
	}
	if b.Value == "toll_booth" {
		r.Flags |= net.Toll
	}
	readLimits(t, &r)
	if b.Value == "height_restrictor" && r.Limits.HeightCm == 0 {
		r.Flags |= net.Caution
		if r.Unclear == "" {
			r.Unclear = "height_restrictor without maxheight"
		}
	}
	return &r
}
