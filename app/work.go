package page

import (
	"bytes"
	"fmt"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/data/tripfile"
)

// This file turns wishes of the model into work, and what comes back into
// messages.

const (
	planDelay = 150 * time.Millisecond // a person types on
	saveDelay = 50 * time.Millisecond
)

// tell updates the model, and starts what it newly wants.
func (p *Page) tell(ctx app.Context, msg Msg) {
	was := p.m
	p.m = Update(p.m, msg)
	if no := p.m.Wanted; no != was.Wanted {
		ctx.After(p.delay(msg), func(ctx app.Context) {
			if no == p.m.Wanted {
				p.plan(ctx, no)
			}
		})
	}
	p.follow(ctx, msg, was)
	switch msg.(type) {
	case HereAsked:
		p.locate(ctx)
	case RoundAsked:
		p.putOnRoads(ctx)
	case WaysAsked:
		p.findOthers(ctx)
	}
	p.followDraft(ctx)
	if p.m.Marks != was.Marks {
		p.saveMarks(ctx)
	}
	if n := p.m.Saves; n != was.Saves {
		ctx.After(saveDelay, func(ctx app.Context) {
			if n == p.m.Saves {
				p.saveTrip(ctx)
			}
		})
	}
}

// follow brings the stop at the cursor into sight where the list scrolls by
// itself, unless it is the list that was pointed at.
func (p *Page) follow(ctx app.Context, msg Msg, was Model) {
	n := stopAt(p.m.Plan, p.m.Cursor)
	switch msg.(type) {
	case DrawBegan:
		ctx.After(mapDelay, func(ctx app.Context) { // what is above the map has its new size
			browser.Focus("map")
			if !browser.Matches("(min-width: 64rem)") { // the controls are below the map
				ctx.ScrollTo("map")
			}
		})
	case WentOn:
		if p.m.Report == nil { // the panel is gone, and with it what had the keyboard
			browser.Focus("onroad")
		}
	case PointedX, PointedKm, Stepped, Skipped:
		if n > 0 && n != stopAt(was.Plan, was.Cursor) && browser.Matches("(min-width: 64rem)") {
			ctx.ScrollTo(fmt.Sprintf("stop-%d", n))
		}
	}
}

func (p *Page) delay(msg Msg) time.Duration {
	if _, typed := msg.(Edited); typed {
		return planDelay
	}
	return 0
}

// plan asks the planner; each better plan is shown as it comes.
func (p *Page) plan(ctx app.Context, no int) {
	p.client.Plan(p.m.Trip, func(a job.Answer) {
		if a.Err != nil {
			p.tell(ctx, PlanFailed{no, a.Err.Error()})
			return
		}
		p.tell(ctx, Answered{no, a.Itinerary, a.Done})
	})
}

// hereWithin is how long a device may take to find itself: a receiver that was
// off needs about half a minute (from memory).
const hereWithin = 45 * time.Second

// locate asks the device where it is.
func (p *Page) locate(ctx app.Context) {
	ctx.Async(func() {
		defer p.guard(ctx)
		fix, err := browser.Here(hereWithin)
		ctx.Dispatch(func(ctx app.Context) {
			if err != nil {
				p.tell(ctx, HereUnknown{err})
				return
			}
			p.tell(ctx, HereFound{orb.Point{fix.Lon, fix.Lat}, fix.WithinM})
		})
	})
}

// A source is a file to open: its bytes, and whether to keep them for the
// next visit.
type source struct {
	name  string
	bytes func() ([]byte, error) // waits
	keep  bool
}

// open reads files one after the other. The first with places replaces those
// that are there; the others of the same gesture are added to it.
func (p *Page) open(ctx app.Context, files []source, add bool) {
	if len(files) == 0 {
		return
	}
	f, rest := files[0], files[1:]
	p.tell(ctx, Opening{titleOf(f.name)})
	ctx.Async(func() {
		defer p.guard(ctx)
		data, err := f.bytes()
		ctx.Dispatch(func(ctx app.Context) {
			if err != nil {
				p.tell(ctx, OpenFailed{f.name, err.Error()})
				p.open(ctx, rest, add)
				return
			}
			p.client.Open(f.name, data, job.OpenOptions{Add: add},
				func(done, total int64) { p.tell(ctx, Progress{float64(done) / float64(max(total, 1))}) },
				func(o job.Opened, err error) {
					if err != nil {
						p.tell(ctx, OpenFailed{f.name, err.Error()})
					} else {
						p.opened(ctx, f, o, data, add)
						add = add || o.Kind == "places"
					}
					p.open(ctx, rest, add)
				})
		})
	})
}

