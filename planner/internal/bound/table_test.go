package bound

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestPack: a packed table gives what the table gave.
func TestPack(t *testing.T) {
	g := rand.New(rand.NewPCG(1, 2))
	for _, shape := range [][4]int{{1, 5, 1, 1}, {3, 40, 1, 4}, {1, 7, 6, 3}, {4, 11, 3, 5}} { // below the scale, of it, above it, rows
		p := &packing{stride: shape[0], n: shape[1]}
		rows := shape[3]
		for range 3 { // one packing keeps many tables
			table := &nightTable{reach: make([]float64, rows), cost: make([]float64, shape[0]*shape[1]*shape[2]*rows)}
			for k := range table.cost {
				switch k % 7 {
				case 0:
					table.cost[k] = math.Inf(1)
				default:
					table.cost[k] = float64(g.IntN(3))
				}
			}
			costs := slices.Clone(table.cost)
			p.pack(table)
			if table.cost != nil {
				t.Fatal("the costs are kept as they were")
			}
			for class := range len(costs) / rows {
				for row := range rows {
					if got, want := table.at(class, row), costs[class*rows+row]; got != want {
						t.Fatalf("%v: class %d, row %d: %v, want %v", shape, class, row, got, want)
					}
				}
			}
		}
	}
}
