package bound

import "ullage/planner/internal/model"

// This file computes with the classes of the tables by nights: a tank filled,
// classes moved. Each class has rows numbers.

// lowest lowers a to b where that is less.
func lowest(a, b []float64) {
	b = b[:len(a)]
	for n, x := range b {
		if x < a[n] {
			a[n] = x
		}
	}
}

// fill allows tank k to be filled by the service.
func (b *Nights) fill(cost []float64, rows, k int, y *model.Service) {
	n := b.scales[k].n
	premium := b.premium(y)
	for c := range n - 1 { // what is read is behind what is written
		if premium == 0 {
			b.lower(cost, cost, rows, k, c, n-1, y.Fixed)
			continue
		}
		for to := c + 1; to < n; to++ {
			b.lower(cost, cost, rows, k, c, to, y.Fixed+premium*b.scales[k].from(b.scales[k].values[c], to))
		}
	}
}

// lower makes class c of tank k in costs at most cost more than class to in from.
func (b *Nights) lower(costs, from []float64, rows, k, c, to int, cost float64) {
	step := b.stride[k] * rows
	for base := 0; base < len(costs); base += step * b.scales[k].n {
		at := costs[base+c*step : base+c*step+step]
		for n, x := range from[base+to*step : base+to*step+step] {
			if x += cost; x < at[n] {
				at[n] = x
			}
		}
	}
}

// premium is what a unit costs at the service more than its worth.
func (b *Nights) premium(y *model.Service) float64 {
	if b.m.Tanks[y.Tank].Waste || b.m.Tanks[y.Tank].PerKm != 0 {
		return 0
	}
	return model.Greater(0, y.Price-b.worth[y.Tank])
}

// up reads every class of tank k as one d higher, or as the highest.
func (b *Nights) up(cost []float64, rows, k, d int) {
	if d == 0 {
		return
	}
	step, n := b.stride[k]*rows, b.scales[k].n
	for base := 0; base < len(cost); base += step * n {
		for c := range n - 1 { // what is read is behind what is written
			to := min(c+d, n-1)
			copy(cost[base+c*step:base+c*step+step], cost[base+to*step:base+to*step+step])
		}
	}
}

// moves says whether the classes before stop i are others than after it.
func (b *Nights) moves(i int) bool {
	for _, k := range b.moving {
		if b.scales[k].top[i] != b.scales[k].top[i+1] {
			return true
		}
	}
	return false
}

// move turns costs by classes after stop i into costs by classes before it.
func (b *Nights) move(cost []float64, rows, i int) {
	for _, k := range b.moving {
		b.up(cost, rows, k, b.scales[k].top[i]-b.scales[k].top[i+1])
	}
}
