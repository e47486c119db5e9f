package audit

import (
	"math"
	"slices"

	"ullage/planner"
)

// This file audits the clock: driving, waiting, opening hours and the limits of a day.

// A day is the clock on the road, since this morning's departure.
type day struct {
	drive   planner.Drive
	departs float64 // this morning
	now     float64
	today   float64 // km
	at      float64 // km along the route
	owed    float64 // half detour back from the last place
	nights  int
	slept   float64 // km of the last night
	waited  float64 // minutes, of all days
}

// driveTo a position on the route, and half the way to a place beside it.
func (d *day) driveTo(km, detourKm, detourMin float64) {
	d.today += km - d.at + d.owed + detourKm/2
	d.now += paceMinutes(d.drive.Pace, km) - paceMinutes(d.drive.Pace, d.at) + detourMin/2
	d.at, d.owed = km, detourKm/2
}

// checkClock checks moments, windows and day limits, and returns the minutes waited.
func checkClock(p *planner.Problem, plan planner.Plan, legs []leg) (waited float64, err error) {
	d := day{drive: p.Drive, departs: p.Drive.DepartMin, now: p.Drive.DepartMin}
	for _, l := range legs {
		s := l.at
		d.driveTo(s.Km, s.DetourKm, s.DetourMin)
		if err := d.holdsKm(s.ID); err != nil {
			return 0, err
		}
		visit := d.visit
		if l.Night {
			visit = d.stay
		}
		if err := visit(l); err != nil {
			return 0, err
		}
		if err := d.moment(s, "leave", l.Leave); err != nil {
			return 0, err
		}
		d.now += s.DetourMin / 2
	}
	d.driveTo(p.LengthKm, 0, 0)
	if err := d.holdsKm(""); err != nil {
		return 0, err
	}
	if err := d.holdsMin(""); err != nil {
		return 0, err
	}
	if keys, last := p.Drive.EndByMin, d.now-1440*float64(d.nights); keys > 0 && last > keys+planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleKeys, Km: p.LengthKm, Have: last - p.Drive.DepartMin, Need: keys - p.Drive.DepartMin}
	}
	if differ(plan.End.Min, d.now) {
		return 0, &planner.Broken{Rule: planner.RuleMoment, Field: "end.min", Km: p.LengthKm, Have: plan.End.Min, Need: d.now}
	}
	return d.waited, nil
}

// visit waits for the stop to open, and does there what takes time.
func (d *day) visit(l leg) error {
	s := l.at
	if err := d.arrival(l, 0); err != nil {
		return err
	}
	open := opening(s.Open, d.now)
	if math.IsInf(open, 1) {
		return &planner.Broken{Rule: planner.RuleOpen, Stop: s.ID, Km: s.Km, Have: d.now, Need: s.Open[len(s.Open)-1][1]}
	}
	d.waited += open - d.now
	d.now = open + s.StopMin
	for _, y := range l.Serve {
		d.now += offered(s, y.Tank).Min
	}
	return nil
}

// stay arrives when one can check in, and leaves nights later.
func (d *day) stay(l leg) error {
	s := l.at
	d.now += s.StopMin
	if err := d.holdsMin(s.ID); err != nil {
		return err
	}
	d.now -= s.StopMin
	if moved := s.Km - d.slept; d.nights > 0 && moved < d.drive.MoveKm-planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleMove, Stop: s.ID, Km: s.Km, Have: moved, Need: d.drive.MoveKm}
	}
	in := d.checkIn(s)
	if math.IsInf(in, 1) {
		return &planner.Broken{Rule: planner.RuleOpen, Stop: s.ID, Km: s.Km, Have: d.now, Need: s.Open[len(s.Open)-1][1]}
	}
	inHand := in - d.now
	d.now = in
	if err := d.arrival(l, inHand); err != nil {
		return err
	}
	next := d.departs + 1440*float64(s.Night.Nights)
	latest := next
	if s.Night.CheckIn != nil {
		latest = d.departs + 1440
	}
	if d.now+s.StopMin > latest+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Km: s.Km, Detail: planner.NightTooShort}
	}
	if d.nights += s.Night.Nights; slices.Contains(d.drive.RestDays, d.nights) {
		return &planner.Broken{Rule: planner.RuleRest, Stop: s.ID, Km: s.Km, Have: float64(d.nights + 1)}
	}
	d.departs, d.now, d.today, d.slept = next, next, 0, s.Km
	return nil
}

// arrival compares when the plan says that it arrives, and what it has in hand before.
func (d *day) arrival(l leg, inHand float64) error {
	if differ(l.InHand, inHand) {
		return &planner.Broken{Rule: planner.RuleMoment, Stop: l.Stop, Field: "in_hand", Km: l.at.Km, Have: l.InHand, Need: inHand}
	}
	return d.moment(l.at, "arrive", l.Arrive)
}

// checkIn is the first minute from now on that lies in a window and in the hours of
// checking in, +Inf if none does.
func (d *day) checkIn(s *planner.Stop) float64 {
	now, in := d.now, s.Night.CheckIn
	if in == nil {
		return opening(s.Open, now)
	}
	first := math.Inf(1)
	last := now + 2*1440 // later than anybody waits
	for morning := 1440 * math.Floor(now/1440); morning <= last; morning += 1440 {
		hours := [2]float64{morning + in[0], morning + in[1]}
		if hours[1]+planner.Tolerance < now {
			continue
		}
		at := opening(s.Open, math.Max(now, hours[0]))
		if at <= hours[1]+planner.Tolerance {
			first = math.Min(first, at)
		}
	}
	return first
}

// holdsKm and holdsMin are the limits of a day so far.
func (d *day) holdsKm(stop string) error {
	if d.today > d.drive.MaxKmPerDay+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleDayKm, Stop: stop, Km: d.at, Have: d.today, Need: d.drive.MaxKmPerDay}
	}
	return nil
}

func (d *day) holdsMin(stop string) error {
	if onRoad := d.now - d.departs; onRoad > d.drive.MaxMinPerDay+planner.Tolerance {
		return &planner.Broken{Rule: planner.RuleDayMin, Stop: stop, Km: d.at, Have: onRoad, Need: d.drive.MaxMinPerDay}
	}
	return nil
}

// moment compares where and when the plan says that it is.
func (d *day) moment(s *planner.Stop, which string, m planner.Moment) error {
	if differ(m.Km, s.Km) {
		return &planner.Broken{Rule: planner.RuleMoment, Stop: s.ID, Field: which + ".km", Km: s.Km, Have: m.Km, Need: s.Km}
	}
	if differ(m.Min, d.now) {
		return &planner.Broken{Rule: planner.RuleMoment, Stop: s.ID, Field: which + ".min", Km: s.Km, Have: m.Min, Need: d.now}
	}
	return nil
}

// paceMinutes is the driving time from the start of the route to km.
func paceMinutes(pace []planner.Pace, km float64) float64 {
	minutes, from := 0.0, 0.0
	for _, piece := range pace {
		if km <= piece.ToKm {
			return minutes + (km-from)*piece.MinPerKm
		}
		minutes += (piece.ToKm - from) * piece.MinPerKm
		from = piece.ToKm
	}
	return minutes
}

// opening is the first minute from now on inside a window, +Inf if none is left.
func opening(windows [][2]float64, now float64) float64 {
	first := math.Inf(1)
	if len(windows) == 0 {
		return now
	}
	for _, w := range windows {
		if now <= w[1]+planner.Tolerance {
			first = min(first, max(now, w[0]))
		}
	}
	return first
}
