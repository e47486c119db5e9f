package answer

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/reason"
	"ullage/planner/solve"
	"ullage/planner/trip"
	"ullage/planner/trip/read"
)

// others is how many other plans are shown.
const others = 2

// more adds to a plan what a person asks next: what caution and safety cost,
// and which other plans there are; tell, if not nil, hears of each as it comes.
func (b asker) more(ctx context.Context, it trip.Itinerary, plan planner.Plan, tell func(trip.Itinerary)) (trip.Itinerary, error) {
	if ctx.Err() != nil {
		return it, nil
	}
	if tell == nil {
		tell = func(trip.Itinerary) {}
	}
	caution := b.care(plan)
	if it.Care = caution.glance(ctx); it.Care != nil {
		tell(it)
	}
	s, ok, err := backup.PriceOfSafety(ctx, b.Problem, b.Whole(), plan, solve.Options{})
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("plan %q without a closed place: %w", b.Trip.Name, err)
	}
	if ok {
		it.Safety = &trip.Safety{Price: s.Price(), Text: b.safetyText(s)}
		tell(it)
	}
	if price := caution.price(ctx); price != nil {
		it.Care = price
		tell(it)
	}
	alternatives, err := backup.Alternatives(ctx, b.Problem, plan, others, solve.Options{MaxLabels: manyLabels})
	if err != nil {
		return trip.Itinerary{}, fmt.Errorf("other plans for %q: %w", b.Trip.Name, err)
	}
	for _, a := range alternatives {
		o := trip.Other{Extra: a.Extra, Text: b.difference(plan, a.Plan), Days: b.lines(a.Plan.Visits)}
		if a.Without != "" {
			o.Avoid = b.Calls[a.Without].Place.ID
		}
		it.Others = append(it.Others, o)
	}
	return it, nil
}

// safetyText says the price of safety in one sentence.
func (b asker) safetyText(s backup.Safety) string {
	price := fmt.Sprintf("%.2f %s", s.Price(), b.Trip.Currency)
	if !s.Proven {
		price = "about " + price
	}
	if s.Price() < 0.005 {
		price = "nothing"
	}
	text := fmt.Sprintf("A plan that stays safe if a place is closed would cost %s more", price)
	switch {
	case s.None:
		return "No plan for this trip stays safe if a place is closed."
	case b.Trip.Backup:
		text = fmt.Sprintf("Staying safe if a place is closed costs %s more", price)
	}
	if s.Exposed > 0 {
		return fmt.Sprintf("%s, and still no way on was found from %d of its stops.", text, s.Exposed)
	}
	return text + "."
}

// difference says what a person sees: other nights, more or fewer stops.
func (b asker) difference(plan, other planner.Plan) string {
	var parts []string
	was, is := b.nights(plan), b.nights(other)
	gone, fresh := without(was, is), without(is, was)
	switch {
	case len(fresh) > 0 && len(gone) > 0:
		parts = append(parts, fmt.Sprintf("night at %s instead of %s", strings.Join(fresh, ", "), strings.Join(gone, ", ")))
	case len(fresh) > 0:
		parts = append(parts, "one more night: "+strings.Join(fresh, ", "))
	case len(gone) > 0:
		parts = append(parts, "no night at "+strings.Join(gone, ", "))
	}
	if m, n := len(plan.Visits), len(other.Visits); m != n {
		word := "stops"
		if n == 1 {
			word = "stop"
		}
		parts = append(parts, fmt.Sprintf("%d %s instead of %d", n, word, m))
	}
	return strings.Join(parts, "; ")
}

// nights are the places of the nights.
func (b asker) nights(plan planner.Plan) []string {
	var out []string
	for _, v := range plan.Visits {
		if v.Night {
			out = append(out, b.Calls[v.Stop].Place.Label())
		}
	}
	return out
}

// without are the words of a that b does not have.
func without(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return slices.Contains(b, s) })
}

// lines says visits in one line a day: the places and what for.
func (b asker) lines(visits []planner.Visit) []string {
	var out, today []string
	number := 1
	end := func(nights int) {
		out = append(out, fmt.Sprintf("Day %d: %s", number, strings.Join(today, "; ")))
		number, today = number+nights, nil
	}
	for _, v := range visits {
		var does []string
		for _, y := range v.Serve {
			does = append(does, verb(y.Tank)+" "+b.Trip.Vehicle.TankName(y.Tank))
		}
		nights := 0
		if v.Night {
			i := slices.IndexFunc(b.Around, func(s planner.Stop) bool { return s.ID == v.Stop })
			if nights = b.Around[i].Night.Nights; nights > 1 {
				does = append(does, fmt.Sprintf("%d nights", nights))
			} else {
				does = append(does, "night")
			}
		}
		call := fmt.Sprintf("km %.0f %s", b.Axis.Route(v.Arrive.Km), b.Calls[v.Stop].Place.Label())
		if len(does) > 0 {
			call += " (" + strings.Join(does, ", ") + ")"
		}
		today = append(today, call)
		if v.Night {
			end(nights)
		}
	}
	if len(today) == 0 {
		today = []string{"no stop"}
	}
	end(0)
	return out
}

// nearest says in words what breaks least; nil of nil.
func (b asker) nearest(n *reason.Nearest) *trip.Nearest {
	if n == nil {
		return nil
	}
	out := &trip.Nearest{Days: b.lines(n.Visits)}
	for _, r := range read.Why(b.Built, n.Broken) {
		out.Broken = append(out.Broken, r.Text)
	}
	return out
}

func verb(tank string) string {
	s, _ := trip.ServiceOf(tank)
	return s.Verb
}
