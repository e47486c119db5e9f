package planner

import "slices"

// This file turns a label into a plan: it makes the chosen visits again, and
// reads off what was paid for where.

// plan is the audited plan of a label of the last sweep.
func (w *sweep) plan(id int32) (Plan, error) {
	m := w.m
	var path []int32
	for ; w.labels.all[id].stop >= 0; id = w.labels.all[id].parent {
		path = append(path, id)
	}
	slices.Reverse(path)
	visits := make([]Visit, len(path))
	for k, id := range path {
		l := &w.labels.all[id]
		stop := &m.p.Stops[l.stop]
		visits[k] = Visit{Stop: stop.ID, Night: l.night}
	}
	for t := range m.tanks {
		amounts := w.amounts(path, t)
		for k, id := range path {
			l := &w.labels.all[id]
			for j, y := range m.stops[l.stop].serves {
				if y.tank == t && l.take&(1<<j) != 0 && (m.tanks[t].waste || amounts[k] > slack) {
					visits[k].Serve = append(visits[k].Serve, Serve{Tank: m.p.Tanks[t].ID, Amount: amounts[k]})
				}
			}
		}
	}
	visits, err := WasteAmounts(m.p, visits)
	if err != nil {
		return Plan{}, err
	}
	return Replay(m.p, visits)
}

// amounts is what is bought of a tank at each visit of the path.
func (w *sweep) amounts(path []int32, tank int) []float64 {
	m := w.m
	s := newState(len(m.tanks))
	for t := range m.tanks {
		s.hand[t] = m.tanks[t].start
	}
	s.paid, s.watch = make([]float64, len(path)), int32(tank)
	from := -1
	for _, id := range path {
		l := &w.labels.all[id]
		m.arrive(s, from, int(l.stop))
		m.stay(s, int(l.stop), l.night, l.take)
		from = int(l.stop)
	}
	m.finish(s, from)
	return s.paid
}
