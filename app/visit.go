package page

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/browser"
	"ullage/app/keep"
	"ullage/app/model"
	"ullage/planner/fact"
)

// This file begins where the last visit ended, and does what a person wants done about
// what is kept.

// start opens the store, and lists what to open of the last visit; there is no tab where
// the browser keeps nothing. It waits.
func (k *keeper) start(tell func(model.Msg)) (*keep.Tab, []source) {
	store, err := browser.OpenStore(storeName)
	if err != nil {
		app.Log(err)
		tell(model.StoreForgets{}) // the page works, and forgets
		return nil, []source{ofSite(demoPlaces), ofSite(demoTrip)}
	}
	tab, err := keep.Open(store, browser.Quick{}, browser.NewID(), browser.Session(deskKey))
	if err != nil {
		app.Log(err)
		tell(model.KeptUnread{Unread: model.Unread{ID: allUnread, Says: unreadable("all", err)}})
		return tab, nil
	}
	name, desk := tab.Desk()
	_ = browser.SetSession(deskKey, name) // the one that was asked for may be gone
	for _, e := range desk.Of(keep.Aside) {
		tell(model.KeptUnread{Unread: model.Unread{ID: e.Hash, Says: fact.Of(fact.Kind("kept.aside."+e.Name), nil), Set: true}})
	}
	return tab, sourcesOf(tab)
}

// takes begins to keep what a desk of the last visit held.
func (k *keeper) takes(tab *keep.Tab) {
	if k.tab = tab; tab == nil {
		return
	}
	_, desk := tab.Desk()
	k.was, k.maps, k.fleet, k.asides = nil, nil, nil, nil
	for _, e := range desk.Entries {
		to := &k.was
		switch e.Part {
		case keep.Map:
			to = &k.maps
		case keep.Fleet:
			to = &k.fleet
		case keep.Aside:
			to = &k.asides
		}
		*to = append(*to, keep.Item{Entry: e})
	}
}

// unreadPart takes note of a kept file that cannot be read.
func (k *keeper) unreadPart(ctx app.Context, f source, data []byte, err error) {
	item := keep.NewItem(keep.Aside, f.kept, data)
	k.unread = append(k.unread, item)
	k.tell(ctx, model.KeptUnread{Unread: model.Unread{ID: item.Hash, Says: unreadable(f.kept, err)}})
}

// goOn sets aside what could not be read: something else takes its place.
func (k *keeper) goOn(part string) {
	k.unread = slices.DeleteFunc(k.unread, func(i keep.Item) bool {
		if i.Name == part && len(i.Data) > 0 {
			k.asides = append(k.asides, i)
		}
		return i.Name == part
	})
	switch part {
	case keep.Trip:
		k.was = nil
	case keep.Fleet:
		k.fleet = nil
	}
}

// saveUnread gives what cannot be read as a file.
func (k *keeper) saveUnread(ctx app.Context, id string) {
	if id == allUnread {
		k.saveEverything(ctx)
		return
	}
	for _, i := range slices.Concat(k.unread, k.asides) {
		if i.Hash != id {
			continue
		}
		k.beside(ctx, func() {
			data, err := i.Data, error(nil)
			if data == nil {
				data, err = k.tab.Data(i.Entry, bites())
			}
			if err == nil {
				err = browser.Download(fmt.Sprintf("kept.%s.json", i.Name), "application/json", data)
			}
			if err != nil {
				k.later(ctx, model.NotSaved{Why: err.Error()})
			}
		})
	}
}

// saveEverything gives all that is kept as one file.
func (k *keeper) saveEverything(ctx app.Context) {
	tab := k.tab
	more := map[string][]byte{}
	if text, ok := (browser.Quick{}).Get(k.marksKey()); ok {
		more[marksKey] = []byte(text)
	}
	k.beside(ctx, func() {
		_, err := tab.Flush()
		if err == nil || errors.Is(err, keep.ErrFull) {
			err = browser.DownloadPieces("ullage-"+time.Now().Format("2006-01-02")+".tar", "application/x-tar",
				func(give func([]byte) error) error { return tab.Everything(more, give) })
		}
		if err != nil {
			k.later(ctx, model.NotSaved{Why: err.Error()})
		}
	})
}

// takeIn adds what a file of everything has to what is kept, and opens it. It waits.
func (k *keeper) takeIn(data []byte) error {
	if k.tab == nil {
		return errors.New("this browser keeps nothing for this page")
	}
	desk, more, err := k.tab.TakeIn(data)
	if err != nil {
		return err
	}
	if err := browser.SetSession(deskKey, desk); err != nil {
		return err
	}
	var theirs model.Marks
	if text, ok := more[marksKey]; ok && json.Unmarshal(text, &theirs) == nil {
		ours, _ := k.keptMarks()
		b, err := json.Marshal(model.MergedMarks(model.Marks{}, ours, theirs))
		if err != nil {
			return err
		}
		return browser.Quick{}.Set(k.marksKey(), string(b))
	}
	return nil
}

// fork goes on with a copy beside what another tab keeps.
func (k *keeper) fork(ctx app.Context) {
	items, err := k.items()
	if err == nil {
		err = browser.SetSession(deskKey, k.tab.Fork(items))
	}
	if err != nil {
		k.tell(ctx, model.NotKept{Why: err.Error()})
		return
	}
	k.saveMarks(ctx)
	k.flush(ctx)
}

// openDesk starts the page again with another trip that is kept.
func (k *keeper) openDesk(ctx app.Context, name string) {
	if err := browser.SetSession(deskKey, name); err != nil {
		k.tell(ctx, model.NotKept{Why: err.Error()})
		return
	}
	ctx.Reload()
}

func (k *keeper) removeDesk(ctx app.Context, name string) {
	tab := k.tab
	k.beside(ctx, func() {
		if err := tab.Remove(name); err != nil {
			k.later(ctx, model.NotKept{Why: err.Error()})
		}
		ctx.Dispatch(k.measure)
	})
}
