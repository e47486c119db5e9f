package page

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ullage/app/draw"
	"ullage/planner"
)

// Update returns the model after something happened. It is pure; a higher
// Wanted in the result asks for a plan, a higher Saves for a save.
func Update(m Model, msg Msg) Model {
	switch msg := msg.(type) {
	case Opening:
		m.Phase, m.Note, m.Progress = Loading, msg.Name, 0
	case Progress:
		if m.Phase == Loading {
			m.Progress = math.Min(math.Max(msg.Share, 0), 1)
		}
	case PlacesRead:
		if !msg.Add {
			m.Files = without(m.Files, "places")
		}
		m.Files = append(slices.Clip(m.Files), msg.File)
		if msg.Ground != "" {
			m.Ground, m.Backdrop = msg.Ground, draw.Backdrop{} // until it is read
		}
		m = ask(m)
	case GroundRead:
		m.Backdrop = msg.Backdrop
	case FleetRead:
		m.Fleet = msg.Fleet
		m = settle(m)
	case RouteRead:
		m.Files = append(without(m.Files, "route"), msg.File)
		m.Trip.Route, m.Trip.Name = msg.Line, msg.File.Name
		m.Trip.UpM, m.Trip.DownM = msg.File.Climb[0], msg.File.Climb[1]
		m.Trip.Avoid, m.Trip.Require, m.Trip.Keep, m.Trip.Ferries = nil, nil, nil, nil
		m.Trip.Points, m.Trip.Round = nil, nil
		m.Draft, m.Track, m.Matched = nil, msg.Line, false
		m = m.untick(stopTicks)
		m.Report, m.News, m.Before = nil, nil, nil
		m = ask(m)
	case TripRead:
		m.Files = without(m.Files, "route")
		m.Trip, m.Typed, m.Wrong = msg.Trip, nil, nil
		m.Track, m.Matched, m.Legs = nil, false, nil
		m.Report, m.News, m.Before = nil, nil, nil
		if !msg.Last {
			m.Draft = nil
			m = m.untick(stopTicks)
		}
		m = ask(m)
	case OpenFailed:
		m.Phase, m.Note = Failed, msg.Why
	case NotKept:
		m.Trouble = fmt.Sprintf(word.notKept, msg.Why)
	case NotSaved:
		m.Trouble = fmt.Sprintf(word.notSaved, msg.Why)
	case Edited:
		m = edit(m, msg)
	case FerryAdded:
		m = addFerry(m)
	case FerryRemoved:
		m = removeFerry(m, msg.Index)
	case FormToggled:
		m.Editing = !m.Editing
	case Avoided:
		if i := slices.Index(m.Trip.Avoid, msg.Place); i >= 0 {
			m.Trip.Avoid = slices.Delete(slices.Clone(m.Trip.Avoid), i, i+1)
		} else {
			m.Trip.Avoid = append(slices.Clip(m.Trip.Avoid), msg.Place)
		}
		m = ask(m)
	case Marks:
		m.Say.Units, m.Ticks, m.Gauges = msg.Units, msg.Ticks, msg.Gauges
		if len(msg.Draft) > 0 {
			m.Draft = &Draft{Points: msg.Draft}
		}
	case Ticked:
		i, there := slices.BinarySearch(m.Ticks, msg.Item)
		if m.Ticks = slices.Clone(m.Ticks); there {
			m.Ticks = slices.Delete(m.Ticks, i, i+1)
		} else {
			m.Ticks = append(append(m.Ticks[:i:i], msg.Item), m.Ticks[i:]...)
		}
		m.Marks++
	case TicksCleared:
		m = m.untick(msg.List)
	case ReportToggled:
		if m.Report != nil || !m.HasPlan() {
			m.Report = nil
		} else {
			m.Report = newReport(m, msg.Now)
			m = showReport(m)
		}
	case ReportPointed:
		if m.Report != nil {
			r := m.Report.km(m, msg.Km)
			r.At, r.Said = &msg.Point, with(r.Said, roadWhere, "")
			m.Report = r
			m = showReport(m)
		}
	case HereAsked, HereFound, HereUnknown:
		if m.Report != nil {
			m.Report = m.Report.locate(m, msg)
			m = showReport(m)
		}
	case WentOn:
		m = goOn(m)
	case WentBack:
		m = goBack(m)
	case Afresh:
		m.Trip.Keep = nil
		m = ask(m)
	case Answered:
		m = answer(m, msg)
	case PlanFailed:
		if msg.No == m.Wanted {
			m.Phase, m.Note = Failed, msg.Why
		}
	case PointedMin, PointedX, PointedKm, Stepped, Skipped:
		m.Cursor = point(m, msg)
	case DrawBegan, DrawnPoint, DrawnInsert, DrawnMove, DrawnChoice, DrawnRemove, DrawnScale, DrawUndone, DrawRedone, DrawCleared, DrawEnded, WaysAsked, WaysFound, WayTaken:
		m = drawing(m, msg)
	case RoadsReading, RoadsRead, RoadsFailed, Followed, TrackMatched, NotMatched, TrackKept, OriginRead:
		m = onRoads(m, msg)
	case VersionWaits:
		m.Waiting = true
	case OfflineReady:
		m.Offline = true
	}
	return m
}

