package trip

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/backup"
	"ullage/planner/reason"
	"ullage/planner/solve"
)

// others is how many other plans are shown.
const others = 2

// more adds to a plan what a person asks next: what caution and safety cost,
// and which other plans there are; tell, if not nil, hears of each as it comes.
func (b *Built) more(ctx context.Context, it Itinerary, tell func(Itinerary)) (Itinerary, error) {
	if ctx.Err() != nil {
		return it, nil
	}
	if tell == nil {
		tell = func(Itinerary) {}
	}
	caution := b.care(it.plan)
	if it.Care = caution.glance(ctx); it.Care != nil {
		tell(it)
	}
	s, ok, err := backup.PriceOfSafety(ctx, b.Problem, b.whole(), it.plan, solve.Options{})
	if err != nil {
		return Itinerary{}, fmt.Errorf("plan %q without a closed place: %w", b.Trip.Name, err)
	}
	if ok {
		it.Safety = &Safety{Price: s.Price(), Text: b.safetyText(s)}
		tell(it)
	}
	if price := caution.price(ctx); price != nil {
		it.Care = price
		tell(it)
	}
	alternatives, err := backup.Alternatives(ctx, b.Problem, it.plan, others, solve.Options{MaxLabels: manyLabels})
	if err != nil {
		return Itinerary{}, fmt.Errorf("other plans for %q: %w", b.Trip.Name, err)
	}
	for _, a := range alternatives {
		o := Other{Extra: a.Extra, Text: b.difference(it.plan, a.Plan), Days: b.lines(a.Plan.Visits)}
		if a.Without != "" {
			o.Avoid = b.calls[a.Without].place.ID
		}
		it.Others = append(it.Others, o)
	}
	return it, nil
}

// safetyText says the price of safety in one sentence.
func (b *Built) safetyText(s backup.Safety) string {
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
func (b *Built) difference(plan, other planner.Plan) string {
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
func (b *Built) nights(plan planner.Plan) []string {
	var out []string
	for _, v := range plan.Visits {
		if v.Night {
			out = append(out, label(b.calls[v.Stop].place))
		}
	}
	return out
}

// without are the words of a that b does not have.
func without(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return slices.Contains(b, s) })
}

// lines says visits in one line a day: the places and what for.
func (b *Built) lines(visits []planner.Visit) []string {
	var out, today []string
	number := 1
	end := func(nights int) {
		out = append(out, fmt.Sprintf("Day %d: %s", number, strings.Join(today, "; ")))
		number, today = number+nights, nil
	}
	for _, v := range visits {
		var does []string
		for _, y := range v.Serve {
			does = append(does, services[y.Tank].verb+" "+b.tankName(y.Tank))
		}
		nights := 0
		if v.Night {
			i := slices.IndexFunc(b.around, func(s planner.Stop) bool { return s.ID == v.Stop })
			if nights = b.around[i].Night.Nights; nights > 1 {
				does = append(does, fmt.Sprintf("%d nights", nights))
			} else {
				does = append(does, "night")
			}
		}
		call := fmt.Sprintf("km %.0f %s", b.axis.route(v.Arrive.Km), label(b.calls[v.Stop].place))
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
func (b *Built) nearest(n *reason.Nearest) *Nearest {
	if n == nil {
		return nil
	}
	out := &Nearest{Days: b.lines(n.Visits)}
	for _, r := range b.why(n.Broken) {
		out.Broken = append(out.Broken, r.Text)
	}
	return out
}
