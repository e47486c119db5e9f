package osm

import (
	"strings"

	"ullage/geo/road"
)

// A barrier on a node: how it is passed if no access tag says more.
type barrier struct {
	value string
	road.Access
	gate bool // may be shut: nothing says that it is open
}

// barriers that matter to a vehicle. Source: Key:barrier; what stands open by default is after a general routing engine,
// OSRM, profiles/car.lua, barrier_whitelist. Walls, fences and kerbs are not put on roads.
var barriers = []barrier{
	{"gate", road.Guests, true}, {"lift_gate", road.Guests, true}, {"swing_gate", road.Guests, true}, {"sliding_gate", road.Guests, true},
	{"hampshire_gate", road.Guests, true}, {"bump_gate", road.Guests, true}, {"chain", road.Closed, false}, {"bollard", road.Closed, false},
	{"block", road.Closed, false}, {"bar", road.Closed, false}, {"jersey_barrier", road.Closed, false}, {"log", road.Closed, false},
	{"debris", road.Closed, false}, {"planter", road.Closed, false}, {"rope", road.Closed, false}, {"spikes", road.Closed, false},
	{"bus_trap", road.Closed, false}, {"sump_buster", road.Closed, false}, {"cycle_barrier", road.Closed, false},
	{"motorcycle_barrier", road.Closed, false}, {"barrier", road.Closed, false}, {"yes", road.Closed, false},
	{"height_restrictor", road.Open, false}, {"width_restrictor", road.Open, false}, {"toll_booth", road.Open, false},
}

// gateOf reads a barrier on a node; nil if nothing is in the way.
func gateOf(t Tags) *road.Road {
	for _, b := range barriers {
		if t["barrier"] != b.value {
			continue
		}
		r := road.Road{Class: road.Service, Access: [2]road.Access{b.Access, b.Access}, Name: t["name"]}
		if first(t, accessKeys...) != "" {
			r.Access = accessOf(t, road.Service)
		} else if b.gate {
			r.Flags |= road.Gated
		}
		if b.value == "toll_booth" {
			r.Flags |= road.Toll
		}
		readRoadLimits(t, &r)
		if b.value == "height_restrictor" && r.Limits.HeightCm == 0 {
			r.Flags |= road.Caution
			if r.Unclear == "" {
				r.Unclear = "height_restrictor without maxheight"
			}
		}
		return &r
	}
	return nil
}

// turnsOf reads a turn restriction with a node between. Source: Relation:restriction.
func (x *roadReader) turnsOf(r Relation, corners ids) (list []road.Turn) {
	kind, heavy := first(r.Tags, "restriction:motorhome", "restriction:motorcar", "restriction:motor_vehicle", "restriction"), false
	if kind == "" {
		if kind = r.Tags["restriction:hgv"]; kind != "" {
			heavy = true
		}
	}
	if kind == "" {
		// At times only: taken to hold always, which costs a detour but breaks no rule.
		text, _, _ := strings.Cut(r.Tags["restriction:conditional"], "@")
		if kind = strings.TrimSpace(text); kind != "" {
			x.left["turn restrictions that hold at times are taken to hold always"]++
		}
	}
	no, only := strings.HasPrefix(kind, "no_"), strings.HasPrefix(kind, "only_")
	if !no && !only {
		return nil
	}
	for part := range strings.SplitSeq(r.Tags["except"], ";") {
		if hasWord("motorhome motorcar motor_vehicle vehicle", strings.TrimSpace(part)) {
			return nil
		}
	}
	var from, to []int64
	via := -1
	for _, m := range r.Members {
		switch {
		case m.Role == "from" && m.Type == 'w':
			from = append(from, m.ID)
		case m.Role == "to" && m.Type == 'w':
			to = append(to, m.ID)
		case m.Role == "via" && m.Type == 'n' && via < 0:
			via = corners.index(m.ID)
		case m.Role == "via":
			x.left["turn restrictions over a way between are left out"]++
			return nil
		}
	}
	if via < 0 {
		return nil // of other roads than ours
	}
	for _, f := range from {
		for _, t := range to {
			list = append(list, road.Turn{From: f, To: t, Via: int32(via), Only: only, Heavy: heavy})
		}
	}
	return list
}