// untick takes the ticks of a list away.
func (m Model) untick(list string) Model {
	left := slices.DeleteFunc(slices.Clone(m.Ticks), func(s string) bool { return strings.HasPrefix(s, list+"/") })
	if len(left) < len(m.Ticks) {
		m.Ticks = left
		m.Marks++
	}
	return m
}

// showReport puts the cursor where somebody on the road is.
func showReport(m Model) Model {
	if km, ok := m.Report.here(m); ok {
		m.Cursor = m.Axis.AtKm(km).Min
	}
	return m
}

// settle ends Loading where nothing is to be planned anew.
func settle(m Model) Model {
	switch {
	case m.Phase != Loading:
	case m.HasPlan():
		m.Phase = Planned
	default:
		m.Phase, m.Note = Failed, word.stEmpty
	}
	return m
}

// ask wants a plan of the trip as it is now. Without places or a trip there is
// nothing to plan yet.
func ask(m Model) Model {
	m.Saves++
	if !m.HasTrip() || len(m.Trip.Route) < 2 {
		return m
	}
	m.Wanted++
	m.Phase, m.Note = Planning, ""
	return m
}

// edit applies a field's text to the trip, or says beside it what is wrong.
// Text and trip are both kept: nothing that was typed is lost.
func edit(m Model, msg Edited) Model {
	if strings.HasPrefix(msg.Field, roadPrefix) {
		if m.Report != nil {
			m.Report = m.Report.hear(m, msg.Field, msg.Text)
			if tank, is := strings.CutPrefix(msg.Field, roadKind); is {
				m.Gauges = with(m.Gauges, m.Trip.Vehicle.ID+"/"+tank, msg.Text)
				m.Marks++
			}
			m = showReport(m)
		}
		return m
	}
	if strings.HasPrefix(msg.Field, ferryPrefix) {
		m.Typed, m.Wrong = with(m.Typed, msg.Field, msg.Text), with(m.Wrong, msg.Field, "")
		return m
	}
	f, ok := fieldOf(m.Trip, m.Fleet, m.Say, msg.Field)
	if !ok {
		return m
	}
	if msg.Field == unitsKey { // what was typed was typed in the units before
		m.Say.Units, m.Typed, m.Wrong, m.Report = msg.Text, nil, nil, nil
		m.Marks++
		return m
	}
	m.Typed = with(m.Typed, msg.Field, msg.Text)
	changed, err := f.Set(m.Trip, msg.Text)
	if err != nil {
		m.Wrong = with(m.Wrong, msg.Field, err.Error())
		return m
	}
	m.Wrong = with(m.Wrong, msg.Field, "")
	if f.Get(changed) == f.Get(m.Trip) {
		return m
	}
	if f.Key == "vehicle" { // its tanks are other tanks: their fields start afresh
		m.Typed, m.Wrong = nil, nil
	}
	if sizeOf(m.Trip.Vehicle) != sizeOf(changed.Vehicle) { // other roads are open to it
		changed.Round = nil
		m = m.forget()
	}
	m.Trip, m.Before = changed, nil
	return ask(m)
}

// answer shows a plan unless a newer one is asked for.
func answer(m Model, msg Answered) Model {
	if msg.No != m.Wanted {
		return m
	}
	switch msg.Plan.Status {
	case planner.Infeasible:
		m.Phase, m.Note = Refused, ""
	case planner.Optimal, planner.Feasible:
		m.Phase, m.Note = Planned, ""
		if !msg.Last {
			m.Phase = Planning
		} else if stops := msg.Plan.Stops(); m.Roads.State != RoadsComing && !slices.Equal(stops, m.Trip.Keep) {
			m.Trip.Keep = stops // the plan in use from now on: not one by estimates, if a better one is on its way
			m.Saves++
		}
	default:
		m.Phase, m.Note = Failed, word.unknown
	}
	m.Plan, m.Shown, m.Axis = msg.Plan, msg.No, draw.NewAxis(msg.Plan)
	m.Cursor = math.Min(math.Max(m.Cursor, m.Axis.Start().Min), m.Axis.End().Min)
	return m
}

// point returns the time that a message points at.
func point(m Model, msg Msg) float64 {
	axis := m.Axis
	switch msg := msg.(type) {
	case PointedMin:
		return axis.AtMin(msg.Min).Min
	case PointedX:
		return axis.AtX(msg.X).Min
	case PointedKm:
		return axis.AtKm(msg.Km).Min
	case Stepped:
		x := axis.AtMin(m.Cursor).X + msg.By
		return axis.AtX(math.Min(math.Max(x, 0), 1)).Min
	case Skipped:
		return stopBeside(m, msg.By)
	}
	return m.Cursor
}

// stopBeside returns the arrival at the next stop after the cursor, or before.
func stopBeside(m Model, by int) float64 {
	at := m.Cursor
	for _, n := range draw.Numbers(m.Plan.Days) {
		t := n.Call.ArriveMin
		if by > 0 && t > m.Cursor {
			return t
		}
		if by < 0 && t < m.Cursor {
			at = t
		}
	}
	return at
}

func without(files []File, kind string) []File {
	return slices.DeleteFunc(slices.Clone(files), func(f File) bool { return f.Kind == kind })
}
