package mapview

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/model"
)

// This file gives the live map what it shows.

// A given is what a source of the map shows.
type given struct {
	source  string
	changed bool
	data    func() string
}

// givens are the sources of the map, and which of them are others than before.
func givens(was, is MapModel) []given {
	began := (was.Draft == nil) != (is.Draft == nil)
	days := !model.Same(was.Plan.Days, is.Plan.Days)
	// While a route is drawn, the one before makes room.
	unlessDrawn := func(data func() string) func() string {
		if is.Draft != nil {
			return func() string { return collection() }
		}
		return data
	}
	return []given{
		{"backdrop", was.Ground != is.Ground && is.Ground != "", func() string { return is.Ground }},
		{"land", !model.Same(was.Backdrop.Land, is.Backdrop.Land), func() string { return landData(is.Backdrop.Land) }},
		{"route", began || !model.Same(was.Route, is.Route) || !model.Same(was.Plan.OffRoad, is.Plan.OffRoad),
			unlessDrawn(func() string { return routeData(is.Route, is.Plan.OffRoad, is.Plan.LengthKm) })},
		{"places", !model.Same(was.Plan.Places, is.Plan.Places), func() string { return placesData(is.Plan) }},
		{"stops", began || days, unlessDrawn(func() string { return stopsData(is.Plan) })},
		{"cursor", began || was.Cursor != is.Cursor || was.HasPoint != is.HasPoint, unlessDrawn(func() string { return cursorData(is) })},
		{"draft", was.Draft != is.Draft || len(was.Legs) != len(is.Legs), func() string {
			if is.Draft == nil {
				return collection()
			}
			return draftData(*is.Draft, is.Legs.Of(is.Draft.Points))
		}},
		{"others", was.Draft != is.Draft, func() string { return othersData(is.Draft) }},
	}
}

// push sets the sources whose values are others than before.
func (v *MapView) push() {
	if v.live == nil {
		return
	}
	was, is := v.shown, v.Model
	for _, g := range givens(was, is) {
		if g.changed {
			if err := v.live.SetData(g.source, g.data()); err != nil {
				app.Log(err)
			}
		}
	}
	v.land()
	v.shown = is
	if !model.Same(was.Backdrop.Land, is.Backdrop.Land) {
		v.paint()
	}
	if moved(was, is) {
		v.fit()
	}
	v.point(was, is)
}

func (v *MapView) paint() {
	if v.live != nil {
		v.live.Repaint(mapLayers(v.look()))
	}
}

// look is by day or night as the device says.
func (v *MapView) look() look {
	return look{dim: browser.Matches(darkQuery), sea: len(v.Model.Backdrop.Land) > 0}
}

const darkQuery = "(prefers-color-scheme: dark)"

// moved says that the map is to show another part of the world.
func moved(was, is MapModel) bool {
	if d := is.Draft; d != nil && len(d.Before) == 0 && len(was.Legs) == 0 && len(is.Legs) > 0 {
		return true // a drawing that is gone on with: its way is known
	}
	return !model.Same(was.Route, is.Route) || was.Overall != is.Overall && is.Draft == nil
}

// point gives the pointer the shape of what a click means.
func (v *MapView) point(was, is MapModel) {
	if is.Draft != nil || is.Road {
		if is.Draft != nil && was.Draft == nil {
			v.tellScale()
		}
		v.live.SetCursor("crosshair")
	} else if was.Draft != nil || was.Road {
		v.live.SetCursor("")
	}
}
