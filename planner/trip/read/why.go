package read

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ullage/planner"
	"ullage/planner/trip/build"
)

// Why says reasons of a refusal in people's words, as [Itinerary] does.
func Why(b *build.Built, reasons []planner.Reason) []planner.Reason { return reader{b}.why(reasons) }

// why says a refusal in people's words: which tank, where, by how much.
func (b reader) why(reasons []planner.Reason) []planner.Reason {
	var out []planner.Reason
	for _, r := range reasons {
		if len(reasons) > 1 && r.Missing > 0 && r.Missing < 0.05 {
			continue // a limit that is met to the digit shown is no news
		}
		r.FromKm, r.ToKm = b.Axis.Route(r.FromKm), b.Axis.Route(r.ToKm)
		r.Text = cmp.Or(b.reason(r), r.Text)
		r.Cures = slices.Clone(r.Cures)
		for i := range r.Cures {
			r.Cures[i] += " " + b.Trip.Currency
		}
		out = append(out, r)
	}
	return out
}

func (b reader) reason(r planner.Reason) string {
	where := fmt.Sprintf("between km %.0f and km %.0f", r.FromKm, r.ToKm)
	for _, k := range b.Trip.Vehicle.Tanks {
		if k.ID != r.Limit {
			continue
		}
		if k.Kind == planner.Waste {
			return fmt.Sprintf("%s is full %s: it would have to take %.1f %s more than it can before a place that empties it.", k.Name, where, r.Missing, k.Unit)
		}
		return fmt.Sprintf("%s runs out %s: %.1f %s more are needed before a place that serves it.", k.Name, where, r.Missing, k.Unit)
	}
	d := b.Problem.Drive
	switch r.Limit {
	case "km":
		return fmt.Sprintf("No place for the night is near enough %s: a day of %.0f km is %.0f km too short.", where, d.MaxKmPerDay, r.Missing)
	case "min":
		return fmt.Sprintf("No place for the night is near enough %s: a day of %.0f minutes on the road is %.0f minutes too short.", where, d.MaxMinPerDay, r.Missing)
	case "plan":
		return fmt.Sprintf("No plan was found that gets beyond km %.0f, and no single change to a tank, the day, the nights or the end that cures it.", r.ToKm)
	case "backup":
		return "No plan stays safe if a place is closed."
	case "open":
		return "Places that are needed are closed when the trip comes by: leave earlier or later, or on another day."
	case "nights":
		if strings.Contains(r.Text, "needs") {
			return "The trip needs " + nights(r.Missing, "more") + " than wished."
		}
		return "There is a plan only with " + nights(r.Missing, "fewer") + " than wished."
	}
	if c, ok := b.Calls[r.Limit]; ok {
		return fmt.Sprintf("%s does not fit into the trip as a required stop.", c.Place.Label())
	}
	return ""
}

// LimitMap is the limit of a refusal that lies in the map data, not in the trip.
const LimitMap = "map"

// nights are some more or fewer.
func nights(n float64, which string) string {
	if n == 1 {
		return "one night " + which
	}
	return fmt.Sprintf("%.0f nights %s", n, which)
}
