package page

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/app/model"
	"ullage/app/say"
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
		ctx.Dispatch(func(ctx app.Context) {
			if err != nil {
				o.tell(ctx, model.OpenFailed{Name: f.name, Why: fact.Why(err)})
				o.open(ctx, rest)
				return
			}
			progress := func(done, total int64) {
				o.tell(ctx, model.Progress{Share: float64(done) / float64(max(total, 1))})
			}
			o.client.Open(f.name, data, job.OpenOptions{Add: f.add, Again: f.bytes, Progress: progress}, func(got job.Opened, err error) {
				if err != nil {
					o.tell(ctx, model.OpenFailed{Name: f.name, Why: fact.Why(err)})
				} else {
					o.opened(ctx, f, got, data)
				}
				for i := range rest {
					rest[i].add = f.add || err == nil && got.Kind == "places"
				}
				o.open(ctx, rest)
			})
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

// opened tells the model what was in a file, and keeps places for the next
// visit; the trip is kept by itself.
func (o *opener) opened(ctx app.Context, f source, got job.Opened, data []byte) {
	file := model.File{Name: o.titleOf(got.Name), Kind: got.Kind, Count: got.Places, Date: got.Date, OSM: got.OSM, Notes: got.Notes, Box: got.Bounds, Sample: f.name == demoPlaces}
	switch got.Kind {
	case "places":
		o.tell(ctx, model.PlacesRead{File: file, Add: f.add, Ground: got.Backdrop})
		o.readGround(ctx, got.Backdrop)
		o.keep.keepPlaces(ctx, f, data)
		o.ways.read(ctx)
	case "route":
		file.Count, file.Climb = len(got.Route), got.Climb
		o.tell(ctx, model.RouteRead{File: file, Line: got.Route})
	case "trip":
		if got.Trip != nil {
			o.tell(ctx, model.TripRead{File: file, Trip: *got.Trip, Last: f.name == lastTrip})
			if f.name == lastTrip {
				o.tell(ctx, model.OriginRead{Origin: o.keep.last})
			}
		}
	case "fleet":
		o.tell(ctx, model.FleetRead{Fleet: got.Fleet})
	}
}

// readGround reads the backdrop for the drawn overview in small bites, so
// that the page stays quick.
func (o *opener) readGround(ctx app.Context, text string) {
	if text == "" {
		return
	}
	o.beside(ctx, func() {
		began := time.Now()
		back, err := readBackdrop(text, func() {
			if time.Since(began) > 8*time.Millisecond {
				time.Sleep(time.Millisecond)
				began = time.Now()
			}
		})
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
		out = append(out, source{name: f.Name, bytes: f.Bytes, keep: true})
	}
	return out
}
