package page

import (
	"bytes"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/model"
	"ullage/data/tripfile"
)

// This file is what happens on the page itself.

func (p *Page) onMsg(ctx app.Context, a app.Action) {
	if msg, ok := a.Value.(model.Msg); ok {
		p.tell(ctx, msg)
	}
}

func (p *Page) onDragOver(ctx app.Context, e app.Event) {
	e.PreventDefault()
	ctx.PreventUpdate()
}

func (p *Page) onDrop(ctx app.Context, e app.Event) {
	e.PreventDefault()
	p.open.open(ctx, sources(browser.Dropped(e.Value)))
}

func (p *Page) onFiles(ctx app.Context, e app.Event) {
	p.open.open(ctx, sources(browser.Chosen(ctx.JSSrc())))
}

func (p *Page) onDraw(ctx app.Context, e app.Event) {
	p.tell(ctx, model.DrawBegan{})
}

func (p *Page) onSave(ctx app.Context, e app.Event) {
	var b bytes.Buffer
	err := tripfile.Write(&b, p.m.Trip)
	if err == nil {
		err = browser.Download(browser.FileName(p.m.Trip.Name)+".trip.geojson", "application/geo+json", b.Bytes())
	}
	if err != nil {
		p.tell(ctx, model.NotSaved{Why: err.Error()})
	}
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

// onTrack puts the route's file on roads, or takes it as it is again.
func (p *Page) onTrack(ctx app.Context, e app.Event) {
	if p.m.Matched {
		p.tell(ctx, model.TrackKept{})
		return
	}
	p.tell(ctx, model.RoundAsked{})
}
