package bound

import (
	"math"
	"slices"

	"ullage/planner/internal/model"
)

// This file limits what tables keep, so that memory grows no faster than the
// number of stops: beyond, rows are merged and classes are fewer. Both round in
// the plan's favour, so a bound is looser for it and never too much.

const (
	mostCosts   = 8_000_000  // numbers that all tables keep, some 64 MB
	mostRoom    = 12_000_000 // where stops crowd, more than was reckoned with
	leastRoom   = 512        // of one stop, however many there are
	leastRows   = 16         // of one table
	leastLevels = 32         // classes, nights apart

	mostWork  = 3e8       // numbers that tables with very many classes see to, about a second
	mostCells = 2_500_000 // places in packed tables, some 50 bytes each
	leastRow  = 16        // classes of tables with very many of one tank, that one apart
)

// room is how many numbers the table of one stop may keep, where there are so many.
func room(stops int) int { return max(mostRoom/(stops+1), leastRoom) }

// Counts says whether tables have room for telling so many nights apart.
func Counts(m *model.Model, nights int) bool {
	return nights <= EasilyCounted && len(m.Stops) < 2000 || (nights+1)*leastRows*leastLevels <= room(len(m.Stops))
}

// Packs says whether there is room for tables with very many classes of one tank.
func Packs(m *model.Model) bool { return rowsOf(m)*leastRow <= mostCells }

// tableRows is how many rows all tables have, about.
func tableRows(m *model.Model) int {
	places, before := 0, math.Inf(-1)
	for i := range m.Stops {
		if s := &m.Stops[i]; s.Night && s.Km+s.Half != before { // rows of one place are one
			places++
			before = s.Km + s.Half
		}
	}
	return int((1 + float64(places)*min(1, m.MaxKm/m.Length)) * float64(len(m.Stops)+1))
}

// rowsOf is how many rows all tables have at most.
func rowsOf(m *model.Model) int {
	total, to, nights := 0, 0, 0
	for i := range m.Stops {
		for to < len(m.Stops) && m.Stops[to].Km <= m.Stops[i].Km+m.MaxKm {
			if m.Stops[to].Night {
				nights++
			}
			to++
		}
		total += 1 + nights
		if m.Stops[i].Night {
			nights--
		}
	}
	return total
}

// mostRows of a table, with so many classes: all of them if that is room enough,
// else as many as all tables can have.
func mostRows(m *model.Model, size int) int {
	if rowsOf(m) <= mostRoom/size {
		return math.MaxInt
	}
	return max(leastRows, room(len(m.Stops))/size)
}

// narrow merges rows of a table until they are no more than most: of two that
// reach about as far, one that reaches as far as the nearer and has the lower costs.
func (b *Nights) narrow(t *nightTable, most int) {
	n := len(t.reach)
	if n <= most {
		return
	}
	last := make([]int, n) // which of the rows each new one ends with
	for r := range last {
		last[r] = r
	}
	t.reach, t.rowAt = slices.Clone(t.reach), slices.Clone(t.rowAt)
	for len(last) > most {
		k := 0
		for r := 1; r+1 < len(last); r++ {
			if t.reach[r+1]-t.reach[r] < t.reach[k+1]-t.reach[k] {
				k = r
			}
		}
		t.rowAt[k] = model.Lesser(t.rowAt[k], t.rowAt[k+1])
		t.reach, t.rowAt = slices.Delete(t.reach, k+1, k+2), slices.Delete(t.rowAt, k+1, k+2)
		last = slices.Delete(last, k, k+1)
	}
	wide := t.cost
	t.cost = b.room(len(last) * b.size)
	for c := range b.size {
		for r, from := range last { // the costs of a row are the least of those before it
			t.cost[c*len(last)+r] = wide[c*n+from]
		}
	}
}
