package job

import (
	"context"
	"time"

	"ullage/planner/trip"
	"ullage/planner/trip/answer"
	"ullage/planner/trip/build"
)

// Patience is how long a plan may take before the best one so far is the
// answer.
const Patience = 60 * time.Second

// pause is the least time between two better plans shown: each costs the page
// a drawing.
const pause = 250 * time.Millisecond

// plan makes a plan, and shows each better one on the way.
func (h *Handler) plan(ctx context.Context, p Plan, show func(Answer)) error {
	t := p.Trip
	t.Route = p.Route
	began := h.now()
	took := func() int { return int(h.now().Sub(began).Milliseconds()) }
	var shown time.Time
	ctx, stop := context.WithTimeout(ctx, Patience)
	defer stop()
	work := paced(ctx, stop)
	it, err := answer.Trip(work, t, h.places, answer.Options{
		Touched: p.Touched,
		Build:   build.Options{Hours: h.hours, Roads: h.roads.trip(work), MostStops: mostStops},
		Progress: func(it trip.Itinerary) {
			if n := h.now(); n.Sub(shown) >= pause {
				shown = n
				show(Answer{Itinerary: it, TookMS: took()})
			}
		},
		Answer: func(it trip.Itinerary) {
			work.leave = h.wanted // what else there is to say waits for nobody
			show(Answer{Itinerary: it, Done: true, TookMS: took()})
			h.rest()
		},
	})
	if err != nil {
		return err
	}
	show(Answer{Itinerary: it, Done: true, Last: true, TookMS: took()})
	return nil
}

// rest lets the page draw an answer before it has to share the processor with
// what else there is to say; not while something waits.
func (h *Handler) rest() {
	for range 25 {
		if h.wanted() {
			return
		}
		time.Sleep(pause / 25)
	}
}
