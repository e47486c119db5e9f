package solve

import (
	"slices"

	"ullage/planner"
	"ullage/planner/internal/model"
	"ullage/planner/replay"
)

// This file turns a label into a plan: it makes the chosen visits again, and
// reads off what was paid for where.

// plan is the audited plan of a label of the last sweep.
func (w *sweep) plan(id int32) (planner.Plan, error) {
	m := w.m
	var path []int32
	for ; w.labels.all[id].Stop >= 0; id = w.labels.all[id].parent {
		path = append(path, id)
	}
	slices.Reverse(path)
	visits := make([]planner.Visit, len(path))
	for k, id := range path {
		l := &w.labels.all[id]
		stop := &m.Problem.Stops[l.Stop]
		visits[k] = planner.Visit{Stop: stop.ID, Night: l.Night}
	}
	for t := range m.Tanks {
		amounts := w.amounts(path, t)
		for k, id := range path {
			l := &w.labels.all[id]
			for j, y := range m.Stops[l.Stop].Serves {
				if y.Tank == t && l.Take&(1<<j) != 0 && (m.Tanks[t].Waste || amounts[k] > model.Slack) {
					visits[k].Serve = append(visits[k].Serve, planner.Serve{Tank: m.Problem.Tanks[t].ID, Amount: amounts[k]})
				}
			}
		}
	}
	visits, err := replay.WasteAmounts(m.Problem, visits)
	if err != nil {
		return planner.Plan{}, err
	}
	return replay.Plan(m.Problem, visits)
}

// amounts is what is bought of a tank at each visit of the path.
func (w *sweep) amounts(path []int32, tank int) []float64 {
	m := w.m
	s := model.NewState(len(m.Tanks))
	for t := range m.Tanks {
		s.Hand[t] = m.Tanks[t].Start
	}
	s.Paid, s.Watch = make([]float64, len(path)), int32(tank)
	from := -1
	for _, id := range path {
		l := &w.labels.all[id]
		m.Arrive(s, from, int(l.Stop))
		m.Stay(s, int(l.Stop), l.Deed)
		from = int(l.Stop)
	}
	m.Finish(s, from)
	return s.Paid
}
