package page

import (
	"bytes"
	"encoding/json"
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/job"
	"ullage/data/tripfile"
	"ullage/planner/trip"
)

// This file is how the page begins, and how it begins again after a reload.

const (
	storeName  = "ullage"
	keptTrip   = "trip"   // a trip file
	keptIndex  = "places" // a list of kept, as JSON
	keptOrigin = "origin" // an Origin
	keptMarks  = "marks"  // a Marks, beside the store
	demoPlaces = "/web/demo.osm.pbf"
	demoTrip   = "/web/demo.trip.geojson"
)

// kept is a file of places in the store.
type kept struct {
	Name string `json:"name"`
	Key  string `json:"key"` // in the store; "" is the demo, which the site has
}

// OnInit gives a page that was made empty its model.
func (p *Page) OnInit() {
	if p.m.Fleet == nil {
		p.m = New(trip.Fleet())
	}
}

// OnMount starts the planner and opens what was there on the last visit, or
// the demo.
func (p *Page) OnMount(ctx app.Context) {
	ctx.Handle(msgAction, p.onMsg)
	p.ways = &Ways{p}
	p.client = job.NewClient(
		func(receive func([]byte), died func(error)) (job.Link, error) {
			return browser.StartWorker(receive, died)
		},
		// A frame later, so that reading an answer and showing it are two tasks.
		inOrder(func(f func()) { ctx.After(20*time.Millisecond, func(app.Context) { f() }) }))
	var marks Marks
	if err := ctx.LocalStorage().Get(keptMarks, &marks); err != nil {
		app.Log(err)
	}
	p.tell(ctx, marks)
	ctx.Async(func() {
		defer p.guard(ctx)
		store, err := browser.OpenStore(storeName)
		if err != nil {
			app.Log(err) // it keeps in memory: the page works, and forgets
		}
		files, origin := lastVisit(store), lastOrigin(store)
		ctx.Dispatch(func(ctx app.Context) {
			p.store, p.last = store, origin
			p.open(ctx, files, false)
		})
	})
	p.watchVersion(ctx)
}

func (p *Page) OnDismount() { p.client.Close() }

// OnAppUpdate comes when a version has taken over: at the first visit, which
// is no reason to start again, and when a person asked for the newer one.
func (p *Page) OnAppUpdate(ctx app.Context) {
	if p.wantsNewer {
		ctx.Reload() // everything is kept
	}
}

// lastVisit lists what to open. It waits.
func lastVisit(store *browser.Store) []source {
	fetch := func(path string) source {
		return source{name: path, bytes: func() ([]byte, error) { return browser.Fetch(path) }}
	}
	get := func(name, key string) source {
		return source{name: name, bytes: func() ([]byte, error) {
			data, ok, err := store.Get(key)
			if err == nil && !ok {
				err = fmt.Errorf("%s is no longer kept on this device: open it again", name)
			}
			return data, err
		}}
	}
	out := []source{fetch(demoPlaces)}
	if b, ok, err := store.Get(keptIndex); err == nil && ok {
		var list []kept
		if json.Unmarshal(b, &list) == nil && len(list) > 0 {
			out = nil
			for _, k := range list {
				if k.Key == "" {
					out = append(out, fetch(demoPlaces))
				} else {
					out = append(out, get(k.Name, k.Key))
				}
			}
		}
	}
	if _, ok, err := store.Get(keptTrip); err == nil && ok {
		return append(out, get(word.lastTrip, keptTrip))
	}
	return append(out, fetch(demoTrip))
}

// saveTrip keeps the trip for the next visit.
func (p *Page) saveTrip(ctx app.Context) {
	if p.store == nil || !p.m.HasTrip() {
		return
	}
	var b bytes.Buffer
	if err := tripfile.Write(&b, p.m.Trip); err != nil {
		app.Log(err)
		return
	}
	p.put(ctx, keptTrip, b.Bytes())
	p.saveOrigin(ctx)
}

// saveMarks keeps units, ticks and kinds of gauges for the next visit, at once:
// a phone may put the page away right after a tick, and writing to the store
// takes a moment.
func (p *Page) saveMarks(ctx app.Context) {
	if err := ctx.LocalStorage().Set(keptMarks, marksOf(p.m)); err != nil {
		p.m.Trouble = fmt.Sprintf(word.notKept, err)
	}
}

// marksOf is what is kept of a model so.
func marksOf(m Model) Marks {
	out := Marks{Units: m.Say.Units, Ticks: m.Ticks, Gauges: m.Gauges}
	if m.Draft != nil {
		out.Draft = shownAt(m.Draft.Points, m.Legs.of(m.Draft.Points))
	}
	return out
}

// keepPlaces keeps a file of places for the next visit.
func (p *Page) keepPlaces(ctx app.Context, f source, data []byte, add bool) {
	if !add {
		p.places = nil
	}
	if !f.keep { // it is kept already, or the demo
		key := ""
		if f.name != demoPlaces {
			key = placeKey(len(p.places))
		}
		p.places = append(p.places, kept{f.name, key})
		return
	}
	k := kept{f.name, placeKey(len(p.places))}
	p.places = append(p.places, k)
	index, err := json.Marshal(p.places)
	if err != nil {
		app.Log(err)
		return
	}
	p.put(ctx, k.Key, data)
	p.put(ctx, keptIndex, index)
}

func placeKey(i int) string { return fmt.Sprintf("places/%d", i) }

// put writes to the store beside the page; a full device is said aloud.
func (p *Page) put(ctx app.Context, key string, data []byte) {
	store := p.store
	if store == nil {
		return
	}
	ctx.Async(func() {
		defer p.guard(ctx)
		if err := store.Put(key, data); err != nil {
			ctx.Dispatch(func(ctx app.Context) { p.tell(ctx, NotKept{err.Error()}) })
		}
	})
}

// watchVersion looks for a newer version and for being ready without a
// network: soon, and then every ten minutes.
func (p *Page) watchVersion(ctx app.Context) {
	look := func() {
		if browser.NewerWaits() {
			ctx.Dispatch(func(ctx app.Context) { p.tell(ctx, VersionWaits{}) })
		}
		if browser.OfflineReady() {
			ctx.Dispatch(func(ctx app.Context) { p.tell(ctx, OfflineReady{}) })
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
