package model

import (
	"testing"

	"github.com/paulmach/orb"

	"ullage/app/model/sample"
	"ullage/planner/fact"
	"ullage/planner/trip"
)

// These tests protect from what is left over: of the trip before, nothing may
// count for the one that takes its place.

// onTheRoad is a page whose trip was drawn by points, put on roads and led
// round, in the middle of a report from the road and of a drawing.
func onTheRoad() Model {
	m := planned()
	m.Trip.Points, m.Trip.Round = m.Trip.Route[:2:2], []string{"Low Lane: height limit 2.70 m"}
	m.Trip.Avoid, m.Trip.Require, m.Trip.Keep = []string{"n1"}, []string{"n2"}, []string{"n3"}
	m.Trip.Ferries = []trip.Ferry{{FromKm: 30, ToKm: 55, Min: 45}}
	m.Track, m.Matched = m.Trip.Route, true
	m.Report, m.News, m.Before = &Report{}, []fact.Fact{sample.Tag("Diesel: planned with 38 L")}, &Before{}
	m.Ticks = []string{"set-off/gas", "stop/n1"}
	m.Draft = &Draft{Points: m.Trip.Route[:1:1]}
	return m
}

func TestNewRouteKeepsNothingOfTheOld(t *testing.T) {
	line := orb.LineString{{1, 1}, {2, 2}}
	m := then(onTheRoad(), RouteRead{File: File{Name: "New", Kind: "route", Climb: [2]float64{7, 8}}, Line: line})
	if m.Trip.Points != nil || m.Trip.Round != nil {
		t.Errorf("the new route is drawn by %v and goes round %q", m.Trip.Points, m.Trip.Round)
	}
	if m.Trip.Avoid != nil || m.Trip.Require != nil || m.Trip.Keep != nil || m.Trip.Ferries != nil {
		t.Errorf("the new route has wishes of the old: %v %v %v %v", m.Trip.Avoid, m.Trip.Require, m.Trip.Keep, m.Trip.Ferries)
	}
	if m.Trip.Name != "New" || m.Trip.UpM != 7 || m.Trip.DownM != 8 || len(m.Trip.Route) != 2 {
		t.Errorf("%s rises %v and falls %v on %d points", m.Trip.Name, m.Trip.UpM, m.Trip.DownM, len(m.Trip.Route))
	}
	if m.Matched || len(m.Track) != 2 || m.Track[0] != line[0] {
		t.Errorf("the track that can be put on roads is %v, matched: %v", m.Track, m.Matched)
	}
	noReport(t, m)
	if m.Draft != nil {
		t.Error("what was drawn by halves is drawn on Along another route")
	}
}

func TestNewTripKeepsNothingOfTheOld(t *testing.T) {
	m := onTheRoad()
	m.Typed, m.Wrong = map[string]string{"adults": "many"}, map[string]fact.Fact{"adults": fact.Of("form.want_whole", nil)}
	other := sample.Trip()
	other.Name = "Other"
	m = then(m, TripRead{File: File{Name: "other"}, Trip: other})
	if m.Trip.Name != "Other" || m.Trip.Points != nil || m.Trip.Keep != nil {
		t.Errorf("the new trip is %+v", m.Trip)
	}
	if m.Typed != nil || m.Wrong != nil {
		t.Errorf("typed %v, wrong %v", m.Typed, m.Wrong)
	}
	if m.Matched || m.Track != nil {
		t.Error("the new trip's route is the old track put on roads")
	}
	noReport(t, m)
	if m.Draft != nil {
		t.Error("what was drawn by halves is drawn on in another trip")
	}
}

// The trip of the last visit is not another one: ticks and drawing stay.
func TestTripOfTheLastVisitKeepsItsMarks(t *testing.T) {
	m := then(onTheRoad(), TripRead{Trip: sample.Trip(), Last: &Resumed{}})
	if len(m.Ticks) != 2 || m.Draft == nil {
		t.Errorf("ticks %q, drawing %v", m.Ticks, m.Draft)
	}
}

// noReport: nobody is on the road of this trip, and nothing is ticked off it.
func noReport(t *testing.T, m Model) {
	t.Helper()
	if m.Report != nil || m.News != nil || m.Before != nil {
		t.Errorf("the report of the trip before is left: %v %q %v", m.Report, m.Say.Facts(m.News), m.Before)
	}
	if len(m.Ticks) != 1 || m.Ticks[0] != "set-off/gas" {
		t.Errorf("ticks are %q, want those of checklists alone", m.Ticks)
	}
}
