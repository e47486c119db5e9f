package trip

import (
	"fmt"
	"math"

	"ullage/planner"
)

// obstacles lists what alone makes the trip impossible, whatever else is
// done: each is a proof, but a trip can be impossible without any of them.
//   - a stretch between two places that serve a tank (or the start) that the
//     tank cannot last,
//   - a tank that the nights use up and no place serves,
//   - a stretch without a place for the night that is longer than a day,
//   - fewer places for the night than nights are wished for.
func (b *Built) obstacles() []planner.Reason {
	var out []planner.Reason
	for i, t := range b.Problem.Tanks {
		if r, ok := b.stretch(t); ok {
			out = append(out, r)
		} else if r, ok := b.unserved(i, t); ok {
			out = append(out, r)
		}
	}
	return append(out, b.noNight()...)
}

// stretch finds the stretch that a tank is most short on by driving alone.
func (b *Built) stretch(t planner.Tank) (worst planner.Reason, ok bool) {
	if t.PerKm <= 0 {
		return planner.Reason{}, false
	}
	from, have := 0.0, b.headroom(t.ID, t.Start)
	check := func(to float64) {
		missing := t.Reserve + (to-from)*t.PerKm - have
		if missing > max(worst.Missing, planner.Tolerance) {
			worst = planner.Reason{Limit: t.ID, FromKm: from, ToKm: to, Missing: missing,
				Cures: []string{"set off with more in hand, or widen the corridor so that more places count"}}
		}
	}
	for _, s := range b.around {
		if _, serves := serviceOf(s, t.ID); serves {
			check(s.Km)
			from, have = s.Km, t.Capacity
		}
	}
	check(b.Problem.LengthKm)
	return worst, worst.Missing > 0
}

// unserved says if the nights use up a tank that no place serves.
func (b *Built) unserved(i int, t planner.Tank) (planner.Reason, bool) {
	least := math.Inf(1)
	for _, s := range b.around {
		if _, serves := serviceOf(s, t.ID); serves {
			return planner.Reason{}, false
		}
		if s.Night != nil {
			least = min(least, s.Night.Use[t.ID]/float64(s.Night.Nights))
		}
	}
	nights := float64(max(b.forcedNights(), b.Trip.Stays.MinNights))
	if nights == 0 || least <= 0 || math.IsInf(least, 1) {
		return planner.Reason{}, false
	}
	room := b.headroom(t.ID, t.Start) - t.Reserve
	if t.End != nil && t.End.AtMost != nil {
		room = min(room, *t.End.AtMost-t.Start)
	}
	missing := least*nights + max(t.PerKm, 0)*b.Problem.LengthKm - room
	return planner.Reason{Limit: t.ID, FromKm: 0, ToKm: b.Problem.LengthKm, Missing: missing,
		Cures: []string{"no place within the corridor serves it: widen the corridor, stay fewer nights, or use less"}}, missing > planner.Tolerance
}

// noNight finds stretches without a place for the night that no day covers,
// and says if there are too few places for the wished nights.
func (b *Built) noNight() []planner.Reason {
	var out []planner.Reason
	d := b.Problem.Drive
	from, offered := 0.0, 0
	check := func(to float64) {
		if missing := to - from - d.MaxKmPerDay; missing > planner.Tolerance {
			out = append(out, planner.Reason{Limit: "km", FromKm: from, ToKm: to, Missing: missing,
				Cures: []string{"allow longer days, or more kinds of places for the night, or widen the corridor"}})
		} else if missing := d.Minutes(from, to) - d.MaxMinPerDay; missing > planner.Tolerance {
			out = append(out, planner.Reason{Limit: "min", FromKm: from, ToKm: to, Missing: missing,
				Cures: []string{"allow more hours on the road, or more kinds of places for the night, or widen the corridor"}})
		}
	}
	for _, s := range b.around {
		if s.Night != nil {
			check(s.Km)
			from, offered = s.Km, offered+s.Night.Nights
		}
	}
	check(b.Problem.LengthKm)
	if few := b.Trip.Stays.MinNights - offered; few > 0 {
		out = append(out, planner.Reason{Limit: "nights", ToKm: b.Problem.LengthKm, Missing: float64(few),
			Cures: []string{fmt.Sprintf("only %d nights are offered within the corridor: wish for fewer, or allow more kinds of places", offered)}})
	}
	return out
}

func serviceOf(s planner.Stop, tank string) (planner.Service, bool) {
	for _, x := range s.Serves {
		if x.Tank == tank {
			return x, true
		}
	}
	return planner.Service{}, false
}