// titleOf is what a person calls a file: those of the demo have no name of their own.
func titleOf(name string) string {
	if name == demoPlaces || name == demoTrip {
		return word.demoName
	}
	return name
}

// opened tells the model what was in a file, and keeps places for the next
// visit; the trip is kept by itself.
func (p *Page) opened(ctx app.Context, f source, o job.Opened, data []byte, add bool) {
	file := File{Name: titleOf(o.Name), Kind: o.Kind, Count: o.Places, Date: o.Date, OSM: o.OSM, Notes: o.Notes, Box: o.Bounds, Sample: f.name == demoPlaces}
	switch o.Kind {
	case "places":
		p.tell(ctx, PlacesRead{File: file, Add: add, Ground: o.Backdrop})
		p.readGround(ctx, o.Backdrop)
		p.keepPlaces(ctx, f, data, add)
		p.readRoads(ctx)
	case "route":
		file.Count, file.Climb = len(o.Route), o.Climb
		p.tell(ctx, RouteRead{file, o.Route})
	case "trip":
		if o.Trip != nil {
			p.tell(ctx, TripRead{file, *o.Trip, f.name == word.lastTrip})
			if f.name == word.lastTrip {
				p.tell(ctx, OriginRead{p.last})
			}
		}
	case "fleet":
		p.tell(ctx, FleetRead{o.Fleet})
	}
}

// readGround reads the backdrop for the drawn overview in small bites, so
// that the page stays quick.
func (p *Page) readGround(ctx app.Context, text string) {
	if text == "" {
		return
	}
	ctx.Async(func() {
		defer p.guard(ctx)
		began := time.Now()
		back, err := readBackdrop(text, func() {
			if time.Since(began) > 8*time.Millisecond {
				time.Sleep(time.Millisecond)
				began = time.Now()
			}
		})
		ctx.Dispatch(func(ctx app.Context) {
			if err == nil && p.m.Ground == text {
				p.tell(ctx, GroundRead{back})
			}
		})
	})
}

// guard turns a panic of work beside the page into words: the page stays.
func (p *Page) guard(ctx app.Context) {
	if r := recover(); r != nil {
		app.Logf("%v", r)
		ctx.Dispatch(func(ctx app.Context) { p.tell(ctx, PlanFailed{p.m.Wanted, fmt.Sprint(r)}) })
	}
}

func (p *Page) onMsg(ctx app.Context, a app.Action) {
	if msg, ok := a.Value.(Msg); ok {
		p.tell(ctx, msg)
	}
}

func (p *Page) onDragOver(ctx app.Context, e app.Event) {
	e.PreventDefault()
	ctx.PreventUpdate()
}

func (p *Page) onDrop(ctx app.Context, e app.Event) {
	e.PreventDefault()
	p.open(ctx, sources(browser.Dropped(e.Value)), false)
}

func (p *Page) onFiles(ctx app.Context, e app.Event) {
	p.open(ctx, sources(browser.Chosen(ctx.JSSrc())), false)
}

func sources(files []browser.File) []source {
	var out []source
	for _, f := range files {
		out = append(out, source{f.Name, f.Bytes, true})
	}
	return out
}

func (p *Page) onDraw(ctx app.Context, e app.Event) {
	p.tell(ctx, DrawBegan{})
}

func (p *Page) onSave(ctx app.Context, e app.Event) {
	var b bytes.Buffer
	err := tripfile.Write(&b, p.m.Trip)
	if err == nil {
		err = browser.Download(fileName(p.m.Trip.Name)+".trip.geojson", "application/geo+json", b.Bytes())
	}
	if err != nil {
		p.tell(ctx, NotSaved{err.Error()})
	}
}

// fileName makes a trip's name fit for a file.
func fileName(name string) string {
	out := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimSpace(name))
	if out == "" {
		return "trip"
	}
	return out
}

func (p *Page) onPrint(ctx app.Context, e app.Event) {
	ctx.Defer(func(app.Context) {
		if err := browser.Print(); err != nil {
			app.Log(err)
		}
	})
}

func (p *Page) onReload(ctx app.Context, e app.Event) {
	p.wantsNewer = true
	ctx.Async(browser.UseNewer)
}
