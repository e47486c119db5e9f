package page

import (
	"errors"
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/paulmach/orb"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/app/model"
	"ullage/planner/fact"
)

// This file does what the model says is to be done, and tells it what came of it.

const (
	planDelay = 150 * time.Millisecond // a person types on
	mapDelay  = 40 * time.Millisecond  // a little more than a frame
)

// A Page is the whole page. It gives each part what it shows, and does what the
// model says is to be done. The zero value opens what was there on the last visit, or
// the demo.
type Page struct {
	app.Compo
	core
	ways       Ways
	keep       keeper
	open       opener
	wantsNewer bool   // a person asked for the version that waits
	unwatch    func() // what other tabs keep
}

// begin joins the parts.
func (p *Page) begin() {
	p.ways.core, p.keep.core, p.open.core = &p.core, &p.core, &p.core
	p.open.keep, p.open.ways = &p.keep, &p.ways
	p.then = func(ctx app.Context, todo []model.Effect) {
		for _, e := range todo {
			p.do(ctx, e)
		}
		p.ways.followDraft(ctx)
	}
}

func (p *Page) do(ctx app.Context, e model.Effect) {
	switch e := e.(type) {
	case model.AskPlan:
		p.plan(ctx, e)
	case model.Locate:
		p.locate(ctx)
	case model.MatchTrack:
		p.ways.match(ctx, e.Line)
	case model.FindOthers:
		p.ways.findOthers(ctx, e.Pair)
	case model.ShowStop:
		if wide() { // the list scrolls by itself
			ctx.ScrollTo(fmt.Sprintf("stop-%d", e.N))
		}
	case model.ShowMap:
		ctx.After(mapDelay, showMap) // what is above the map has its new size then
	case model.ShowRoad: // the panel is gone, and with it what had the keyboard
		browser.Focus("onroad")
	default:
		p.doKept(ctx, e)
	}
}

// doKept does what is about this device.
func (p *Page) doKept(ctx app.Context, e model.Effect) {
	switch e := e.(type) {
	case model.SaveTrip:
		p.keep.save(ctx)
	case model.SaveMarks:
		p.keep.saveMarks(ctx)
	case model.Reload:
		ctx.Reload()
	case model.Fork:
		p.keep.fork(ctx)
	case model.SaveUnread:
		p.keep.saveUnread(ctx, e.ID)
	case model.SaveEverything:
		p.keep.saveEverything(ctx)
	case model.OpenFresh:
		p.open.openFresh(ctx)
	case model.OpenDesk:
		p.keep.openDesk(ctx, e.ID)
	case model.RemoveDesk:
		p.keep.removeDesk(ctx, e.ID)
	}
}

func showMap(ctx app.Context) {
	browser.Focus("map")
	if !wide() { // the controls are below the map
		ctx.ScrollTo("map")
	}
}

// wide says that words and pictures stand beside each other.
func wide() bool { return browser.Matches("(min-width: 64rem)") }

// plan asks the planner, unless something newer is wanted by then; each better plan
// is shown as it comes.
func (p *Page) plan(ctx app.Context, ask model.AskPlan) {
	delay := time.Duration(0)
	if ask.Typed {
		delay = planDelay
	}
	ctx.After(delay, func(ctx app.Context) {
		if ask.No != p.m.Wanted {
			return
		}
		p.client.Plan(job.Plan{Trip: p.m.Trip, Touched: ask.Touched()}, func(a job.Answer) {
			if a.Err != nil {
				p.tell(ctx, model.PlanFailed{No: ask.No, Why: fact.Why(a.Err)})
				return
			}
			p.tell(ctx, model.Answered{No: ask.No, Plan: a.Itinerary, Last: a.Done})
		})
	})
}

// hereWithin is how long a device may take to find itself: a receiver that was
// off needs about half a minute (from memory).
const hereWithin = 45 * time.Second

// locate asks the device where it is.
func (p *Page) locate(ctx app.Context) {
	p.beside(ctx, func() {
		fix, err := browser.Here(hereWithin)
		if err != nil {
			p.later(ctx, model.HereUnknown{Why: lost(err)})
			return
		}
		p.later(ctx, model.HereFound{Point: orb.Point{fix.Lon, fix.Lat}, WithinM: fix.WithinM})
	})
}

// lost is why there is no position.
func lost(err error) model.Lost {
	switch {
	case errors.Is(err, browser.ErrNotAllowed):
		return model.NotAllowed
	case errors.Is(err, browser.ErrTooLong):
		return model.TooLong
	}
	return model.NoPosition
}
