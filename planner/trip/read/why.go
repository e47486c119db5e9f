package read

import (
	"fmt"

	"ullage/planner"
	"ullage/planner/fact"
	"ullage/planner/trip"
	"ullage/planner/trip/build"
)

// Why says reasons of a refusal in people's words, as [Itinerary] does.
func Why(b *build.Built, reasons []planner.Reason) []trip.Reason { return reader{b}.why(reasons) }

// why says a refusal in people's words: which tank, where, by how much.
func (b reader) why(reasons []planner.Reason) []trip.Reason {
	var out []trip.Reason
	for _, r := range reasons {
		if len(reasons) > 1 && r.Missing > 0 && r.Missing < 0.05 {
			continue // a limit that is met to the digit shown is no news
		}
		r.FromKm, r.ToKm = b.Axis.Route(r.FromKm), b.Axis.Route(r.ToKm)
		why := trip.Reason{Reason: r, Text: b.reason(r)}
		for _, c := range r.Changes {
			why.Cures = append(why.Cures, b.cure(c))
		}
		out = append(out, why)
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
		if r.Kind == planner.ReasonNightsMore {
			return "The trip needs " + nights(r.Missing, "more") + " than wished."
		}
		return "There is a plan only with " + nights(r.Missing, "fewer") + " than wished."
	}
	if c, ok := b.Calls[r.Limit]; ok {
		return fmt.Sprintf("%s does not fit into the trip as a required stop.", c.Place.Label())
	}
	return ""
}

// cure says what to change, and what the trip then costs.
func (b reader) cure(c planner.Change) string {
	name, amount := "", ""
	for _, k := range b.Trip.Vehicle.Tanks {
		if k.ID == c.Tank {
			name, amount = k.Name, fmt.Sprintf("%.1f %s", c.By, k.Unit)
		}
	}
	do := map[fact.Kind]string{
		planner.ChangeStartMore:  "start with " + amount + " more of " + name,
		planner.ChangeStartLess:  "start with " + amount + " less in " + name,
		planner.ChangeUseLess:    fmt.Sprintf("use %.0f %% less of %s", 100*c.By, name),
		planner.ChangeDayKm:      fmt.Sprintf("drive up to %.0f km more in a day", c.By),
		planner.ChangeDayMin:     fmt.Sprintf("be up to %.0f minutes longer on the road in a day", c.By),
		planner.ChangeNightsMore: "stay " + nights(c.By, "more"),
		planner.ChangeNightsLess: "stay " + nights(c.By, "fewer"),
		planner.ChangeEndLess:    "hand back with " + amount + " less of " + name,
		planner.ChangeEndMore:    "hand back with " + amount + " more in " + name,
	}[c.Kind]
	if c.Kind == planner.ChangeNightsMore && name != "" {
		do += ", where " + name + " can be restored"
	}
	most := "at most "
	if c.Proven {
		most = ""
	}
	return fmt.Sprintf("%s: the trip then costs %s%.2f %s", do, most, c.Cost, b.Trip.Currency)
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
