package job

import "context"

// Handle does one request; emit gets its responses. If ctx ends while a plan
// is made, the best one so far is the answer.
func (h *Handler) Handle(ctx context.Context, r Request, emit func(Response)) {
	switch {
	case r.Open != nil:
		o, err := h.open(ctx, *r.Open, func(done, total int64) {
			emit(Response{ID: r.ID, Progress: &Progress{done, total}})
		})
		if err != nil {
			emit(failed(r.ID, err))
			return
		}
		emit(Response{ID: r.ID, Opened: &o})
	case r.Plan != nil:
		if err := h.plan(ctx, *r.Plan, func(a Answer) { emit(Response{ID: r.ID, Answer: &a}) }); err != nil {
			emit(failed(r.ID, err))
		}
	case r.Roads:
		h.handleRoads(ctx, r.ID, h.files, emit)
	case r.Follow != nil:
		f, err := h.roads.follow(ctx, *r.Follow)
		if err != nil {
			emit(Response{ID: r.ID, Error: err.Error()})
			return
		}
		emit(Response{ID: r.ID, Followed: &f})
	case !r.Cancel:
		emit(Response{ID: r.ID, Error: "a request that asks for nothing"})
	}
}
