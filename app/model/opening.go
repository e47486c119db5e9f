package model

import (
	"math"
	"slices"

	"github.com/paulmach/orb"

	"ullage/app/draw"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// This file takes what is read from files, and what the page hears of itself.

type (
	// Opening: a file is about to be read.
	Opening struct{ Name string }
	// Progress of the file that is being read, 0 to 1.
	Progress struct{ Share float64 }
	// PlacesRead: the planner holds the places of a file. All earlier files
	// with places are replaced unless Add is set.
	PlacesRead struct {
		File   File
		Add    bool
		Ground string // GeoJSON to draw behind; "" is none
	}
	// GroundRead: the backdrop in a form that can be drawn.
	GroundRead struct{ Backdrop draw.Backdrop }
	// FleetRead: a file gave vehicles to choose from.
	FleetRead struct{ Fleet []trip.Vehicle }
	// RouteRead: a file gave a route, which replaces the trip's.
	RouteRead struct {
		File File
		Line orb.LineString
	}
	// TripRead: a trip file, or the trip of the last visit.
	TripRead struct {
		File File
		Trip trip.Trip
		Last *Resumed // nil: it is not the one of the last visit
	}
	// OpenFailed: a file could not be read; everything else stays as it was.
	OpenFailed struct {
		Name string
		Why  fact.Value
	}

	// NotSaved: a file could not be given to the person.
	NotSaved struct{ Why string }
	// VersionWaits: a new version of the page is ready.
	VersionWaits struct{}
	// OfflineReady: the page can start without a network.
	OfflineReady struct{}
)

func (msg Opening) update(m Model) Model {
	m.Phase, m.Reading, m.Progress = Loading, msg.Name, 0
	return m
}

func (msg Progress) update(m Model) Model {
	if m.Phase == Loading {
		m.Progress = math.Min(math.Max(msg.Share, 0), 1)
	}
	return m
}

func (msg PlacesRead) update(m Model) Model {
	if !msg.Add {
		m.Files, m.Missing = without(m.Files, "places"), nil
	}
	m.Files = append(slices.Clip(m.Files), msg.File)
	if msg.Ground != "" {
		m.Ground, m.Backdrop = msg.Ground, draw.Backdrop{} // until it is read
	}
	return m.ask()
}

func (msg GroundRead) update(m Model) Model {
	m.Backdrop = msg.Backdrop
	return m
}

func (msg FleetRead) update(m Model) Model {
	m.Fleet = msg.Fleet
	switch { // nothing is to be planned anew
	case m.Phase != Loading:
	case m.HasPlan():
		m.Phase = Ready
	default:
		m.Phase, m.Failure = Failed, fact.Of("status.no_route", nil)
	}
	return m
}

func (msg RouteRead) update(m Model) Model {
	m.Files = append(without(m.Files, "route"), msg.File)
	m.Trip.Route, m.Trip.Name = msg.Line, msg.File.Name
	m.Trip.UpM, m.Trip.DownM = msg.File.Climb[0], msg.File.Climb[1]
	m.Trip.Avoid, m.Trip.Require, m.Trip.Keep, m.Trip.Ferries = nil, nil, nil, nil
	m.Trip.Points, m.Trip.Round = nil, nil
	m.Draft, m.Origin, m.OnRoad = nil, Origin{Track: msg.Line}, OnRoad{}
	return m.untick(StopTicks).ask()
}

func (msg TripRead) update(m Model) Model {
	m.Files = without(m.Files, "route")
	m.Trip, m.Typed, m.Wrong = msg.Trip, nil, nil
	m.Origin, m.OnRoad, m.Legs = Origin{}, OnRoad{}, nil
	if msg.Last != nil {
		return m.resume(*msg.Last).ask()
	}
	m.Draft = nil
	return m.goOn().untick(StopTicks).ask()
}

func without(files []File, kind string) []File {
	return slices.DeleteFunc(slices.Clone(files), func(f File) bool { return f.Kind == kind })
}

func (msg OpenFailed) update(m Model) Model {
	m.Phase, m.Failure = Failed, fact.Of("status.failed", fact.V{"why": msg.Why})
	if msg.Why.Fact != nil { // it says already what is wrong with which file
		m.Failure = *msg.Why.Fact
	}
	return m
}

func (msg NotSaved) update(m Model) Model {
	m.Trouble = fact.Of("page.not_saved", fact.V{"why": fact.Text(msg.Why)})
	return m
}

func (VersionWaits) update(m Model) Model {
	m.Waiting = true
	return m
}

func (OfflineReady) update(m Model) Model {
	m.Offline = true
	return m
}
