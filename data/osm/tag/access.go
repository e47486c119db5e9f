package tag

import (
	"strings"

	"ullage/data/osm/file"
	"ullage/geo/road/net"
)

// This file says who may drive where.

// Values of access keys. Source: Key:access. What is not listed is allowed.
const (
	NoEntry = "no private permit agricultural forestry emergency official delivery military residents employees staff use_sidepath psv bus taxi foot bicycle"
	byRight = "destination customers unknown"
)

// Entry reads the value of an access key; of several the one that lets in most: "no;destination", "agricultural;forestry".
func Entry(value string) net.Access {
	least := net.Closed
	for part := range strings.SplitSeq(value, ";") {
		switch part = strings.TrimSpace(part); {
		case part == "" || HasWord(NoEntry, part):
		case HasWord(byRight, part):
			least = min(least, net.Guests)
		default:
			return net.Open
		}
	}
	return least
}

// AccessKeys from the most to the least telling for a motorhome. Source: Key:access, the tree of land transport, where
// motorhome stands beside motorcar; a road that says only what cars may do is taken to mean motorhomes.
var AccessKeys = []string{"motorhome", "motorcar", "motor_vehicle", "vehicle", "access"}

// Access reads who may drive each way: along, against.
func Access(t file.Tags, class net.Class) (a [2]net.Access) {
	for i, side := range []string{":forward", ":backward"} {
		if class == net.Track || // in most countries for those who work the land, unless it says otherwise; common practice
			HasWord("driveway parking_aisle drive-through emergency_access", t["service"]) {
			a[i] = net.Guests
		}
		for _, k := range AccessKeys {
			v, ok := t[k+side]
			if !ok {
				v, ok = t[k]
			}
			if !ok {
				continue
			}
			if e := Entry(v); e != net.Open || class == net.Track {
				a[i] = e
			}
			break
		}
	}
	return a
}
