package model

import (
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/trip"
)

// underWay is the sample trip, its vehicle with the tanks that the plan has.
func underWay() Model {
	t := sample.Trip()
	var tanks []trip.Tank
	for _, k := range t.Vehicle.Tanks {
		if slices.ContainsFunc(sample.Plan().Strips, func(s trip.Strip) bool { return s.Tank == k.ID }) {
			k.Start = min(k.Start, k.Capacity)
			tanks = append(tanks, k)
		}
	}
	t.Vehicle.Tanks = tanks
	m := after(PlacesRead{File: File{Kind: "places"}}, TripRead{Trip: t})
	return then(m, Answered{No: m.Wanted, Plan: sample.Plan(), Last: true})
}

func TestWhereSomebodyIs(t *testing.T) {
	m := then(underWay(), ReportToggled{"2031-01-01T10:00"}) // not on this trip: the plan's time counts
	m = then(m, Edited{RoadWhere, "3"})
	if r := m.Report; r.Said[RoadKm] != "200" || r.Said[RoadTime] != "2026-06-13T09:50" {
		t.Errorf("at stop 3: %v, want km 200 at the time planned, 2030 minutes", r.Said)
	}
	p := orb.Point{11.4, 50.25}
	m = then(m, ReportPointed{p, 237.4})
	if n, wrong := m.Report.now(m); !wrong.Nothing() || n.At == nil || *n.At != p || m.Report.Said[RoadKm] != "237.4" {
		t.Errorf("on the map: %v, %v", n, wrong)
	}
	m = then(m, Edited{RoadKm, "220"})
	if n, wrong := m.Report.now(m); !wrong.Nothing() || n.At != nil || !near(*n.Km, 220) {
		t.Errorf("typed after it: %v, %v", n, wrong)
	}
	for _, c := range []struct{ key, text, want string }{
		{RoadKm, "481", "before the end of the route"}, {RoadKm, "here", "Say where you are"}, {RoadTime, "soon", "2026-06-13T14:20"}, {RoadTime, "2026-06-01T10:00", "Monday 1 June is before your trip begins"},
	} {
		if got := then(then(m, Edited{c.key, c.text}), WentOn{}); got.Report == nil || !strings.Contains(m.Say.Fact(got.Report.Wrong), c.want) || got.Wanted != m.Wanted {
			t.Errorf("%s %q: %+v, want %q", c.key, c.text, got.Report, c.want)
		}
	}
	wrong := then(then(then(m, Edited{RoadKind + "grey", "percent"}), Edited{RoadValue + "grey", "120"}), WentOn{})
	if !strings.Contains(m.Say.Fact(wrong.Report.Wrong), "Grey water: A number from 0 to 100.") {
		t.Errorf("120 %%: %v", wrong.Report.Wrong)
	}
}
