package page

import (
	"bytes"
	"encoding/json"
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/model"
	"ullage/data/tripfile"
)

// This file keeps what is open for the next visit.

const (
	storeName  = "ullage"
	keptTrip   = "trip"          // a trip file
	keptIndex  = "places"        // a list of kept, as JSON
	keptOrigin = "origin"        // a model.KeptOrigin
	keptMarks  = "marks"         // a model.Marks, beside the store
	lastTrip   = "the last trip" // its file, in what is said of it
	demoPlaces = "/web/demo.osm.pbf"
	demoTrip   = "/web/demo.trip.geojson"
)

// kept is a file of places in the store.
type kept struct {
	Name string `json:"name"`
	Key  string `json:"key"` // in the store; "" is the demo, which the site has
}

// A source is a file to open: its bytes, and whether to keep them for the
// next visit.
type source struct {
	name  string
	bytes func() ([]byte, error) // waits
	keep  bool
	add   bool // to the places that are there; else they take their place
}

// A keeper keeps what is open, on this device.
type keeper struct {
	*core
	store  *browser.Store   // nil until it is open
	places []kept           // the files of places that are open
	saving int              // number of the last wish to save the trip
	origin string           // of the route, as it is kept
	last   model.KeptOrigin // of the route of the last visit
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
			for _, f := range list {
				if f.Key == "" {
					out = append(out, fetch(demoPlaces))
				} else {
					out = append(out, get(f.Name, f.Key))
				}
			}
		}
	}
	if _, ok, err := store.Get(keptTrip); err == nil && ok {
		return append(out, get(lastTrip, keptTrip))
	}
	return append(out, fetch(demoTrip))
}

// saveSoon keeps the trip once nothing more changes.
func (k *keeper) saveSoon(ctx app.Context) {
	k.saving++
	no := k.saving
	ctx.After(saveDelay, func(ctx app.Context) {
		if no == k.saving {
			k.saveTrip(ctx)
		}
	})
}

const saveDelay = 50 * time.Millisecond

// saveTrip keeps the trip for the next visit.
func (k *keeper) saveTrip(ctx app.Context) {
	if k.store == nil || !k.m.HasTrip() {
		return
	}
	var b bytes.Buffer
	if err := tripfile.Write(&b, k.m.Trip); err != nil {
		app.Log(err)
		return
	}
	k.put(ctx, keptTrip, b.Bytes())
	k.saveOrigin(ctx)
}

// saveMarks keeps units, ticks and kinds of gauges for the next visit, at once:
// a phone may put the page away right after a tick, and writing to the store
// takes a moment.
func (k *keeper) saveMarks(ctx app.Context) {
	if err := ctx.LocalStorage().Set(keptMarks, model.MarksOf(k.m)); err != nil {
		k.tell(ctx, model.NotKept{Why: err.Error()})
	}
}

// keepPlaces keeps a file of places for the next visit.
func (k *keeper) keepPlaces(ctx app.Context, f source, data []byte) {
	if !f.add {
		k.places = nil
	}
	if !f.keep { // it is kept already, or the demo
		key := ""
		if f.name != demoPlaces {
			key = placeKey(len(k.places))
		}
		k.places = append(k.places, kept{f.name, key})
		return
	}
	file := kept{f.name, placeKey(len(k.places))}
	k.places = append(k.places, file)
	index, err := json.Marshal(k.places)
	if err != nil {
		app.Log(err)
		return
	}
	k.put(ctx, file.Key, data)
	k.put(ctx, keptIndex, index)
}

func placeKey(i int) string { return fmt.Sprintf("places/%d", i) }

// put writes to the store beside the page; a full device is said aloud.
func (k *keeper) put(ctx app.Context, key string, data []byte) {
	store := k.store
	if store == nil {
		return
	}
	k.beside(ctx, func() {
		if err := store.Put(key, data); err != nil {
			k.later(ctx, model.NotKept{Why: err.Error()})
		}
	})
}

// saveOrigin keeps where the route came from, if that is not kept already.
func (k *keeper) saveOrigin(ctx app.Context) {
	b, err := json.Marshal(model.OriginOf(k.m))
	if err != nil {
		app.Log(err)
		return
	}
	if text := string(b); text != k.origin {
		k.origin = text
		k.put(ctx, keptOrigin, b)
	}
}

// lastOrigin is what is kept of it. It waits.
func lastOrigin(store *browser.Store) (o model.KeptOrigin) {
	if b, ok, err := store.Get(keptOrigin); err != nil || !ok || json.Unmarshal(b, &o) != nil {
		return model.KeptOrigin{}
	}
	return o
}
