package roads

import (
	"strings"

	"ullage/data/osm/file"
	"ullage/data/osm/tag"
	"ullage/geo/road/net"
)

// This file reads turn restrictions. Source: Relation:restriction.

// exceptsUs says that a restriction does not hold for motorhomes.
func exceptsUs(t file.Tags) bool {
	for part := range strings.SplitSeq(t["except"], ";") {
		if tag.HasWord("motorhome motorcar motor_vehicle vehicle", strings.TrimSpace(part)) {
			return true
		}
	}
	return false
}

// rulesOf reads the kinds of turn restriction that a relation states, from the most to the least telling for a motorhome. A
// condition on the mass, or on goods vehicles, makes it one for heavy vehicles.
func rulesOf(t file.Tags) (list []net.Turn) {
	add := func(kind string, rule net.Turn) {
		rule.Only = strings.HasPrefix(kind, "only_")
		if rule.Only || strings.HasPrefix(kind, "no_") {
			list = append(list, rule)
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
		add(tag.First(t, side.keys...), net.Turn{Heavy: side.heavy})
		for _, c := range clausesOf(tag.First(t, sometimes...)) {
			if l, sized := above(c.when); sized && l.Mass10Kg >= net.HeavyT*100 || c.when == "hgv" {
				add(c.value, net.Turn{Heavy: true})
			} else {
				add(c.value, net.Turn{Heavy: side.heavy, At: c.value + " @ (" + c.when + ")"})
			}
		}
	}
	return list
}

// turnsOver makes a rule one turn for each way from and to. The members between are a node, or ways end to end.
func turnsOver(rule net.Turn, members []file.Member, corners file.IDs) (list []net.Turn) {
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
			rule.Via = int32(corners.Index(m.ID))
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
