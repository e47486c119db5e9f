package page

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/app/keep"
	"ullage/app/model"
	"ullage/app/say"
	"ullage/data/tripfile"
	"ullage/planner/fact"
)

// This file opens files.

// An opener reads files, with the worker.
type opener struct {
	*core
	keep *keeper
	ways *Ways
}

// open reads files one after the other. The first with places replaces those
// that are there; the others of the same gesture are added to it.
func (o *opener) open(ctx app.Context, files []source) {
	if len(files) == 0 {
		return
	}
	f, rest := files[0], files[1:]
	o.tell(ctx, model.Opening{Name: o.titleOf(f.name)})
	o.beside(ctx, func() {
		data, err := f.bytes()
		if err == nil && f.own {
			if keep.IsEverything(data) {
				o.openEverything(ctx, f, data)
				return
			}
			f.hash = keep.Hash(data, bites())
		}
		var last *model.Resumed
		if f.kept == keep.Trip {
			last = resumed(o.keep.tab)
		}
		ctx.Dispatch(func(ctx app.Context) {
			next := func(added bool) {
				for i := range rest {
					rest[i].add = rest[i].add || added
				}
				o.open(ctx, rest)
			}
			if err != nil {
				o.failed(ctx, f, data, err)
				next(false)
				return
			}
			progress := func(done, total int64) {
				o.tell(ctx, model.Progress{Share: float64(done) / float64(max(total, 1))})
			}
			o.client.Open(f.name, data, job.OpenOptions{Add: f.add, Again: f.bytes, Progress: progress}, func(got job.Opened, err error) {
				if err != nil {
					o.failed(ctx, f, data, err)
				} else {
					o.opened(ctx, f, opened{got, data, last})
				}
				next(f.add || err == nil && got.Kind == "places")
			})
		})
	})
}

// opened is what a file held.
type opened struct {
	job.Opened
	data []byte
	last *model.Resumed // with the trip of the last visit
}

// failed says that a file could not be opened. What was kept stays kept.
func (o *opener) failed(ctx app.Context, f source, data []byte, err error) {
	switch f.kept {
	case keep.Map:
		if errors.Is(err, keep.ErrMissing) || errors.Is(err, keep.ErrDamaged) {
			o.tell(ctx, model.MapMissing{Missing: model.Missing{Name: o.titleOf(f.name)}})
			return
		}
	case keep.Trip, keep.Fleet:
		if tripfile.IsNewer(data) {
			err = &tripfile.NewerError{}
		}
		o.keep.unreadPart(ctx, f, data, err)
		return
	}
	o.tell(ctx, model.OpenFailed{Name: f.name, Why: fact.Why(err)})
}

// openEverything takes a file of everything in, and begins again with what it held.
func (o *opener) openEverything(ctx app.Context, f source, data []byte) {
	err := o.keep.takeIn(data)
	ctx.Dispatch(func(ctx app.Context) {
		if err != nil {
			o.tell(ctx, model.OpenFailed{Name: f.name, Why: fact.Why(err)})
			return
		}
		ctx.Reload()
	})
}

// openFresh goes on without what could not be read.
func (o *opener) openFresh(ctx app.Context) {
	files := []source{ofSite(demoTrip)}
	for _, u := range o.m.Unread {
		if u.ID == allUnread {
			files = []source{ofSite(demoPlaces), ofSite(demoTrip)}
		}
	}
	o.beside(ctx, func() {
		err := o.keep.tab.SetAside()
		ctx.Dispatch(func(ctx app.Context) {
			if err != nil {
				o.tell(ctx, model.NotKept{Why: err.Error()})
			}
			o.keep.goOn(keep.Fleet)
			if o.m.HasTrip() {
				o.keep.save(ctx)
				return
			}
			o.keep.goOn(keep.Trip)
			o.open(ctx, files)
		})
	})
}

// titleOf is what a person calls a file: those of the site have no name of their own.
func (o *opener) titleOf(name string) string {
	switch name {
	case demoPlaces, demoTrip:
		return say.Capital(o.m.Say.Text("page.demo"))
	case lastTrip:
		return o.m.Say.Text("page.last_trip")
	}
	return say.Quoted(name)
}

// opened tells the model what was in a file, and keeps places and fleets for the next
// visit; the trip is kept by itself.
func (o *opener) opened(ctx app.Context, f source, got opened) {
	file := model.File{Name: o.titleOf(got.Name), Kind: got.Kind, Count: got.Places, Date: got.Date, OSM: got.OSM, Notes: got.Notes, Box: got.Bounds, Sample: f.name == demoPlaces}
	switch got.Kind {
	case "places":
		o.tell(ctx, model.PlacesRead{File: file, Add: f.add, Ground: got.Backdrop})
		o.readGround(ctx, got.Backdrop)
		if f.own {
			o.keep.keepFile(ctx, keep.Map, f, got.data)
		}
		o.ways.read(ctx)
	case "route":
		file.Count, file.Climb = len(got.Route), got.Climb
		o.tell(ctx, model.RouteRead{File: file, Line: got.Route})
	case "trip":
		if got.Trip != nil {
			if f.own {
				o.keep.goOn(keep.Trip)
			}
			if f.name == demoTrip {
				o.keep.isExample(*got.Trip)
			}
			o.tell(ctx, model.TripRead{File: file, Trip: *got.Trip, Last: got.last})
		}
	case "fleet":
		o.tell(ctx, model.FleetRead{Fleet: got.Fleet})
		if f.own {
			o.keep.goOn(keep.Fleet)
			o.keep.keepFile(ctx, keep.Fleet, f, got.data)
		}
	}
}

// readGround reads the backdrop for the drawn overview in small bites, so
// that the page stays quick.
func (o *opener) readGround(ctx app.Context, text string) {
	if text == "" {
		return
	}
	o.beside(ctx, func() {
		back, err := readBackdrop(text, bites())
		ctx.Dispatch(func(ctx app.Context) {
			if err == nil && o.m.Ground == text {
				o.tell(ctx, model.GroundRead{Backdrop: back})
			}
		})
	})
}

func sources(files []browser.File) []source {
	var out []source
	for _, f := range files {
		out = append(out, source{name: f.Name, bytes: f.Bytes, own: true})
	}
	return out
}
