package road

// A measure is the length and the time of a way.
type measure struct{ cm, ms uint64 }

func (a measure) add(b measure) measure { return measure{a.cm + b.cm, a.ms + b.ms} }

// Measures remember the measure of shortcuts: detours share most of them.
type measures struct {
	r     *Router
	known map[uint64]measure // by arc<<1, plus 1 if taken up
}

func newMeasures(r *Router) *measures { return &measures{r, map[uint64]measure{}} }

// of returns the measure of the best way between two neighbours of the hierarchy.
func (m *measures) of(low, high uint32, up bool) measure {
	key := uint64(m.r.Net.cch.arcBetween(low, high)) << 1
	if up {
		key |= 1
	}
	if x, ok := m.known[key]; ok {
		return x
	}
	var x measure
	if dir, mid := m.r.halves(low, high, up); mid == none {
		x = measure{uint64(m.r.Net.cm[dir>>1]), uint64(m.r.ms(dir))}
	} else if up {
		x = m.of(mid, low, false).add(m.of(mid, high, true))
	} else {
		x = m.of(mid, high, false).add(m.of(mid, low, true))
	}
	m.known[key] = x
	return x
}
