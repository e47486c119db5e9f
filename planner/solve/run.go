package solve

import (
	"context"
	"math"

	"ullage/planner/internal/model"
)

const (
	narrow      = 6 // partial plans after every stop
	usualLabels = 200_000
	mostLayers  = 12     // that labels have on average
	untidy      = 50_000 // of so many labels of a narrow sweep most are of no more use
)

// run sweeps once. It returns the context's error if that ends it.
func (w *sweep) run(ctx context.Context, limit float64, width, most int) error {
	w.limit, w.width, w.most = limit, width, most
	w.ctx, w.work, w.stopped = ctx, pollWork, func() bool { return ctx.Err() != nil }
	w.lost, w.best, w.cost = math.Inf(1), -1, math.Inf(1)
	w.labels = labels{m: w.m, all: w.labels.all[:0], hand: w.labels.hand[:0], layers: w.labels.layers[:0]}
	w.pool = w.pool[:0]
	w.begin()
	w.leaveOut()
	tidy := untidy
	for i := range w.m.Stops {
		if len(w.pool) == 0 {
			return nil
		}
		if w.idle(i) {
			continue
		}
		open := w.open()
		if !w.pass(i) {
			w.lost = min(w.lost, open)
			return ctx.Err()
		}
		if width < math.MaxInt && len(w.labels.all) > tidy {
			w.labels.keep(w.pool)
			tidy = max(untidy, 2*len(w.labels.all))
		}
		if len(w.labels.all) > w.most || len(w.labels.layers)/mostLayers > w.most {
			w.lost = min(w.lost, w.open())
			return nil
		}
	}
	for _, id := range w.pool {
		w.labels.load(w.then, id)
		l := w.labels.all[id]
		if !w.m.Finish(w.then, int(l.Stop)) {
			continue
		}
		c := w.then.Cost
		if c < w.cost-model.Tie || c <= w.cost+model.Tie && w.best >= 0 && w.labels.first(id, w.best) {
			w.cost, w.best = c, id
		}
	}
	return nil
}
