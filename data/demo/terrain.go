package demo

import "math"

// This file shapes the land: ranges of mountains and rolling ground. Heights
// decide where roads go; they are not part of the data.

// A crest is a corner of a range with its height in metres; low ones are passes.
type crest struct {
	pt
	height float64
}

var ranges = [][]crest{
	{{pt{-98, 4}, 500}, {pt{-84, 12}, 1300}, {pt{-70, 16}, 800}, {pt{-58, 22}, 1750}, {pt{-44, 26}, 1150}, {pt{-30, 30}, 2050}, {pt{-16, 26}, 1250}, {pt{-2, 18}, 1700}, {pt{10, 8}, 700}},
	{{pt{26, 8}, 600}, {pt{40, 9}, 1500}, {pt{54, 12}, 950}, {pt{68, 14}, 1850}, {pt{82, 8}, 1000}, {pt{96, 2}, 1250}, {pt{106, 4}, 400}},
	{{pt{12, -30}, 350}, {pt{24, -34}, 800}, {pt{44, -26}, 700}, {pt{60, -30}, 900}, {pt{72, -34}, 350}},
}

// heightAt is the height of the ground in metres above the sea.
func heightAt(p pt) float64 {
	best := 0.0
	for _, r := range ranges {
		for i := 1; i < len(r); i++ {
			a, b := r[i-1], r[i]
			d := b.pt.sub(a.pt)
			f := ((p.x-a.x)*d.x + (p.y-a.y)*d.y) / (d.x*d.x + d.y*d.y)
			f = max(0, min(1, f))
			off := p.dist(a.pt.lerp(b.pt, f)) / 10 // half width of a range: about 10 km
			h := a.height + (b.height-a.height)*f
			fall := 1 / (1 + off*off)
			best = max(best, h*fall)
		}
	}
	rough := 0.35*noise(p.x/9, p.y/9, 1) + 0.18*noise(p.x/3.7, p.y/3.7, 2)
	return max(0, 60+best*(1+rough)+90*noise(p.x/14, p.y/14, 3))
}

// noise is smooth lattice noise between −1 and 1.
func noise(x, y float64, layer uint64) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	u, v := ease(x-fx), ease(y-fy)
	at := func(dx, dy float64) float64 { return lattice(int64(fx+dx), int64(fy+dy), layer) }
	low := at(0, 0) + (at(1, 0)-at(0, 0))*u
	high := at(0, 1) + (at(1, 1)-at(0, 1))*u
	return low + (high-low)*v
}

func ease(t float64) float64 { return t * t * (3 - 2*t) }

// lattice is a fixed random number between −1 and 1 for a lattice point.
func lattice(x, y int64, layer uint64) float64 {
	h := uint64(x)*0x9e3779b97f4a7c15 ^ uint64(y)*0xc2b2ae3d27d4eb4f ^ layer*0x165667b19e3779f9
	h ^= h >> 31
	h *= 0xbf58476d1ce4e5b9 // splitmix64, Steele, Lea, Flood 2014
	h ^= h >> 27
	h *= 0x94d049bb133111eb
	h ^= h >> 31
	return float64(h>>11)/(1<<52) - 1
}
