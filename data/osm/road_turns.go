package osm

import (
	"strings"

	"ullage/geo/road/net"
)

// A barrier on a node: how it is passed if no access tag says more.
type barrier struct {
	value string
	net.Access
	gate bool // may be shut: nothing says that it is open
}

// barriers that matter to a vehicle. Source: Key:barrier; what stands open by default is after a general routing engine,
// OSRM, profiles/car.lua, barrier_whitelist. Walls, fences and kerbs are not put on roads.
var barriers = []barrier{
	{"gate", net.Guests, true}, {"lift_gate", net.Guests, true}, {"swing_gate", net.Guests, true}, {"sliding_gate", net.Guests, true},
	{"hampshire_gate", net.Guests, true}, {"bump_gate", net.Guests, true}, {"chain", net.Closed, false}, {"bollard", net.Closed, false},
	{"block", net.Closed, false}, {"bar", net.Closed, false}, {"jersey_barrier", net.Closed, false}, {"log", net.Closed, false},
	{"debris", net.Closed, false}, {"planter", net.Closed, false}, {"rope", net.Closed, false}, {"spikes", net.Closed, false},
	{"bus_trap", net.Closed, false}, {"sump_buster", net.Closed, false}, {"cycle_barrier", net.Closed, false},
	{"motorcycle_barrier", net.Closed, false}, {"barrier", net.Closed, false}, {"yes", net.Closed, false},
	{"height_restrictor", net.Open, false}, {"width_restrictor", net.Open, false}, {"toll_booth", net.Open, false},
}

// gateOf reads a barrier on a node; nil if nothing is in the way.
func gateOf(t Tags) *net.Road {
	for _, b := range barriers {
		if t["barrier"] != b.value {
			continue
		}
		r := net.Road{Class: net.Service, Access: [2]net.Access{b.Access, b.Access}, Name: t["name"]}
		if first(t, accessKeys...) != "" {
			r.Access = accessOf(t, net.Service)
		} else if b.gate {
			r.Flags |= net.Gated
		}
		if b.value == "toll_booth" {
			r.Flags |= net.Toll
		}
		readRoadLimits(t, &r)
		if b.value == "height_restrictor" && r.Limits.HeightCm == 0 {
			r.Flags |= net.Caution
			if r.Unclear == "" {
				r.Unclear = "height_restrictor without maxheight"
			}
		}
		return &r
	}
	return nil
}

// turnsOf reads a turn restriction. Source: Relation:restriction. What holds at times only is kept with its words.
func (x *roadReader) turnsOf(r Relation, corners ids) (list []net.Turn) {
	for part := range strings.SplitSeq(r.Tags["except"], ";") {
		if hasWord("motorhome motorcar motor_vehicle vehicle", strings.TrimSpace(part)) {
			return nil
		}
	}
	for _, rule := range rulesOf(r.Tags) {
		if rule.At != "" {
			x.left["turn restrictions hold at times only: the turn counts as allowed, with a caution"]++
		}
		list = append(list, turnsOver(rule, r.Members, corners)...)
	}
	return list
}

// rulesOf reads the kinds of turn restriction that a relation states, from the most to the least telling for a motorhome. A
// condition on the mass, or on goods vehicles, makes it one for heavy vehicles.
func rulesOf(t Tags) (list []net.Turn) {
	add := func(kind string, heavy bool, at string) {
		no, only := strings.HasPrefix(kind, "no_"), strings.HasPrefix(kind, "only_")
		if no || only {
			list = append(list, net.Turn{Only: only, Heavy: heavy, At: at})
		}
	}
	for _, side := range []struct {
		keys  []string
		heavy bool
	}{
		{[]string{"restriction:motorhome", "restriction:motorcar", "restriction:motor_vehicle", "restriction"}, false},
		{[]string{"restriction:hgv"}, true},
	} {
		var sometimes []string
		for _, k := range side.keys {
			sometimes = append(sometimes, k+":conditional")
		}
		add(first(t, side.keys...), side.heavy, "")
		for _, c := range clausesOf(first(t, sometimes...)) {
			if l, sized := above(c.when); sized && l.Mass10Kg >= net.HeavyT*100 || c.when == "hgv" {
				add(c.value, true, "")
			} else {
				add(c.value, side.heavy, c.value+" @ ("+c.when+")")
			}
		}
	}
	return list
}

// turnsOver makes a rule one turn for each way from and to. The members between are a node, or ways end to end.
func turnsOver(rule net.Turn, members []Member, corners ids) (list []net.Turn) {
	var from, to []int64
	rule.Via = -1
	for _, m := range members {
		switch {
		case m.Role == "from" && m.Type == 'w':
			from = append(from, m.ID)
		case m.Role == "to" && m.Type == 'w':
			to = append(to, m.ID)
		case m.Role == "via" && m.Type == 'w':
			rule.Over = append(rule.Over, m.ID)
		case m.Role == "via" && m.Type == 'n' && rule.Via < 0:
			rule.Via = int32(corners.index(m.ID))
		}
	}
	if rule.Via < 0 && len(rule.Over) == 0 {
		return nil // of other roads than ours
	}
	for _, f := range from {
		for _, t := range to {
			rule.From, rule.To = f, t
			list = append(list, rule)
		}
	}
	return list
}
