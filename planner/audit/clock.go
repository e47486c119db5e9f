package audit

import (
	"math"

	"ullage/planner"
)

// This file audits the clock: driving, waiting, opening hours and the limits of a day.

// auditClock checks moments, windows and day limits, and returns the minutes waited.
func checkClock(p *planner.Problem, plan planner.Plan, legs []leg) (waited float64, err error) {
	d := p.Drive
	departs, km0 := d.DepartMin, 0.0 // this morning: when, and route position with the detour still to undo
	owed := 0.0                      // half detour from last night's place
	now, today := departs, 0.0
	at := 0.0
	for _, l := range legs {
		s := l.at
		today += s.Km - km0 + owed + s.DetourKm/2
		now += paceMinutes(d.Pace, s.Km) - paceMinutes(d.Pace, at) + s.DetourMin/2
		km0, owed, at = s.Km, 0, s.Km
		if today > d.MaxKmPerDay+planner.Tolerance {
			return 0, &planner.Broken{Rule: planner.RuleDayKm, Stop: s.ID, Km: s.Km, Have: today, Need: d.MaxKmPerDay}
		}
		if err := stated(s, "arrive.km", l.Arrive.Km, s.Km); err != nil {
			return 0, err
		}
		if err := stated(s, "arrive.min", l.Arrive.Min, now); err != nil {
			return 0, err
		}
		open := opening(s.Open, now)
		if math.IsInf(open, 1) {
			return 0, &planner.Broken{Rule: planner.RuleOpen, Stop: s.ID, Km: s.Km, Have: now, Need: s.Open[len(s.Open)-1][1]}
		}
		waited += open - now
		now = open + s.StopMin
		if l.Night {
			if onRoad := now - departs; onRoad > d.MaxMinPerDay+planner.Tolerance {
				return 0, &planner.Broken{Rule: planner.RuleDayMin, Stop: s.ID, Km: s.Km, Have: onRoad, Need: d.MaxMinPerDay}
			}
			departs += 1440 * float64(s.Night.Nights)
			if now > departs+planner.Tolerance {
				return 0, &planner.Broken{Rule: planner.RuleNight, Stop: s.ID, Km: s.Km, Detail: "the next departure is earlier than the arrival"}
			}
			now, today, owed = departs, 0, s.DetourKm/2
		} else {
			for _, y := range l.Serve {
				now += offered(s, y.Tank).Min
			}
			owed = s.DetourKm / 2
		}
		if err := stated(s, "leave.km", l.Leave.Km, s.Km); err != nil {
			return 0, err
		}
		if err := stated(s, "leave.min", l.Leave.Min, now); err != nil {
			return 0, err
		}
		now += s.DetourMin / 2
	}
	today += p.LengthKm - km0 + owed
	now += paceMinutes(d.Pace, p.LengthKm) - paceMinutes(d.Pace, at)
	if today > d.MaxKmPerDay+planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleDayKm, Km: p.LengthKm, Have: today, Need: d.MaxKmPerDay}
	}
	if onRoad := now - departs; onRoad > d.MaxMinPerDay+planner.Tolerance {
		return 0, &planner.Broken{Rule: planner.RuleDayMin, Km: p.LengthKm, Have: onRoad, Need: d.MaxMinPerDay}
	}
	return waited, stated(nil, "end.min", plan.End.Min, now)
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
