package planner

// This file computes with the classes of the tables by nights: a tank filled,
// classes moved. Each class has rows numbers.

// lesser and greater are min and max of two numbers. (The built-in ones are
// calls where the page runs.)
func lesser(a, b float64) float64 {
	if b < a {
		return b
	}
	return a
}

func greater(a, b float64) float64 {
	if b > a {
		return b
	}
	return a
}

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
func (b *nightsBound) fill(cost []float64, rows, k int, y *serviceModel) {
	n := b.scales[k].n
	premium := b.premium(y)
	for c := range n - 1 { // what is read is behind what is written
		if premium == 0 {
			b.lower(cost, cost, rows, k, c, n-1, y.fixed)
			continue
		}
		for to := c + 1; to < n; to++ {
			b.lower(cost, cost, rows, k, c, to, y.fixed+premium*b.scales[k].from(b.scales[k].values[c], to))
		}
	}
}

// lower makes class c of tank k in costs at most cost more than class to in from.
func (b *nightsBound) lower(costs, from []float64, rows, k, c, to int, cost float64) {
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
func (b *nightsBound) premium(y *serviceModel) float64 {
	if b.m.tanks[y.tank].waste || b.m.tanks[y.tank].perKm != 0 {
		return 0
	}
	return greater(0, y.price-b.worth[y.tank])
}

// up reads every class of tank k as one d higher, or as the highest.
func (b *nightsBound) up(cost []float64, rows, k, d int) {
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
func (b *nightsBound) moves(i int) bool {
	for _, k := range b.moving {
		if b.scales[k].top[i] != b.scales[k].top[i+1] {
			return true
		}
	}
	return false
}

// move turns costs by classes after stop i into costs by classes before it.
func (b *nightsBound) move(cost []float64, rows, i int) {
	for _, k := range b.moving {
		b.up(cost, rows, k, b.scales[k].top[i]-b.scales[k].top[i+1])
	}
}

// scratch is n numbers to write to before the next call.
func scratch(keep *[]float64, n int) []float64 {
	if cap(*keep) < n {
		*keep = make([]float64, n)
	}
	return (*keep)[:n]
}
