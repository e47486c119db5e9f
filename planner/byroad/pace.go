package byroad

import "ullage/planner"

// paces gathers sections of a route with their minutes.
type paces struct {
	whole, least float64
	list         []planner.Pace
	from, to     float64
	min          float64
}

func (p *paces) add(toKm, min float64) {
	p.to, p.min = max(p.to, toKm), p.min+min
	if p.to-p.from >= p.least {
		p.flush()
	}
}

// alone adds what is a section of its own.
func (p *paces) alone(toKm, min float64) {
	p.flush()
	p.add(toKm, min)
	p.flush()
}

func (p *paces) flush() {
	if d := p.to - p.from; d > 1e-6 {
		p.list = append(p.list, planner.Pace{ToKm: p.to, MinPerKm: p.min / d})
		p.from, p.min = p.to, 0
	}
}

// done ends the last section at the end of the route.
func (p *paces) done() []planner.Pace {
	p.flush()
	if n := len(p.list); n > 0 {
		p.list[n-1].ToKm = p.whole
	}
	return p.list
}
