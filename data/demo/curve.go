package demo

// This file turns corners into roads that wind.

// soften averages the corners between the ends with their neighbours.
func soften(line []pt, rounds int) []pt {
	for range rounds {
		out := make([]pt, len(line))
		copy(out, line)
		for i := 1; i < len(line)-1; i++ {
			out[i] = line[i].mul(0.5).add(line[i-1].add(line[i+1]).mul(0.25))
		}
		line = out
	}
	return line
}

// curve is a Catmull-Rom spline through the corners (Catmull, Rom 1974), a
// point about every stepKm.
func curve(line []pt, stepKm float64) []pt {
	at := func(i int) pt { return line[max(0, min(len(line)-1, i))] }
	out := []pt{line[0]}
	for i := 1; i < len(line); i++ {
		a, b, c, d := at(i-2), at(i-1), at(i), at(i+1)
		n := max(1, int(b.dist(c)/stepKm+0.5))
		for k := 1; k < n; k++ {
			t := float64(k) / float64(n)
			p := b.mul(2).add(c.sub(a).mul(t))
			p = p.add(a.mul(2).sub(b.mul(5)).add(c.mul(4)).sub(d).mul(t * t))
			p = p.add(b.mul(3).sub(a).sub(c.mul(3)).add(d).mul(t * t * t))
			out = append(out, p.mul(0.5))
		}
		out = append(out, c)
	}
	return out
}

// wind pushes the inner points sideways by smooth noise: by km where the ground
// is flat and more in the mountains, nothing at the ends.
func wind(line []pt, flatKm, steepKm float64) []pt {
	out := make([]pt, len(line))
	run, total := 0.0, length(line)
	for i, p := range line {
		if i > 0 {
			run += p.dist(line[i-1])
		}
		h := heightAt(p)
		push := flatKm + (steepKm-flatKm)*max(0, min(1, (h-350)/900))
		push *= min(1, run/0.8, (total-run)/0.8)
		along := line[min(i+1, len(line)-1)].sub(line[max(i-1, 0)]).unit()
		out[i] = p.add(along.left().mul(push * (noise(p.x/0.5, p.y/0.5, 7) + 0.35*noise(p.x/0.21, p.y/0.21, 8))))
	}
	return out
}

func length(line []pt) (km float64) {
	for i := 1; i < len(line); i++ {
		km += line[i].dist(line[i-1])
	}
	return km
}

// thin leaves out points nearer than offKm to what is left (Douglas, Peucker
// 1973); the ends stay.
func thin(line []pt, offKm float64) []pt {
	keep := make([]bool, len(line))
	keep[0], keep[len(line)-1] = true, true
	var cut func(a, b int)
	cut = func(a, b int) {
		worst, at := offKm, -1
		for i := a + 1; i < b; i++ {
			if d := offSide(line[i], line[a], line[b]); d > worst {
				worst, at = d, i
			}
		}
		if at >= 0 {
			keep[at] = true
			cut(a, at)
			cut(at, b)
		}
	}
	cut(0, len(line)-1)
	var out []pt
	for i, p := range line {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}

// foot is the share of the side from a to b that lies nearest to p.
func foot(p, a, b pt) float64 {
	d := b.sub(a)
	if d.x == 0 && d.y == 0 {
		return 0
	}
	return max(0, min(1, ((p.x-a.x)*d.x+(p.y-a.y)*d.y)/(d.x*d.x+d.y*d.y)))
}

func offSide(p, a, b pt) float64 { return p.dist(a.lerp(b, foot(p, a, b))) }

// cross is where two sides meet, as shares of each.
func cross(a, b, c, d pt) (f, g float64, ok bool) {
	u, v, w := b.sub(a), d.sub(c), c.sub(a)
	det := u.x*v.y - u.y*v.x
	if det == 0 {
		return 0, 0, false
	}
	f, g = (w.x*v.y-w.y*v.x)/det, (w.x*u.y-w.y*u.x)/det
	return f, g, f >= 0 && f <= 1 && g >= 0 && g <= 1
}

// between is the part of a line from one distance to another, ends included.
func between(line []pt, fromKm, toKm float64) []pt {
	out := []pt{along(line, fromKm)}
	run := 0.0
	for i := 1; i < len(line)-1; i++ {
		run += line[i].dist(line[i-1])
		if run > fromKm+0.01 && run < toKm-0.01 {
			out = append(out, line[i])
		}
	}
	return append(out, along(line, toKm))
}

// along is the point at a distance from the start of a line.
func along(line []pt, km float64) pt {
	for i := 1; i < len(line); i++ {
		d := line[i].dist(line[i-1])
		if km <= d && d > 0 {
			return line[i-1].lerp(line[i], km/d)
		}
		km -= d
	}
	return line[len(line)-1]
}
