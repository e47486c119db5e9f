package page

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/app/model"
	"ullage/app/show"
	"ullage/planner/trip"
)

// This file is how the page begins, and how it begins again after a reload.

// OnInit gives a page that was made empty its model.
func (p *Page) OnInit() {
	if p.m.Fleet == nil {
		p.m = model.New(trip.Fleet())
	}
	p.begin()
}

// OnMount starts the planner and opens what was there on the last visit, or
// the demo.
func (p *Page) OnMount(ctx app.Context) {
	ctx.Handle(show.MsgAction, p.onMsg)
	p.client = job.NewClient(
		func(receive func([]byte), died func(error)) (job.Link, error) {
			return browser.StartWorker(receive, died)
		},
		// A frame later, so that reading an answer and showing it are two tasks.
		inOrder(func(f func()) { ctx.After(20*time.Millisecond, func(app.Context) { f() }) }))
	p.keep.marks, _ = p.keep.keptMarks()
	p.tell(ctx, p.keep.marks)
	p.beside(ctx, func() {
		tab, files := p.keep.start(func(msg model.Msg) { p.later(ctx, msg) })
		ctx.Dispatch(func(ctx app.Context) {
			p.keep.takes(tab)
			p.open.open(ctx, files)
			p.keep.measure(ctx)
		})
	})
	p.unwatch = browser.WatchQuick(func(key, text string) {
		ctx.Dispatch(func(ctx app.Context) { p.keep.heard(ctx, key, text) })
	})
	p.watchVersion(ctx)
}

func (p *Page) OnDismount() {
	p.unwatch()
	p.client.Close()
}

// OnAppUpdate comes when a version has taken over: at the first visit, which
// is no reason to start again, and when a person asked for the newer one.
func (p *Page) OnAppUpdate(ctx app.Context) {
	if p.wantsNewer {
		ctx.Reload() // everything is kept
	}
}

// watchVersion looks for a newer version and for being ready without a
// network: soon, and then every ten minutes.
func (p *Page) watchVersion(ctx app.Context) {
	look := func() {
		if browser.NewerWaits() {
			p.later(ctx, model.VersionWaits{})
		}
		if browser.OfflineReady() {
			p.later(ctx, model.OfflineReady{})
		}
	}
	ctx.Async(func() {
		for _, wait := range []time.Duration{3, 12, 30} {
			time.Sleep(wait * time.Second)
			look()
		}
		for p.Mounted() {
			time.Sleep(10 * time.Minute)
			look()
		}
	})
}
