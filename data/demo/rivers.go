package demo

import "math"

// A river runs from the mountains to the sea or another water.
type river struct {
	name                     string
	line                     []pt
	west, south, east, north float64
}

// near is a quick test whether a side can cross the river.
func (v river) near(a, b pt) bool {
	return max(a.x, b.x) >= v.west && min(a.x, b.x) <= v.east && max(a.y, b.y) >= v.south && min(a.y, b.y) <= v.north
}

// springs are the rivers: from, through, and where they reach the sea
// or another river.
var springs = []struct {
	name string
	via  []pt
}{
	{"Nolbe River", []pt{{-9, 0.5}, {-8, -9}, {2, -22}, {8, -35}, {-2, -55}}}, // out of the lake
	{"Tarsil River", []pt{{-34, 24}, {-36, 12}, {-46, 3}, {-45, -10}, {-36, -20}}},
	{"Dalmer River", []pt{{4, 13}, {14, 12}, {19.8, 22}}},
	{"Tolmer River", []pt{{62, 17}, {52, 26}, {42, 40}, {46, 64}}},
	{"Caldrin River", []pt{{66, 9}, {66, -8}, {76, -22}, {84, -45}}},
	{"Lindrel River", []pt{{-80, 8}, {-88, -4}, {-90, -18}, {-96, -32}}},
	{"Fendal River", []pt{{-66, 19}, {-72, 30}, {-72, 51}}},
	{"Bendro River", []pt{{-42, 29}, {-47, 40}, {-46, 59}}},
	{"Jondel River", []pt{{50, -29}, {42, -36}, {30, -38}, {24, -46}, {27, -57}}},
	{"Ilmane River", []pt{{44, 6}, {47, -8}, {40, -18}, {22, -17}, {8, -27}, {6, -33}}},
	{"Belvone River", []pt{{-62, -14}, {-60, -26}, {-64, -36}, {-60, -47}}},
	{"Lendor River", []pt{{70, 18}, {66, 32}, {76, 42}, {74, 61}}},
	{"Altrel River", []pt{{98, -1}, {108, -4}, {116, -8}, {124, -14}}},
	{"Tendal River", []pt{{-94, 8}, {-100, 12}, {-106, 8}, {-118, 14}}},
	{"Nerava River", []pt{{84, 12}, {92, 24}, {92, 43}}},
}

// drawRivers lets each river meander between its points; the first is moved to
// the lake and the last to the shore, where they are close.
func drawRivers(shore, lake *region) []river {
	var out []river
	for _, s := range springs {
		via := append([]pt(nil), s.via...)
		if out := lake.ring[lake.nearest(via[0])]; out.dist(via[0]) < 4 {
			via[0] = out
		}
		last := len(via) - 1
		if mouth := shore.ring[shore.nearest(via[last])]; mouth.dist(via[last]) < 8 {
			via[last] = mouth // else it joins another river
		}
		line := curve(via, 0.35)
		for i, p := range line {
			ease := min(1, float64(i)/8, float64(len(line)-1-i)/8)
			push := func(layer uint64) float64 {
				return 1.7*noise(p.x/5, p.y/5, layer) + 0.45*noise(p.x/1.3, p.y/1.3, layer+1)
			}
			line[i] = p.add(pt{push(11), push(21)}.mul(ease))
		}
		// Inside the land from spring to mouth: stop at the first step into the sea.
		for i, p := range line {
			if i > 0 && !shore.contains(p) {
				line = append(line[:i:i], shore.ring[shore.nearest(p)])
				break
			}
		}
		out = append(out, newRiver(s.name, thin(line, 0.012)))
	}
	return out
}

func newRiver(name string, line []pt) river {
	v := river{name, line, math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range line {
		v.west, v.east = min(v.west, p.x), max(v.east, p.x)
		v.south, v.north = min(v.south, p.y), max(v.north, p.y)
	}
	return v
}
