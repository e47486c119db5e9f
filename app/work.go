package page

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A worker is what the page has under way.
type worker struct{}

func (p *Page) onDragOver(ctx app.Context, e app.Event) { e.PreventDefault(); ctx.PreventUpdate() }
func (p *Page) onDrop(ctx app.Context, e app.Event)     { e.PreventDefault() }
func (p *Page) onFiles(ctx app.Context, e app.Event)    {}
func (p *Page) onDraw(ctx app.Context, e app.Event)     {}
func (p *Page) onSave(ctx app.Context, e app.Event)     {}
func (p *Page) onPrint(ctx app.Context, e app.Event)    {}
func (p *Page) onReload(ctx app.Context, e app.Event)   {}
